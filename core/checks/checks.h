#pragma once
#include <functional>
#include <vector>

#include "core/catalogue/catalogue.h"
#include "core/catalogue/materials.h"
#include "core/chain/limits.h"
#include "core/checks/finding.h"

namespace hither {

struct CheckContext {
    CheckLimits limits;
    const Catalogue* catalogue = nullptr;      ///< where adapter remedies come from; may be null
    const MaterialTable* materials = nullptr;  ///< thread strength; null: unknown
    std::function<bool()> cancelled;
};

std::vector<Finding> checkFit(const Setup& setup, const CheckContext& context);
std::vector<Finding> checkReach(const Setup& setup, const CheckContext& context);
std::vector<Finding> checkAim(const Setup& setup, const CheckContext& context);
/// At the present settings: the least distance per mount and kind of thing (body, support, other
/// mounts, keep-outs), plus every pair nearer than its margin.
std::vector<Finding> checkClearance(const Setup& setup, const CheckContext& context);
/// The same over the whole range of every moving group (certified to tolerance::sweptDistance_m),
/// and whether the site stays with the switch as they move.
std::vector<Finding> checkMovement(const Setup& setup, const CheckContext& context);

/// Every check, worst first; within a verdict in check order, then by id.
std::vector<Finding> checkAll(const Setup& setup, const CheckContext& context);
Verdict worst(const std::vector<Finding>& findings);

}  // namespace hither
