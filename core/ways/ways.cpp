#include "core/ways/ways.h"

#include <algorithm>
#include <cassert>
#include <functional>
#include <string>
#include <utility>

#include "core/ways/room.h"

namespace hither {
namespace {

/// Of this mount, and not of what stays the same whatever the joints are (mates, loads).
bool dependsOnJoints(const Finding& f, const std::string& mount) {
    const bool about = std::any_of(f.subjects.begin(), f.subjects.end(), [&](const Subject& subject) { return subject.id == mount; });
    if (!about) return false;
    if (f.check != CheckKind::fit) return true;
    for (const char* place : {"fit.span", "fit.blocked", "fit.footprint", "fit.neighbour", "fit.keep_free"})
        if (f.id.rfind(place, 0) == 0) return true;
    return false;
}

WayLeft leftBy(const std::vector<Finding>& findings, const std::string& mount) {
    WayLeft left;
    for (const Finding& f : findings) {
        if (!dependsOnJoints(f, mount)) continue;
        left.missed += f.verdict == Verdict::misses;
        left.unknown += f.verdict == Verdict::unknown;
        left.close += f.verdict == Verdict::close;
    }
    return left;
}

Ways nothing() {
    Ways out;
    out.report.status = SolveReport::Status::cancelled;
    return out;
}

}  // namespace

bool canBringToSite(const Setup& setup, std::size_t index) {
    if (index >= setup.mounts.size()) return false;
    const SetupMount& m = setup.mounts[index];
    return m.chain.face && setup.situation.site(m.mount.site) != nullptr;
}

Ways findWays(const Setup& setup, std::size_t index, const CheckContext& context, SolveOptions options) {
    assert(canBringToSite(setup, index));
    const SetupMount& m = setup.mounts[index];
    const Site* site = setup.situation.site(m.mount.site);
    const auto cancelled = [&] { return options.cancelled && options.cancelled(); };
    const Room room(setup, index, context.limits);
    options.clearance = std::cref(room);
    Ways ways;
    ways.report = solve(m.chain, m.q, Target{site->p_W, site->d_W, std::nullopt}, options);
    if (ways.report.status == SolveReport::Status::cancelled || cancelled()) return nothing();

    struct Ranked { WayLeft left; Solution solution; };
    std::vector<Ranked> ranked;
    Setup trial = setup;
    CheckContext checking = context;
    if (options.cancelled) checking.cancelled = options.cancelled;
    for (Solution& s : ways.report.solutions) {
        SetupMount& tried = trial.mounts[index];
        tried.mount = withValues(m.mount, m.chain, s.q);
        tried.q = s.q;
        const WayLeft left = leftBy(checkAll(trial, checking), m.mount.id);
        if (cancelled()) return nothing();  // the checks were left half way: their counts say nothing
        ranked.push_back({left, std::move(s)});
    }
    std::stable_sort(ranked.begin(), ranked.end(), [](const Ranked& a, const Ranked& b) { return a.left < b.left; });
    for (std::size_t i = 0; i < ranked.size(); ++i) {
        ways.report.solutions[i] = std::move(ranked[i].solution);
        ways.left.push_back(ranked[i].left);
    }
    return ways;
}

}  // namespace hither
