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
/// Supports are made and hung on what carries them, the person is put on theirs, every site gets its
/// place in W at the present settings and the group that carries it. Whatever is wrong is a problem
/// with its place in the plan ("supports/1/dimensions/seat_width_mm", "sites/0/direction"); a
/// situation is there only when there is none. A person without a support named takes the first one
/// that somebody can sit or lie on.
SituationMade makeSituation(const std::vector<SupportSpec>& supports, const std::optional<PersonSpec>& person,
                            const std::vector<SiteSpec>& sites, const BodyData& data);

/// Pose in W of a support's group frame (zero-setting coordinates of S -> W) at the given settings of
/// any support's groups, following what carries it: a support's own place X_WS is where it stands
/// while all that carries it is at zero. Group empty: the support's own frame. Asserts that support
/// and group exist.
Pose groupPose_W(const Situation& situation, const std::string& support, const std::string& group, const GroupSettings& settings = {});
/// Moves something that is at X_W now (present settings) with its group to other settings: returns
/// the transform D with X_W(new) = D * X_W(now). Support empty: it is fixed in W.
Pose carriedFromNow_W(const Situation& situation, const std::string& support, const std::string& group, const GroupSettings& settings);

}  // namespace hither
