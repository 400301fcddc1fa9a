#pragma once
#include <string>
#include <vector>

#include "core/checks/finding.h"

namespace hither {

/// The things findings are about, named as a sentence calls them ("Gooseneck, 300 mm").
Subject mountSubject(const SetupMount& mount);
Subject partSubject(const SetupMount& mount, int part);
Subject bodySubject(SegmentId segment);
Subject supportSubject(const Support& support, const std::string& solid);
Subject attachmentSubject(const Support& support, const Attachment& attachment);
Subject keepOutSubject(const KeepOut& keepOut);
Subject siteSubject(const Site& site);

/// "mount-1/2", "body/forearm_right", "chair/seat": the stable half of a finding's identity.
std::string identity(const Subject& subject);
/// "clearance.body:mount-1/2~body/forearm_right": what is judged, then about what.
std::string findingId(const std::string& what, const std::vector<Subject>& subjects);

/// A finding with its identity made; the value, sentence facts and verdict are the caller's.
Finding makeFinding(CheckKind check, const std::string& what, std::vector<Subject> subjects);

/// "right forearm": a segment as a sentence calls it.
std::string spoken(SegmentId segment);

}  // namespace hither
