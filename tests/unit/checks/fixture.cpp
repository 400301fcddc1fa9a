#include "fixture.h"

#include <catch2/catch.hpp>

namespace hither::test {

Figure assumed(double v) { return {v, {BasisKind::assumed, {}}}; }
Figure measured(double v) { return {v, {BasisKind::measured, "test"}}; }

const Finding* find(const std::vector<Finding>& all, const std::string& idStart) {
    for (const Finding& f : all) if (f.id.rfind(idStart, 0) == 0) return &f;
    return nullptr;
}

namespace {

Port port(const char* thread, Gender gender, double length) {
    Port p;
    p.thread = parseThread(thread).value;
    p.gender = gender;
    p.length = measured(length);
    p.material = "aluminium";
    return p;
}

Element rigid(const Vec3& to, std::vector<Solid> solids, double kg) {
    RigidElement e;
    e.X = translation(to);
    e.solids = std::move(solids);
    e.mass_kg = measured(kg);
    e.centreOfMass = 0.5 * to;
    return {"", e};
}

Part base(const char* id, PartKind kind) {
    Part p;
    p.id = id;
    p.name = std::string("the ") + id;
    p.kind = kind;
    p.dimensionsBasis = {BasisKind::measured, "test"};
    p.ratedLoad_kg = measured(1.0);
    return p;
}

}  // namespace

Bench::Bench() {
    Part clamp = base("clamp", PartKind::grip);
    RailGrip grip;
    grip.min_m = measured(0.013);
    grip.max_m = measured(0.038);
    grip.width_m = 0.030;
    grip.wall_m = 0.006;
    clamp.grips = {grip};
    clamp.elements = {rigid({0, 0, 0.02}, {Solid::cylinder({0, 0, 0}, {0, 0, 0.02}, 0.01)}, 0.100)};
    clamp.outlet = port("UNC 1/4-20", Gender::male, 0.006);
    parts["clamp"] = clamp;

    Part post = base("post", PartKind::post);
    post.bases = {port("UNC 1/4-20", Gender::female, 0.010)};
    post.elements = {rigid({0, 0, 0.2}, {Solid::cylinder({0, 0, 0}, {0, 0, 0.2}, 0.006)}, 0.080)};
    post.outlet = port("UNC 1/4-20", Gender::male, 0.006);
    parts["post"] = post;

    Part post38 = base("post38", PartKind::post);
    post38.bases = {port("UNC 3/8-16", Gender::female, 0.010)};
    post38.elements = post.elements;
    post38.outlet = port("UNC 1/4-20", Gender::male, 0.006);
    parts["post38"] = post38;

    Part hinge = base("hinge", PartKind::joint);
    HingeElement h;
    h.axis = Vec3::UnitX();
    h.min = radians(-90);
    h.max = radians(90);
    hinge.bases = {port("UNC 1/4-20", Gender::female, 0.010)};
    hinge.elements = {{"hinge", h}, rigid({0, 0, 0.02}, {Solid::sphere({0, 0, 0.01}, 0.01)}, 0.050)};
    hinge.outlet = port("UNC 1/4-20", Gender::male, 0.006);
    parts["hinge"] = hinge;

    Part button = base("button", PartKind::switchDevice);
    button.bases = {port("UNC 1/4-20", Gender::female, 0.008)};
    button.elements = {rigid({0, 0, 0.02}, {Solid::cylinder({0, 0, 0}, {0, 0, 0.02}, 0.03)}, 0.060)};
    SwitchFace face;
    face.size = {0.06, 0.06, 0.02};
    face.force_N = measured(2.0);
    face.angleTolerance_rad = measured(radians(30));
    button.face = face;
    parts["button"] = button;

    Support support;
    support.id = "stand";
    support.kind = "custom";
    support.basis = BasisKind::measured;
    support.groups = {{"turning", "turning part", "", Vec3(0, 0, 0.5), Vec3::UnitY(), false, 0.0, radians(60), 0.0}};
    Attachment rail;
    rail.id = "rail";
    rail.name = "the rail";
    rail.kind = AttachmentKind::rail;
    rail.a = Vec3(0, 0, 0);
    rail.b = Vec3(0, 0, 1);
    rail.reference = Vec3::UnitX();
    rail.outside_m = measured(0.0254);
    rail.solids = {"tube"};
    support.attachments = {rail};
    support.solids = {{"tube", Solid::cylinder({0, 0, 0}, {0, 0, 1}, 0.0127), ""}};
    setup.situation.supports = {support};

    Site site;
    site.id = "site";
    site.name = "the site";
    // Clamp (12.7 + 20) + post 200 + button 20 mm: the face is 252.7 mm from the rail's axis, facing +x.
    site.p_W = Vec3(0.2527, 0, 0.5);
    site.d_W = -Vec3::UnitX();
    site.tolerance_m = 0.010;
    site.angleTolerance_rad = radians(20);
    site.force_N = measured(5.0);
    site.basis = BasisKind::measured;
    setup.situation.sites = {site};
}

void Bench::addMount(const std::string& id, double along, const std::vector<std::string>& partIds, const std::string& attachment) {
    SetupMount m;
    m.mount.id = id;
    m.mount.name = id;
    m.mount.support = "stand";
    m.mount.attachment = attachment;
    m.mount.place.along_m = along;
    m.mount.site = "site";
    for (const std::string& part : partIds) m.mount.parts.push_back({part, false, 0, false, {}});
    setup.mounts.push_back(std::move(m));
    rebuild();
}

void Bench::rebuild() {
    for (SetupMount& m : setup.mounts) {
        ChainMade made = makeChain(m.mount, setup.situation, [this](const std::string& id) -> std::shared_ptr<const Part> {
            const auto found = parts.find(id);
            return found == parts.end() ? nullptr : std::make_shared<const Part>(found->second);
        });
        INFO(made.problem);
        REQUIRE(made.chain);
        m.chain = *made.chain;
        m.q = made.q;
    }
}

}  // namespace hither::test
