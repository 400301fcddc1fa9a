#pragma once
#include <vector>

#include "core/plan/edits/edited.h"

namespace hither {

/// The figures of a part by place, in a fixed order: "rated_load", "elements/1/mass",
/// "joints/elbow/hold", "outlet/length", "bases/0/length", "grips/0/hold_torque", "face/force" ...
struct NamedFigure { std::string place; Figure figure; };
std::vector<NamedFigure> figuresOf(const Part& part);

/// "Use my measured figure": a figure of the plan's own copy of a part, wherever the plan uses it.
/// `value` SI and not negative; `source` says who measured it and when.
Edited useMeasuredFigure(const Plan& plan, const std::string& part, const std::string& place, double value, const std::string& source);

/// Any other change of the plan's copy of a part, by its id: price, dimensions, a newer catalogue row.
/// Refused when a mount could no longer be built with it.
Edited replacePartData(const Plan& plan, const Part& part);

}  // namespace hither
