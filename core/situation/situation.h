#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/situation/person.h"
#include "core/situation/site.h"
#include "core/situation/support.h"

namespace hither {

/// A volume that must stay free of the mount, with the margin it asks for: a transfer side, a screen's
/// line of sight, a brake. Fixed in W, or going with a support's group.
struct KeepOut {
    std::string id, name;
    Solid solid;
    double margin_m = 0;
    std::string support, group;
    bool operator==(const KeepOut&) const = default;
};

/// The givens of a plan, made: supports with their geometry, the body on its support, the sites.
struct Situation {
    std::vector<Support> supports;     ///< the first one's frame stands at W unless it says otherwise
    std::optional<Body> body;
    std::vector<Site> sites;

    const Support* support(const std::string& id) const;
    const Site* site(const std::string& id) const;
};

struct SituationProblem { std::string where, what; };
struct SituationMade { std::optional<Situation> situation; std::vector<SituationProblem> problems; };
SituationMade makeSituation(const std::vector<SupportSpec>& supports, const std::optional<PersonSpec>& person,
                            const std::vector<SiteSpec>& sites, const BodyData& data);

/// Pose in W of a support's group frame (zero-setting coordinates of S -> W) at the given settings of
/// any support's groups, following what carries it. Group empty: the support's own frame.
Pose groupPose_W(const Situation& situation, const std::string& support, const std::string& group, const GroupSettings& settings = {});
/// Moves something that is at X_W now (present settings) with its group to other settings: returns
/// the transform D with X_W(new) = D * X_W(now).
Pose carriedFromNow_W(const Situation& situation, const std::string& support, const std::string& group, const GroupSettings& settings);

}  // namespace hither
