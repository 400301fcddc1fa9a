#include <algorithm>
#include <limits>
#include <map>
#include <set>

#include "core/checks/box_search.h"
#include "core/checks/carriers.h"
#include "core/checks/checks.h"
#include "core/checks/obstacles.h"
#include "core/checks/serving.h"
#include "core/checks/subjects.h"
#include "core/geometry/solid_tree.h"
#include "core/units/tolerances.h"

namespace hither {
namespace {

/// Beyond this a gap is not refined: it is reported as at least that far.
constexpr double farEnough_m = 0.10;
/// A search that needs more looks than this stops and reports its lower bound.
constexpr int mostLooks = 4000;

using Key = std::pair<std::string, std::string>;

GroupSettings settingsAt(const RelativeMotion& motion, const std::vector<double>& x) {
    GroupSettings settings;
    for (std::size_t i = 0; i < x.size(); ++i) settings[{motion.steps[i].support, motion.steps[i].group}] = x[i];
    return settings;
}

void nameSettings(Finding& f, const Situation& situation, const RelativeMotion& motion, const std::vector<double>& x) {
    std::string words;
    for (std::size_t i = 0; i < x.size(); ++i) {
        const CarrierStep& step = motion.steps[i];
        f.at.push_back({step.support, step.group, x[i], step.slides});
        const Support* support = situation.support(step.support);
        const MovingGroup* g = support ? support->group(step.group) : nullptr;
        const std::string name = g && !g->name.empty() ? g->name : step.group;
        words += (words.empty() ? "" : " and ") + name + " at " +
                 (step.slides ? std::to_string(static_cast<int>(std::lround(x[i] * 1000.0))) + " mm" : printAngle(x[i]));
    }
    f.words["setting"] = words;
}

/// The obstacles of one kind that one group carries: they move as one body against the mount.
struct Batch { Obstacle::Kind kind; std::vector<const Obstacle*> obstacles; };

std::vector<Batch> batches(const std::vector<Obstacle>& all) {
    std::map<std::tuple<Obstacle::Kind, std::string, std::string>, Batch> sorted;
    for (const Obstacle& o : all) {
        Batch& batch = sorted[{o.kind, o.support, o.group}];
        batch.kind = o.kind;
        batch.obstacles.push_back(&o);
    }
    std::vector<Batch> out;
    for (auto& [key, batch] : sorted) out.push_back(std::move(batch));
    return out;
}

struct Swept { double slack = std::numeric_limits<double>::infinity(); SolidTree::Nearest pair; double margin = 0; };

/// One mount against one batch over the whole range of the groups that move them against each other.
void sweep(const Setup& setup, std::size_t index, const Batch& batch, const std::vector<PlacedSolid>& pieces,
           const std::vector<CarrierStep>& mine, const CheckContext& context, std::map<Obstacle::Kind, Finding>& worst) {
    const SetupMount& m = setup.mounts[index];
    const Situation& situation = setup.situation;
    const std::string& theirSupport = batch.obstacles.front()->support;
    const std::string& theirGroup = batch.obstacles.front()->group;
    const std::vector<CarrierStep> theirs = carriers(situation, theirSupport, theirGroup);
    const RelativeMotion motion = relativeMotion(mine, theirs);
    if (motion.steps.empty()) return;

    std::vector<Solid> mineSolids, theirSolids;
    for (const PlacedSolid& piece : pieces) mineSolids.push_back(piece.solid_W);
    for (const Obstacle* o : batch.obstacles) theirSolids.push_back(o->solid_W);
    std::vector<double> min, max, rate, start;
    for (std::size_t i = 0; i < motion.steps.size(); ++i) {
        const auto& list = motion.movesFirst[i] ? mine : theirs;
        std::size_t k = 0;
        while (list[k].support != motion.steps[i].support || list[k].group != motion.steps[i].group) ++k;
        min.push_back(motion.steps[i].min);
        max.push_back(motion.steps[i].max);
        start.push_back(motion.steps[i].now);
        rate.push_back(motionBound(list, k, motion.movesFirst[i] ? mineSolids : theirSolids));
    }

    // Margins of every pair, and the few different ones: each is searched on its own.
    std::vector<std::vector<std::optional<double>>> margin(pieces.size(), std::vector<std::optional<double>>(batch.obstacles.size()));
    std::set<double> margins;
    for (std::size_t a = 0; a < pieces.size(); ++a)
        for (std::size_t b = 0; b < batch.obstacles.size(); ++b)
            if ((margin[a][b] = requiredMargin(setup, index, pieces[a], *batch.obstacles[b], context.limits))) margins.insert(*margin[a][b]);

    const SolidTree theirTree(theirSolids);
    Swept least;
    const auto look = [&](const std::vector<double>& x, double enough) {
        if (context.cancelled && context.cancelled()) return enough;
        const GroupSettings settings = settingsAt(motion, x);
        const Pose D = carriedFromNow_W(situation, theirSupport, theirGroup, settings).inverse() *
                       carriedFromNow_W(situation, m.chain.support, m.chain.group, settings);
        std::vector<Solid> moved;
        moved.reserve(mineSolids.size());
        for (const Solid& s : mineSolids) moved.push_back(s.movedBy(D));
        const SolidTree mineTree(std::move(moved));
        double slack = enough;
        for (double need : margins) {
            SolidTree::Nearest pair = mineTree.nearest(theirTree, slack + need, [&](int a, int b) {
                const auto& given = margin[static_cast<std::size_t>(a)][static_cast<std::size_t>(b)];
                return !given || *given != need;
            });
            if (pair.mine < 0 || pair.distance.distance - need >= slack) continue;
            slack = pair.distance.distance - need;
            if (slack < least.slack) {
                // Witness points as they stand at that setting.
                const Pose back = carriedFromNow_W(situation, theirSupport, theirGroup, settings);
                pair.distance.p_WA = back * pair.distance.p_WA;
                pair.distance.p_WB = back * pair.distance.p_WB;
                least = {slack, pair, need};
            }
        }
        return slack;
    };
    const BoxMinimum found = leastOverBox(look, min, max, rate, start, tolerance::sweptDistance_m, farEnough_m, mostLooks);
    if (least.pair.mine < 0) return;

    const PlacedSolid& piece = pieces[static_cast<std::size_t>(least.pair.mine)];
    const Obstacle& o = *batch.obstacles[static_cast<std::size_t>(least.pair.theirs)];
    Finding f = makeFinding(CheckKind::clearance, "movement.near", {partSubject(m, piece.part), o.subject});
    f.id = findingId(std::string("movement.") + word(batch.kind), {mountSubject(m)});
    f.measure = Measure::length;
    // What could not be certified in the looks allowed is judged by its lower bound.
    f.value = (found.certified ? least.slack : std::min(least.slack, found.lowerBound)) + least.margin;
    f.limit = least.margin;
    f.verdict = judgeAtLeast(*f.value, *f.limit);
    f.key = f.verdict == Verdict::meets ? "movement.free" : *f.value < 0 ? "movement.overlaps" : "movement.near";
    f.facts["depth"] = {-*f.value, Measure::length};
    f.basis = BasisKind::assumed;
    f.witness = Witness{least.pair.distance.p_WA, least.pair.distance.p_WB};
    nameSettings(f, situation, motion, found.at);
    const auto held = worst.find(batch.kind);
    if (held == worst.end() || *f.value - *f.limit < *held->second.value - *held->second.limit) worst[batch.kind] = std::move(f);
}

/// How far the switch and its site are from each other at the worst setting of the groups that move
/// them against each other; what they are apart at present counts.
void siteStays(const Setup& setup, std::size_t index, const std::vector<CarrierStep>& mine, std::vector<Finding>& out) {
    const SetupMount& m = setup.mounts[index];
    const Site* site = setup.situation.site(m.mount.site);
    if (!site || !m.chain.face) return;
    const std::vector<CarrierStep> theirs = carriers(setup.situation, site->support, site->group);
    if (mine.empty() && theirs.empty()) return;
    const RelativeMotion motion = relativeMotion(mine, theirs);
    Finding f = makeFinding(CheckKind::reach, "movement.site", {mountSubject(m), siteSubject(*site)});
    f.id = findingId("movement.site", {mountSubject(m)});
    f.basis = weakest(site->basis, placingBasis(m, setup.situation));
    if (motion.steps.empty()) {  // how far apart they are is Reach's to say
        f.verdict = Verdict::meets;
        f.key = "movement.site.together";
        out.push_back(f);
        return;
    }
    f.measure = Measure::length;
    f.limit = site->tolerance_m;
    const Pose X_WFace = forward(m.chain, m.q).last();
    // What of the mount the distance is measured from: the face, or the line of a touchless one.
    const double range = m.chain.face->action == SwitchFace::Action::sense ? m.chain.face->sensingRange_m.value.value_or(0.0) : 0.0;
    const Solid atSite = Solid::sphere(site->p_W, 1e-9);
    const Solid atFace = Solid::capsule(X_WFace.translation(), X_WFace * Vec3(0, 0, range), 1e-9);
    std::vector<double> min, max, rate, start;
    for (std::size_t i = 0; i < motion.steps.size(); ++i) {
        const auto& list = motion.movesFirst[i] ? mine : theirs;
        std::size_t k = 0;
        while (list[k].support != motion.steps[i].support || list[k].group != motion.steps[i].group) ++k;
        min.push_back(motion.steps[i].min);
        max.push_back(motion.steps[i].max);
        start.push_back(motion.steps[i].now);
        rate.push_back(motionBound(list, k, {motion.movesFirst[i] ? atFace : atSite}));
    }
    const auto apart = [&](const std::vector<double>& x, double) {
        const GroupSettings settings = settingsAt(motion, x);
        return -faceToPoint(m, carriedFromNow_W(setup.situation, m.chain.support, m.chain.group, settings) * X_WFace,
                            carriedFromNow_W(setup.situation, site->support, site->group, settings) * site->p_W);
    };
    const BoxMinimum found = leastOverBox(apart, min, max, rate, start, tolerance::sweptDistance_m,
                                          std::numeric_limits<double>::infinity(), mostLooks);
    f.value = -(found.certified ? found.value : found.lowerBound);
    f.verdict = judgeAtMost(*f.value, *f.limit);
    f.key = f.verdict == Verdict::misses ? "movement.site.lost" : "movement.site.stays";
    nameSettings(f, setup.situation, motion, found.at);
    const GroupSettings settings = settingsAt(motion, found.at);
    f.witness = Witness{carriedFromNow_W(setup.situation, m.chain.support, m.chain.group, settings) * X_WFace.translation(),
                        carriedFromNow_W(setup.situation, site->support, site->group, settings) * site->p_W};
    if (f.verdict == Verdict::misses) {
        Remedy remedy;
        remedy.kind = Remedy::Kind::chooseGroup;
        remedy.mount = m.mount.id;
        remedy.key = "remedy.choose_group";
        f.remedy = remedy;
    }
    out.push_back(f);
}

}  // namespace

std::vector<Finding> checkMovement(const Setup& setup, const CheckContext& context) {
    std::vector<Finding> out;
    for (std::size_t i = 0; i < setup.mounts.size(); ++i) {
        const SetupMount& m = setup.mounts[i];
        const std::vector<PlacedSolid> pieces = placedSolids(m.chain, m.q, forward(m.chain, m.q));
        if (pieces.empty()) continue;
        const std::vector<CarrierStep> mine = carriers(setup.situation, m.chain.support, m.chain.group);
        siteStays(setup, i, mine, out);
        const std::vector<Obstacle> obstacles = obstaclesOf(setup, i);
        std::map<Obstacle::Kind, Finding> worst;
        for (const Batch& batch : batches(obstacles)) sweep(setup, i, batch, pieces, mine, context, worst);
        for (auto& [kind, finding] : worst) out.push_back(std::move(finding));
    }
    return out;
}

}  // namespace hither
