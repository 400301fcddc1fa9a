#pragma once
#include <string>
#include <vector>

#include <QString>

#include "core/checks/finding.h"
#include "core/plan/plan.h"

namespace hither {

/// A figure of a part that a finding rests on and that nobody has measured.
struct FigureBehind {
    std::string part, place;   ///< as useMeasuredFigure() takes them
    QString name;              ///< "Mass that it may carry, Gooseneck, 600 mm"
    BasisKind basis = BasisKind::unknown;
};
/// Those that are unknown first. Findings about a thread or a load rest on several.
std::vector<FigureBehind> figuresBehind(const Finding& finding, const Plan& plan, const std::string& option);

}  // namespace hither
