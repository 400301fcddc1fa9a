#pragma once
#include <vector>

#include "core/checks/checks.h"
#include "core/solve/solve.h"

namespace hither {

/// What the checks that depend on the joint settings say of one way.
struct WayLeft { int missed = 0, unknown = 0, close = 0; auto operator<=>(const WayLeft&) const = default; };

/// Rooms beyond this are equally good: a way's `clearance_m` never says more. The room is what the mount has
/// beyond the margins that the Clearance check asks, in its tightest place.
constexpr double enoughRoom_m = 0.010;

/// The ways to set a mount so that its switch meets its site: those that leave the fewest checks missed
/// first, then unknown, then close, otherwise in the solver's order. `left` goes with `report.solutions`.
struct Ways { SolveReport report; std::vector<WayLeft> left; };

/// Mount `index` of the setup must serve a site of its situation and end in a switch (asserted; see
/// `canBringToSite`). `options.clearance` is filled in here; the rest is the caller's. When `options.cancelled`
/// says so the report is `cancelled` and holds no way.
Ways findWays(const Setup& setup, std::size_t index, const CheckContext& context, SolveOptions options = {});
bool canBringToSite(const Setup& setup, std::size_t index);
/// How a freedom is called in a sentence: "elbow", "ball1, swing a", "round the rail".
std::string freedomName(const Chain& chain, const Freedom& freedom);

}  // namespace hither
