#include <algorithm>
#include <map>

#include "core/checks/checks.h"
#include "core/checks/obstacles.h"
#include "core/checks/subjects.h"
#include "core/geometry/solid_tree.h"
#include "core/units/tolerances.h"

namespace hither {
namespace {

BasisKind pieceBasis(const SetupMount& m, int part, const Obstacle& obstacle, const Setup& setup) {
    BasisKind basis = BasisKind::measured;
    for (int i = 0; i <= part; ++i) basis = weakest(basis, m.chain.parts[static_cast<std::size_t>(i)]->dimensionsBasis.kind);
    if (obstacle.kind == Obstacle::Kind::support)
        if (const Support* support = setup.situation.support(obstacle.support)) basis = weakest(basis, support->basis);
    if (obstacle.kind == Obstacle::Kind::body) basis = weakest(basis, BasisKind::assumed);  // a body model is never the person
    return basis;
}

void judgeKind(const Setup& setup, std::size_t index, Obstacle::Kind kind, const std::vector<PlacedSolid>& pieces,
               const SolidTree& tree, const std::vector<Obstacle>& all, const CheckContext& context, std::vector<Finding>& out) {
    const SetupMount& m = setup.mounts[index];
    std::vector<const Obstacle*> obstacles;
    std::vector<Solid> solids;
    for (const Obstacle& o : all) {
        if (o.kind != kind) continue;
        obstacles.push_back(&o);
        solids.push_back(o.solid_W);
    }
    if (obstacles.empty()) return;
    const SolidTree theirs(std::move(solids));
    const auto margin = [&](int mine, int other) {
        return requiredMargin(setup, index, pieces[static_cast<std::size_t>(mine)], *obstacles[static_cast<std::size_t>(other)], context.limits);
    };
    double widest = 0.0;
    for (const Obstacle* o : obstacles) widest = std::max(widest, o->keepOutMargin_m);
    widest = std::max({widest, context.limits.clearanceBody_m, context.limits.clearanceSupport_m, context.limits.clearanceMount_m});

    // Pairs that miss or are close: the worst for each part and thing.
    struct Worst { double slack; double margin; SolidTree::Nearest pair; };
    std::map<std::string, Worst> worstOf;
    for (const SolidTree::Nearest& pair : tree.allWithin(theirs, widest * (1.0 + tolerance::closeShare),
                                                         [&](int a, int b) { return !margin(a, b).has_value(); })) {
        const double need = *margin(pair.mine, pair.theirs);
        if (judgeAtLeast(pair.distance.distance, need) == Verdict::meets) continue;
        const std::string id = findingId(std::string("clearance.") + word(kind),
            {partSubject(m, pieces[static_cast<std::size_t>(pair.mine)].part), obstacles[static_cast<std::size_t>(pair.theirs)]->subject});
        const double slack = pair.distance.distance - need;
        const auto found = worstOf.find(id);
        if (found == worstOf.end() || slack < found->second.slack) worstOf[id] = {slack, need, pair};
    }
    for (const auto& [id, worst] : worstOf) {
        const PlacedSolid& piece = pieces[static_cast<std::size_t>(worst.pair.mine)];
        const Obstacle& o = *obstacles[static_cast<std::size_t>(worst.pair.theirs)];
        Finding f = makeFinding(CheckKind::clearance, std::string("clearance.") + word(kind), {partSubject(m, piece.part), o.subject});
        f.measure = Measure::length;
        f.value = worst.pair.distance.distance;
        f.limit = worst.margin;
        f.verdict = judgeAtLeast(*f.value, *f.limit);
        f.key = *f.value < 0 ? "clearance.overlaps" : "clearance.near";
        f.facts["depth"] = {-*f.value, Measure::length};
        f.basis = pieceBasis(m, piece.part, o, setup);
        f.witness = Witness{worst.pair.distance.p_WA, worst.pair.distance.p_WB};
        out.push_back(std::move(f));
    }
    if (!worstOf.empty()) return;
    const SolidTree::Nearest nearest = tree.nearest(theirs, std::numeric_limits<double>::infinity(), [&](int a, int b) {
        return !margin(a, b).has_value() ||
               meetsOnPurpose(setup, index, pieces[static_cast<std::size_t>(a)], *obstacles[static_cast<std::size_t>(b)]);
    });
    if (nearest.mine < 0) return;
    const PlacedSolid& piece = pieces[static_cast<std::size_t>(nearest.mine)];
    const Obstacle& o = *obstacles[static_cast<std::size_t>(nearest.theirs)];
    Finding f = makeFinding(CheckKind::clearance, std::string("clearance.free.") + word(kind), {partSubject(m, piece.part), o.subject});
    f.id = findingId(std::string("clearance.") + word(kind), {mountSubject(m)});
    f.measure = Measure::length;
    f.value = nearest.distance.distance;
    f.limit = margin(nearest.mine, nearest.theirs);
    f.verdict = Verdict::meets;
    f.basis = pieceBasis(m, piece.part, o, setup);
    f.witness = Witness{nearest.distance.p_WA, nearest.distance.p_WB};
    out.push_back(std::move(f));
}

}  // namespace

std::vector<Finding> checkClearance(const Setup& setup, const CheckContext& context) {
    std::vector<Finding> out;
    for (std::size_t i = 0; i < setup.mounts.size(); ++i) {
        const SetupMount& m = setup.mounts[i];
        const std::vector<PlacedSolid> pieces = placedSolids(m.chain, m.q, forward(m.chain, m.q));
        std::vector<Solid> solids;
        for (const PlacedSolid& piece : pieces) solids.push_back(piece.solid_W);
        if (solids.empty()) continue;
        const SolidTree tree(std::move(solids));
        const std::vector<Obstacle> obstacles = obstaclesOf(setup, i);
        for (Obstacle::Kind kind : {Obstacle::Kind::body, Obstacle::Kind::support, Obstacle::Kind::mount, Obstacle::Kind::keepOut})
            judgeKind(setup, i, kind, pieces, tree, obstacles, context, out);
    }
    return out;
}

}  // namespace hither
