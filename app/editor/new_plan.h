#pragma once
#include <string>

#include <QString>

#include "core/plan/plan.h"

namespace hither {

/// A plan to begin with: one support of a kind (core/situation/support.h, `supportKinds`) with its usual
/// dimensions and one empty option. Nobody is on it yet.
Plan newPlan(const std::string& supportKind, UnitSystem display, const std::string& currency);

}  // namespace hither
