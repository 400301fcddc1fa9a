#include <catch2/catch.hpp>

#include <algorithm>
#include <limits>
#include <map>
#include <random>

#include "core/checks/checks.h"
#include "core/checks/obstacles.h"
#include "core/storage/plan_json.h"

using namespace hither;

// The clearance checks against a plain search over all pairs, and over movement against a grid of
// settings, on the sample plans with random joint values. The searches here share the pairwise
// distance with the checks, but no tree, no bound and no branch; the moves are made by setting the
// plan's supports anew where that is the same motion.

namespace {

const std::string source = HITHER_SOURCE_DIR;

Plan sample(const std::string& name) {
    const PlanRead read = planFromJsonFile(source + "/sample_plans/" + name + ".json");
    REQUIRE(read.plan);
    return *read.plan;
}

const BodyData& bodies() {
    static const BodyData data = [] {
        std::vector<std::string> problems;
        std::optional<BodyData> read = BodyData::read(source + "/resources/body", problems);
        REQUIRE(read);
        return *read;
    }();
    return data;
}

Setup setupOf(const Plan& plan, std::size_t option) {
    SetupMade made = makeSetup(plan, option, bodies());
    REQUIRE(made.setup);
    return *made.setup;
}

void randomise(Setup& setup, std::mt19937& random, double share) {
    for (SetupMount& m : setup.mounts) {
        for (int i = 0; i < m.chain.freedomCount(); ++i) {
            const Freedom& f = m.chain.freedoms[static_cast<std::size_t>(i)];
            std::uniform_real_distribution<double> in(-0.5 * share, 0.5 * share);
            if (f.of == Freedom::Of::joint || f.of == Freedom::Of::clocking) m.q[i] += in(random) * (f.max - f.min);
        }
        m.q = clamped(m.chain, m.q);
    }
}

/// What a pair must keep, said again from the design: nothing for a grip and what it holds, minus the
/// site's tolerance for the switch and the body part at its site, zero for a jaw and other support.
struct Rule { std::optional<double> margin; bool onPurpose = false; };
Rule rule(const Setup& setup, std::size_t k, const PlacedSolid& piece, const Obstacle& o, const CheckLimits& limits) {
    const SetupMount& m = setup.mounts[k];
    if (o.kind == Obstacle::Kind::keepOut) return {o.keepOutMargin_m};
    if (o.kind == Obstacle::Kind::mount) return {limits.clearanceMount_m};
    if (o.kind == Obstacle::Kind::support) {
        const auto& held = setup.situation.support(m.mount.support)->attachment(m.mount.attachment)->solids;
        if (piece.part == 0 && o.support == m.mount.support && std::count(held.begin(), held.end(), o.solidName)) return {std::nullopt};
        return {piece.jaw ? 0.0 : limits.clearanceSupport_m};
    }
    const bool isSwitch = piece.part == static_cast<int>(m.chain.parts.size()) - 1;
    return isSwitch && meetsOnPurpose(setup, k, piece, o) ? Rule{-setup.situation.site(m.mount.site)->tolerance_m, true} : Rule{limits.clearanceBody_m};
}

const Finding* byId(const std::vector<Finding>& all, const std::string& id) {
    for (const Finding& f : all) if (f.id == id) return &f;
    return nullptr;
}

constexpr Obstacle::Kind kinds[] = {Obstacle::Kind::body, Obstacle::Kind::support, Obstacle::Kind::mount, Obstacle::Kind::keepOut};

}  // namespace

TEST_CASE("clearance findings are those of a search over all pairs", "[clearance][brute]") {
    std::mt19937 random(20261125);
    int missed = 0, close = 0, free = 0;
    for (const char* name : {"elbow_switch_on_chair", "head_switch_on_bed", "two_switches_on_tray", "knee_switch_under_tray", "finger_switch_at_table"}) {
        const Setup given = setupOf(sample(name), 0);
        for (int round = 0; round < 12; ++round) {
            Setup setup = given;
            randomise(setup, random, 0.05 * round);
            const std::vector<Finding> all = checkClearance(setup, {});
            std::size_t expected = 0;
            for (std::size_t k = 0; k < setup.mounts.size(); ++k) {
                const SetupMount& m = setup.mounts[k];
                const std::vector<PlacedSolid> pieces = placedSolids(m.chain, m.q, forward(m.chain, m.q));
                const std::vector<Obstacle> obstacles = obstaclesOf(setup, k);
                for (const Obstacle::Kind kind : kinds) {
                    struct Worst { double slack = 1e9, distance = 0, margin = 0; };
                    std::map<std::string, Worst> worst;
                    double nearest = 1e9;
                    bool any = false;
                    for (const PlacedSolid& piece : pieces) {
                        for (const Obstacle& o : obstacles) {
                            if (o.kind != kind) continue;
                            const Rule r = rule(setup, k, piece, o, {});
                            if (!r.margin) continue;
                            const double d = distance(piece.solid_W, o.solid_W).distance;
                            if (!r.onPurpose) { nearest = std::min(nearest, d); any = true; }
                            const std::string pair = m.mount.id + "/" + std::to_string(piece.part) + "~" +
                                (o.kind == Obstacle::Kind::body ? "body/" + o.subject.id : o.kind == Obstacle::Kind::support ? o.subject.id + "/" + o.solidName
                                 : o.kind == Obstacle::Kind::mount ? o.subject.id + "/" + std::to_string(o.subject.part) : "keep_out/" + o.subject.id);
                            // Missed or within a fifth of the margin.
                            if (d >= *r.margin + 0.2 * std::abs(*r.margin) - 1e-9) continue;
                            Worst& w = worst[pair];
                            if (d - *r.margin < w.slack) w = {d - *r.margin, d, *r.margin};
                        }
                    }
                    const std::string what = std::string("clearance.") + word(kind) + ":";
                    for (const auto& [pair, w] : worst) {
                        ++expected;
                        const Finding* f = byId(all, what + pair);
                        INFO(name << " round " << round << " " << what + pair);
                        REQUIRE(f);
                        CHECK(*f->value == Approx(w.distance).margin(1e-8));
                        CHECK(*f->limit == Approx(w.margin));
                        CHECK(f->verdict == (w.distance < w.margin - 1e-9 ? Verdict::misses : Verdict::close));
                        ++(f->verdict == Verdict::misses ? missed : close);
                    }
                    if (worst.empty() && any) {
                        ++expected;
                        ++free;
                        const Finding* f = byId(all, what + m.mount.id);
                        REQUIRE(f);
                        CHECK(f->verdict == Verdict::meets);
                        CHECK(*f->value == Approx(nearest).margin(1e-8));
                    }
                }
            }
            CHECK(all.size() == expected);
        }
    }
    // The rounds did meet every sort.
    CHECK(missed > 50);
    CHECK(close > 5);
    CHECK(free > 50);
}

TEST_CASE("clearance over movement: attained where it says, and no grid of settings finds less", "[movement][brute]") {
    std::mt19937 random(7);
    struct Case { const char* name; std::size_t option; std::string support; std::vector<std::string> groups; int steps; };
    const Case cases[] = {
        {"head_switch_on_bed", 0, "bed", {"back"}, 90},
        {"head_switch_on_bed", 0, "bed", {"thigh", "lower_leg"}, 9},
        {"two_options_at_one_site", 0, "chair", {"tilt", "recline"}, 9},
        {"two_switches_on_tray", 0, "chair", {"tilt"}, 60},
    };
    int compared = 0;
    for (const Case& c : cases) {
        const Plan plan = sample(c.name);
        for (int round = 0; round < 4; ++round) {
            Setup setup = setupOf(plan, c.option);
            randomise(setup, random, 0.1 * round);
            const std::vector<Finding> all = checkMovement(setup, {});

            // The least slack at one setting of the groups, support only: everything made anew there.
            const auto slackAt = [&](const std::map<std::string, double>& settings, std::size_t k) {
                Plan moved = plan;
                for (SupportSpec& s : moved.supports)
                    if (s.id == c.support) for (const auto& [group, value] : settings) s.settings[group] = value;
                Setup there = setupOf(moved, c.option);
                for (std::size_t i = 0; i < there.mounts.size(); ++i) there.mounts[i].q = setup.mounts[i].q;
                const SetupMount& m = there.mounts[k];
                double least = std::numeric_limits<double>::infinity();
                for (const PlacedSolid& piece : placedSolids(m.chain, m.q, forward(m.chain, m.q)))
                    for (const Obstacle& o : obstaclesOf(there, k)) {
                        if (o.kind != Obstacle::Kind::support) continue;
                        if (const Rule r = rule(there, k, piece, o, {}); r.margin) least = std::min(least, distance(piece.solid_W, o.solid_W).distance - *r.margin);
                    }
                return least;
            };
            const Support* support = setup.situation.support(c.support);
            for (std::size_t k = 0; k < setup.mounts.size(); ++k) {
                const Finding* f = byId(all, "movement.support:" + setup.mounts[k].mount.id);
                INFO(c.name << " " << c.groups.front() << " round " << round << " mount " << k);
                if (!f) continue;
                const double reported = *f->value - *f->limit;
                // Attained: at the settings it names there is a gap that small or smaller (another pair, not
                // moved against the mount by these groups, may be nearer still).
                std::map<std::string, double> at;
                for (const GroupAt& g : f->at) if (g.support == c.support) at[g.group] = g.value;
                CHECK(slackAt(at, k) <= reported + 1e-6);
                // And no grid point that moves these groups finds less by more than 0.5 mm, the gap
                // at the present settings apart.
                const double now = slackAt({}, k);
                double least = std::numeric_limits<double>::infinity();
                std::vector<int> counter(c.groups.size(), 0);
                for (bool more = true; more;) {
                    std::map<std::string, double> settings;
                    for (std::size_t g = 0; g < c.groups.size(); ++g) {
                        const MovingGroup* group = support->group(c.groups[g]);
                        settings[c.groups[g]] = group->min + (group->max - group->min) * counter[g] / c.steps;
                    }
                    least = std::min(least, slackAt(settings, k));
                    more = false;
                    for (std::size_t g = 0; g < counter.size() && !more; ++g) {
                        if (++counter[g] <= c.steps) more = true; else counter[g] = 0;
                    }
                }
                if (least < std::min(now, 0.1) - 1e-9) {
                    CHECK(reported <= least + 0.0005 + 1e-9);
                    ++compared;
                }
            }
        }
    }
    CHECK(compared >= 4);
}

TEST_CASE("every sentence is whole: no placeholder left empty, a capital first, a full stop last", "[sentences]") {
    std::mt19937 random(3);
    std::map<std::string, int> keys;
    for (const char* name : {"elbow_switch_on_chair", "head_switch_on_bed", "two_switches_on_tray", "knee_switch_under_tray", "finger_switch_at_table",
                             "foot_switch_on_pole", "does_not_mate", "two_options_at_one_site"}) {
        const Plan plan = sample(name);
        for (std::size_t option = 0; option < plan.options.size(); ++option) {
            for (int round = 0; round < 4; ++round) {
                Setup setup = setupOf(plan, option);
                randomise(setup, random, 0.2 * round);
                if (round == 3)
                    for (SetupMount& m : setup.mounts) { m.mount.place.along_m += 0.5; m.q *= 3.0; }
                for (const Finding& f : checkAll(setup, {})) {
                    ++keys[f.key];
                    for (const UnitSystem system : {UnitSystem::metric, UnitSystem::inch}) {
                        for (const std::string& text : {sentence(f, system), remedySentence(f, system)}) {
                            if (text.empty()) continue;
                            INFO(f.key << ": " << text);
                            CHECK(text != f.key);
                            CHECK(text.find_first_of("{}") == std::string::npos);
                            CHECK(text.find("  ") == std::string::npos);
                            CHECK(text.find(" ,") == std::string::npos);
                            CHECK(text.find("unknown amount") == std::string::npos);
                            CHECK_FALSE((text[0] >= 'a' && text[0] <= 'z'));
                            CHECK(text.back() == '.');
                        }
                    }
                }
            }
        }
    }
    CHECK(keys.size() >= 20);
}
