#include <algorithm>
#include <array>
#include <functional>
#include <ostream>
#include <set>

#include "app/cli/measured_json.h"
#include "app/cli/program.h"
#include "app/words/text.h"
#include "core/checks/obstacles.h"
#include "core/geometry/solid_tree.h"
#include "core/solve/solve.h"

namespace hither::cli {
namespace {

/// How much room a mount has beyond the margins that the Clearance check asks, in the tightest place:
/// what makes one solution better than another. Rooms beyond `enough` are equally good.
class ClearanceOf {
public:
    static constexpr double enough = 0.010;

    ClearanceOf(const Setup& setup, std::size_t index, const CheckLimits& limits) : setup_(setup), index_(index), limits_(limits), obstacles_(obstaclesOf(setup, index)), tree_(solids(obstacles_)) {
        for (const Obstacle& o : obstacles_) margins_.insert(o.keepOutMargin_m);
        margins_.insert({limits.clearanceBody_m, limits.clearanceSupport_m, limits.clearanceMount_m, 0.0});
    }

    double operator()(const Eigen::VectorXd& q) const {
        const SetupMount& m = setup_.mounts[index_];
        const std::vector<PlacedSolid> pieces = placedSolids(m.chain, q, forward(m.chain, q));
        std::vector<Solid> mine;
        for (const PlacedSolid& piece : pieces) mine.push_back(piece.solid_W);
        if (mine.empty() || obstacles_.empty()) return enough;
        const SolidTree tree(std::move(mine));
        double room = enough;
        for (const double need : margins_) {
            const SolidTree::Nearest near = tree.nearest(tree_, room + need, [&](int a, int b) {
                const PlacedSolid& piece = pieces[static_cast<std::size_t>(a)];
                const Obstacle& o = obstacles_[static_cast<std::size_t>(b)];
                const std::optional<double> asked = requiredMargin(setup_, index_, piece, o, limits_);
                return !asked || *asked != need || meetsOnPurpose(setup_, index_, piece, o);
            });
            if (near.mine >= 0) room = std::min(room, near.distance.distance - need);
        }
        return room;
    }

private:
    static std::vector<Solid> solids(const std::vector<Obstacle>& obstacles) {
        std::vector<Solid> out;
        for (const Obstacle& o : obstacles) out.push_back(o.solid_W);
        return out;
    }
    const Setup& setup_;
    std::set<double> margins_;
    std::size_t index_;
    CheckLimits limits_;
    std::vector<Obstacle> obstacles_;
    SolidTree tree_;
};

/// "elbow", "ball1, swing a", "round the rail": a freedom within its part.
std::string freedomName(const Chain& chain, const Freedom& f) {
    switch (f.of) {
        case Freedom::Of::along: return "along the rail or edge";
        case Freedom::Of::around: return "round the rail";
        case Freedom::Of::x: return "forward on the face";
        case Freedom::Of::y: return "sideways on the face";
        case Freedom::Of::yaw: return "turn on the face";
        case Freedom::Of::clocking: return "turn against the part before it";
        case Freedom::Of::joint: break;
    }
    std::string name = f.joint;
    for (char& c : name) if (c == '_' || c == '-') c = ' ';
    static const char* const ball[] = {", swing a", ", swing b", ", twist"};
    static const char* const bend[] = {", first arc x", ", first arc y", ", middle arc x", ", middle arc y", ", last arc x", ", last arc y"};
    for (const Element& e : chain.parts[static_cast<std::size_t>(f.part)]->elements) {
        if (e.name != f.joint) continue;
        if (e.freedoms() == 3) name += ball[f.component % 3];
        if (e.freedoms() == 6) name += bend[f.component % 6];
    }
    return name;
}
const std::string& partName(const Chain& chain, const Freedom& f) { return chain.parts[static_cast<std::size_t>(f.part)]->name; }

bool isCurvature(const Freedom& f, const Chain& chain) {
    if (f.of != Freedom::Of::joint) return false;
    for (const Element& e : chain.parts[static_cast<std::size_t>(f.part)]->elements) if (e.name == f.joint) return e.freedoms() == 6;
    return false;
}

Json valueJson(const Chain& chain, const Eigen::VectorXd& q, int i) {
    const Freedom& f = chain.freedoms[static_cast<std::size_t>(i)];
    Json one = {{"part", f.part}, {"what", f.of == Freedom::Of::joint ? f.joint : freedomName(chain, f)}};
    if (f.of == Freedom::Of::joint) one["component"] = f.component;
    if (isCurvature(f, chain)) one["value_per_m"] = rounded(q[i]);
    else put(one, "value", q[i], f.isAngle ? Measure::angle : Measure::length);
    one["kept"] = f.kept;
    return one;
}

Json solutionJson(const Chain& chain, const Solution& s) {
    Json one;
    put(one, "position_off", s.position_m, Measure::length);
    put(one, "angle_off", s.angle_rad, Measure::angle);
    one["least_range_left_share"] = rounded(s.limitMargin);
    put(one, "room_to_spare", s.clearance_m, Measure::length);
    one["on_clicks"] = s.snapped;
    Json values = Json::array();
    for (int i = 0; i < chain.freedomCount(); ++i) values.push_back(valueJson(chain, s.q, i));
    one["values"] = values;
    return one;
}

/// What the checks that depend on the joint settings say of one way.
struct Left { int missed = 0, unknown = 0, close = 0; auto operator<=>(const Left&) const = default; };

/// Puts the ways first that leave the fewest checks missed, then unknown, then close; otherwise the
/// solver's own order stays. Returns the counts in that order.
std::vector<Left> rankByChecks(const Setup& setup, std::size_t index, const CheckContext& context, std::vector<Solution>& solutions) {
    struct Ranked { Left left; Solution solution; };
    std::vector<Ranked> ranked;
    Setup trial = setup;
    const std::string mount = setup.mounts[index].mount.id;
    for (Solution& s : solutions) {
        SetupMount& m = trial.mounts[index];
        m.mount = withValues(setup.mounts[index].mount, m.chain, s.q);
        m.q = s.q;
        Left left;
        for (const Finding& f : checkAll(trial, context)) {
            // Of this mount, and not of what stays the same whatever the joints are (mates, loads).
            const bool about = std::any_of(f.subjects.begin(), f.subjects.end(), [&](const Subject& subject) { return subject.id == mount; });
            const bool place = f.check != CheckKind::fit || f.id.rfind("fit.span", 0) == 0 || f.id.rfind("fit.blocked", 0) == 0 ||
                               f.id.rfind("fit.footprint", 0) == 0 || f.id.rfind("fit.neighbour", 0) == 0 || f.id.rfind("fit.keep_free", 0) == 0;
            if (!about || !place) continue;
            if (f.verdict == Verdict::misses) ++left.missed;
            if (f.verdict == Verdict::unknown) ++left.unknown;
            if (f.verdict == Verdict::close) ++left.close;
        }
        ranked.push_back({left, std::move(s)});
    }
    std::stable_sort(ranked.begin(), ranked.end(), [](const Ranked& a, const Ranked& b) { return a.left < b.left; });
    std::vector<Left> out;
    for (std::size_t i = 0; i < solutions.size(); ++i) {
        solutions[i] = std::move(ranked[i].solution);
        out.push_back(ranked[i].left);
    }
    return out;
}

/// "leaves 2 checks missed", or nothing when it leaves none.
std::string leftWords(const Left& left) {
    if (left.missed == 0) return {};
    return "leaves " + std::to_string(left.missed) + (left.missed == 1 ? " check missed" : " checks missed");
}

std::string stoppedWords(const Chain& chain, const SolveReport& report) {
    std::string text;
    for (const Stopped& s : report.stopped) {
        const Freedom& f = chain.freedoms[static_cast<std::size_t>(s.freedom)];
        text += (text.empty() ? "" : "; ") + freedomName(chain, f) + " of " + partName(chain, f) + " is at its " + (s.atMax ? "upper" : "lower") + " end";
    }
    return text;
}

}  // namespace

int runSolve(const SolveArguments& arguments, std::ostream& out, std::ostream& err) {
    const Shipped shipped = loadShipped(err);
    Plan plan = openPlan(arguments.plan, shipped);
    const UnitSystem system = unitsFor(plan, arguments.display);
    const CheckContext context = contextFor(plan, shipped);
    Json rows = Json::array();
    bool all = true, any = false;
    for (Ready& ready : readyOptions(plan, arguments.option, shipped, arguments.plan)) {
        const std::size_t index = ready.option;
        if (!ready.setup) {
            all = false;
            err << "hither: " << ready.problem << "\n";
            continue;
        }
        Setup& setup = *ready.setup;
        for (std::size_t k = 0; k < setup.mounts.size(); ++k) {
            SetupMount& m = setup.mounts[k];
            if (!arguments.mount.empty() && m.mount.id != arguments.mount && m.mount.name != arguments.mount) continue;
            any = true;
            const std::string name = (m.mount.name.empty() ? m.mount.id : m.mount.name);
            const Site* site = setup.situation.site(m.mount.site);
            Json row = {{"option", plan.options[index].id}, {"mount", m.mount.id}};
            if (!m.chain.face || !site) {
                all = false;
                row["status"] = m.chain.face ? "no_site" : "no_switch";
                rows.push_back(row);
                if (!arguments.json) out << name << ": " << (m.chain.face ? "serves no site yet." : "has no switch at its end yet.") << "\n";
                continue;
            }
            const ClearanceOf clearance(setup, k, context.limits);
            SolveOptions options;
            options.clearance = std::cref(clearance);
            SolveReport report = solve(m.chain, m.q, Target{site->p_W, site->d_W, std::nullopt}, options);
            const bool solved = report.status == SolveReport::Status::solved;
            all = all && solved;
            const std::vector<Left> left = rankByChecks(setup, k, context, report.solutions);
            const auto way = static_cast<std::size_t>(std::max(1, arguments.choose)) - 1;
            if (solved && way >= report.solutions.size())
                throw Refused{arguments.plan + ": " + name + " has only " + std::to_string(report.solutions.size()) + " ways, --way " + std::to_string(arguments.choose) + " asks for another"};
            if (solved && left[way].missed > 0) all = false;
            row["status"] = solved ? "solved" : "near_only";
            Json list = Json::array();
            for (std::size_t i = 0; i < report.solutions.size(); ++i) {
                Json one = solutionJson(m.chain, report.solutions[i]);
                one["checks_missed"] = left[i].missed;
                one["checks_close"] = left[i].close;
                list.push_back(one);
            }
            row["solutions"] = list;
            if (!solved && report.nearest) {
                row["nearest"] = solutionJson(m.chain, *report.nearest);
                Json stops = Json::array();
                for (const Stopped& s : report.stopped) {
                    Json one = valueJson(m.chain, report.nearest->q, s.freedom);
                    one["at"] = s.atMax ? "upper_end" : "lower_end";
                    stops.push_back(one);
                }
                row["stopped_by"] = stops;
                put(row, "reach_short", report.reachShort_m, Measure::length);
            }
            rows.push_back(row);

            if (!arguments.json) {
                if (solved) {
                    out << wrapped(name + ": " + std::to_string(report.solutions.size()) +
                                   (report.solutions.size() == 1 ? " way" : " different ways") + " to bring the switch to " +
                                   (site->name.empty() ? site->id : site->name) + ".", "", 100) << "\n";
                } else if (report.nearest) {
                    out << wrapped(name + ": cannot be brought to " + (site->name.empty() ? site->id : site->name) + "; it gets as near as " +
                                   printLength(report.nearest->position_m, system, 1) + " and " + printAngle(report.nearest->angle_rad, 1) + ".", "", 100) << "\n";
                    if (report.reachShort_m > 0) out << "  The whole chain is too short by " << printLength(report.reachShort_m, system) << ".\n";
                    if (const std::string stops = stoppedWords(m.chain, report); !stops.empty()) out << wrapped("  " + stops + ".", "  ", 100) << "\n";
                }
                std::vector<Solution> shown = report.solutions;
                if (!solved && report.nearest) shown = {*report.nearest};
                int number = 0;
                for (const Solution& s : shown) {
                    ++number;
                    // The first three, or the one asked for.
                    if (solved && arguments.choose > 1 ? number != arguments.choose : number > 3) continue;
                    const std::string leaves = solved ? leftWords(left[static_cast<std::size_t>(number) - 1]) : std::string{};
                    out << (solved ? "  Way " + std::to_string(number) : std::string("  Nearest")) << ": off by "
                        << printLength(s.position_m, system, 2) << " and " << printAngle(s.angle_rad, 2) << ", "
                        << (s.clearance_m < 0 ? "too near something by " + printLength(-s.clearance_m, system, 1)
                                              : printLength(s.clearance_m, system, 0) + (s.clearance_m >= ClearanceOf::enough ? " or more" : "") + " of room to spare")
                        << (leaves.empty() ? "" : "; " + leaves + " (hither check says which)") << "\n";
                    for (int i = 0; i < m.chain.freedomCount(); ++i) {
                        const Freedom& f = m.chain.freedoms[static_cast<std::size_t>(i)];
                        std::string value;
                        if (isCurvature(f, m.chain)) { char text[40]; std::snprintf(text, sizeof text, "%.2f per m", s.q[i]); value = text; }
                        else value = f.isAngle ? printAngle(s.q[i], 1) : printLength(s.q[i], system, 1);
                        if (i == 0 || m.chain.freedoms[static_cast<std::size_t>(i) - 1].part != f.part) out << "    " << partName(m.chain, f) << "\n";
                        out << "      " << padded(freedomName(m.chain, f), 36) << " " << rightAligned(value, 12) << (f.kept ? "  (kept)" : "") << "\n";
                    }
                }
            }
            if (!arguments.json && solved && report.solutions.size() > 3 && arguments.choose == 1)
                out << "  (" << report.solutions.size() - 3 << " more: --way NUMBER shows one, --json all)\n";
            if (arguments.write && solved) {
                Mount& mount = plan.options[index].mounts[k];
                mount = withValues(mount, m.chain, report.solutions[way].q);
                m.mount = mount;
                m.q = report.solutions[way].q;  // later mounts are solved round this one
            }
        }
    }
    if (!arguments.mount.empty() && !any) throw Refused{arguments.plan + ": there is no mount " + arguments.mount};
    if (arguments.write) savePlan(plan, arguments.plan, "joints set by solving");
    if (arguments.json) {
        const Json document = {{"hither_solve", 1}, {"plan", {{"id", plan.id}, {"title", plan.title}, {"revision", plan.revision}}}, {"mounts", rows}, {"written", arguments.write}};
        out << document.dump(2) << "\n";
    } else if (arguments.write) {
        out << "Written to " << arguments.plan << ".\n";
    }
    return all ? fine : checkMisses;
}

}  // namespace hither::cli
