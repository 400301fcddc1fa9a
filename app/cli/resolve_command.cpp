#include <ostream>

#include "app/cli/measured_json.h"
#include "app/cli/program.h"
#include "app/words/text.h"
#include "core/catalogue/solid_json.h"

namespace hither::cli {
namespace {

/// The form of a solid, with its numbers rounded to the output's accuracy.
Json roundedNumbers(const nlohmann::json& value) {
    if (value.is_number()) return rounded(value.get<double>());
    if (value.is_array()) { Json out = Json::array(); for (const auto& v : value) out.push_back(roundedNumbers(v)); return out; }
    if (value.is_object()) { Json out = Json::object(); for (const auto& [k, v] : value.items()) out[k] = roundedNumbers(v); return out; }
    return value;
}
Json solidJson(const Solid& solid_W) { return roundedNumbers(writeSolid(solid_W)); }

Json poseJson(const Pose& X) { return {{"at_mm", millimetres(X.translation())}, {"axes", rotation(X.linear())}}; }

Json freedomJson(const SetupMount& m, int i) {
    const Freedom& f = m.chain.freedoms[static_cast<std::size_t>(i)];
    static const char* const names[] = {"along", "around", "x", "y", "yaw", "clocking", "joint"};
    Json one = {{"part", f.part}, {"of", names[static_cast<int>(f.of)]}};
    if (f.of == Freedom::Of::joint) { one["joint"] = f.joint; one["component"] = f.component; }
    bool curvature = false;
    for (const Element& e : m.chain.parts[static_cast<std::size_t>(f.part)]->elements)
        curvature = curvature || (f.of == Freedom::Of::joint && e.name == f.joint && e.freedoms() == 6);
    const auto write = [&](const char* key, double v) {
        if (curvature) one[std::string(key) + "_per_m"] = rounded(v);
        else put(one, key, v, f.isAngle ? Measure::angle : Measure::length);
    };
    write("value", m.q[i]);
    if (f.fullTurn) one["full_turn"] = true;
    else { write("min", f.min); write("max", f.max); }
    if (f.step) write("step", *f.step);
    one["kept"] = f.kept;
    return one;
}

}  // namespace

int runResolve(const ResolveArguments& arguments, std::ostream& out, std::ostream& err) {
    const Shipped shipped = loadShipped(err);
    const Plan plan = openPlan(arguments.plan, shipped);
    const UnitSystem system = unitsFor(plan, arguments.display);
    Json options = Json::array();
    for (const Ready& ready : readyOptions(plan, arguments.option, shipped, arguments.plan)) {
        const std::size_t index = ready.option;
        if (!ready.setup) {
            err << "hither: " << ready.problem << "\n";
            continue;
        }
        const Setup& setup = *ready.setup;
        Json mounts = Json::array();
        for (const SetupMount& m : setup.mounts) {
            const ChainPoses poses = forward(m.chain, m.q);
            Json parts = Json::array();
            for (std::size_t i = 0; i < m.chain.parts.size(); ++i) {
                const Pose& X = poses.X_WF[static_cast<std::size_t>(m.chain.partFrame[i])];
                parts.push_back({{"part", m.chain.parts[i]->id}, {"name", m.chain.parts[i]->name}, {"base", poseJson(X)}});
            }
            Json freedoms = Json::array();
            for (int i = 0; i < m.chain.freedomCount(); ++i) freedoms.push_back(freedomJson(m, i));
            Json solids = Json::array();
            for (const PlacedSolid& piece : placedSolids(m.chain, m.q, poses))
                solids.push_back({{"part", piece.part}, {"jaw", piece.jaw}, {"solid", solidJson(piece.solid_W)}});
            mounts.push_back({{"id", m.mount.id}, {"site", m.mount.site}, {"parts", parts}, {"freedoms", freedoms},
                              {m.chain.face ? "face" : "outlet", poseJson(poses.last())}, {"solids", solids}});
            if (!arguments.json) {
                out << (m.mount.name.empty() ? m.mount.id : m.mount.name) << " (" << plan.options[index].name << ")\n";
                const auto line = [&](const std::string& name, const Vec3& p, const Vec3& z) {
                    char direction[64];
                    std::snprintf(direction, sizeof direction, "(%5.2f, %5.2f, %5.2f)", z.x(), z.y(), z.z());
                    out << "  " << padded(name, 44) << rightAligned(printLength(p.x(), system), 12) << rightAligned(printLength(p.y(), system), 12)
                        << rightAligned(printLength(p.z(), system), 12) << "   " << direction << "\n";
                };
                out << "  " << padded("base of each part, from the floor origin", 44) << rightAligned("forward", 12) << rightAligned("left", 12) << rightAligned("up", 12) << "   points along\n";
                for (std::size_t i = 0; i < m.chain.parts.size(); ++i) {
                    const Pose& X = poses.X_WF[static_cast<std::size_t>(m.chain.partFrame[i])];
                    line(m.chain.parts[i]->name, X.translation(), X.linear().col(2));
                }
                line(m.chain.face ? "face of the switch" : "free end", poses.last().translation(), poses.last().linear().col(2));
            }
        }
        Json supports = Json::array();
        for (const Support& s : setup.situation.supports) {
            Json solids = Json::array();
            for (const SupportSolid& piece : s.solids)
                solids.push_back({{"name", piece.name}, {"group", piece.group}, {"solid", solidJson(piece.solid.movedBy(groupPose_W(setup.situation, s.id, piece.group)))}});
            Json landmarks = Json::array();
            for (const Landmark& l : s.landmarks)
                landmarks.push_back({{"id", l.id}, {"name", l.name}, {"at_mm", millimetres(groupPose_W(setup.situation, s.id, l.group) * l.p_S)}});
            Json attachments = Json::array();
            for (const Attachment& a : s.attachments) {
                const Pose X = groupPose_W(setup.situation, s.id, a.group);
                static const char* const kinds[] = {"rail", "edge", "face", "cloth"};
                Json one = {{"id", a.id}, {"name", a.name}, {"kind", kinds[static_cast<int>(a.kind)]}, {"group", a.group}, {"from_mm", millimetres(X * a.a)}};
                if (a.kind != AttachmentKind::face) one["to_mm"] = millimetres(X * a.b);
                attachments.push_back(one);
            }
            supports.push_back({{"id", s.id}, {"kind", s.kind}, {"attachments", attachments}, {"landmarks", landmarks}, {"solids", solids}});
        }
        Json body = Json::array();
        if (setup.situation.body)
            for (const BodySolid& piece : setup.situation.body->solids)
                body.push_back({{"segment", word(piece.segment)}, {"solid", solidJson(piece.solid.movedBy(setup.situation.body->X_WSegment.at(piece.segment)))}});
        Json sites = Json::array();
        for (const Site& s : setup.situation.sites)
            sites.push_back({{"id", s.id}, {"at_mm", millimetres(s.p_W)}, {"movement", plain(s.d_W)}, {"tolerance_mm", rounded(s.tolerance_m * 1000)}});
        options.push_back({{"id", plan.options[index].id}, {"name", plan.options[index].name}, {"mounts", mounts}, {"supports", supports}, {"body", body}, {"sites", sites}});
    }
    if (arguments.json) {
        const Json document = {{"hither_resolve", 1}, {"plan", {{"id", plan.id}, {"title", plan.title}, {"revision", plan.revision}}}, {"options", options}};
        out << document.dump(2) << "\n";
    }
    return fine;
}

}  // namespace hither::cli
