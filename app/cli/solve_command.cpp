#include <algorithm>
#include <ostream>

#include "app/cli/measured_json.h"
#include "app/cli/program.h"
#include "app/words/text.h"
#include "core/ways/ways.h"

namespace hither::cli {
namespace {

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

/// "leaves 2 checks missed", or nothing when it leaves none.
std::string leftWords(const WayLeft& left) {
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
            const Ways ways = findWays(setup, k, context);
            const SolveReport& report = ways.report;
            const std::vector<WayLeft>& left = ways.left;
            const bool solved = report.status == SolveReport::Status::solved;
            all = all && solved;
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
                                              : printLength(s.clearance_m, system, 0) + (s.clearance_m >= enoughRoom_m ? " or more" : "") + " of room to spare")
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
