#pragma once
#include <QString>

#include "core/chain/setup.h"
#include "core/plan/plan.h"

namespace hither {

/// "Rail, round tube of 22.2 mm, 490 mm long": what can be fixed there.
QString attachmentWords(const Attachment& attachment, UnitSystem units);
/// "Rail", "Edge", "Face", "Cloth".
QString attachmentKindWord(AttachmentKind kind);
/// Where a length along a rail, edge or cloth is measured from: "its front end", or the landmark there.
QString startWords(const Support& support, const Attachment& attachment);
/// "up", "forward": the main direction of a vector in the support's frame.
QString directionWords(const Vec3& direction);
/// The place on an attachment: "120 mm from its front end, turned 35°".
QString placeWords(const Support& support, const Attachment& attachment, const Placement& place, UnitSystem units);
QString partKindWord(PartKind kind);         ///< "Arm"
QString partKindsWord(PartKind kind);        ///< "Arms"
/// "12.50 EUR", or that it is not known.
QString priceWords(const std::optional<Money>& price);
/// A joint's name as the first word of a line: "Elbow", "Ball 2".
QString asTitle(const std::string& name);
/// What a mount's part is called in the mount: "2 Gooseneck, 300 mm".
QString numbered(int part, const std::string& name);

const Mount* mountIn(const Plan& plan, const std::string& option, const std::string& mount);
const SetupMount* mountIn(const Setup* setup, const std::string& mount);

}  // namespace hither
