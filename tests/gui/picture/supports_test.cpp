#include <catch2/catch.hpp>

#include "app/picture/support_forms.h"
#include "core/geometry/distance.h"
#include "mesh_facts.h"

using namespace hither;

namespace {

constexpr double allowed_m = 0.003;

void checkDrawn(const Support& support) {
    MeshStore store;
    for (const SupportSolid& s : support.solids) {
        INFO(support.kind << ": " << s.name);
        Solid own = s.solid;
        own.X_FG = Pose::Identity();
        Eigen::AlignedBox3d drawn;
        double farthest = 0;
        const std::vector<DrawnPiece> pieces = drawnSolid(support, s, store);
        REQUIRE_FALSE(pieces.empty());
        for (const DrawnPiece& piece : pieces)
            for (const Eigen::Vector3f& p : piece.mesh->points) {
                drawn.extend(p.cast<double>());
                farthest = std::max(farthest, distance(Solid::sphere(p.cast<double>(), 1e-9), own).distance);
            }
        CHECK(farthest <= allowed_m);
        const Eigen::AlignedBox3d exact = own.bounds(Pose::Identity());
        CHECK((drawn.min() - exact.min()).cwiseAbs().maxCoeff() <= allowed_m);
        CHECK((drawn.max() - exact.max()).cwiseAbs().maxCoeff() <= allowed_m);
    }
}

}  // namespace

TEST_CASE("Every kind of support is drawn within 3 mm of its solids, at its usual and at its extreme sizes") {
    for (const SupportKind& kind : supportKinds()) {
        if (kind.kind == "custom") continue;
        for (const double share : {0.0, 0.5, 1.0}) {
            SupportSpec spec;
            spec.id = "s";
            spec.kind = kind.kind;
            // One after the other, so that what one size allows of another does not matter.
            for (const SupportDimension& d : kind.dimensions) {
                SupportSpec one = spec;
                one.dimensions[d.key] = d.min + share * (d.max - d.min);
                if (const SupportMade made = makeSupport(one); made.support && share != 0.5) checkDrawn(*made.support);
            }
            const SupportMade made = makeSupport(spec);
            REQUIRE(made.support);
            checkDrawn(*made.support);
        }
    }
}

TEST_CASE("Solids typed by hand are drawn too") {
    Support support;
    support.id = "own";
    support.kind = "custom";
    support.solids = {{"wheel", Solid::cylinder(Vec3::Zero(), Vec3(0, 0.02, 0), 0.05), ""},
                      {"thin", Solid::cylinder(Vec3::Zero(), Vec3(0, 0, 0.001), 0.3), ""},
                      {"castor", Solid::cylinder(Vec3::Zero(), Vec3(0, 0, 0.3), 0.004), ""},
                      {"hand_rim", Solid::cylinder(Vec3::Zero(), Vec3(0, 0, 0.01), 0.2), ""},
                      {"seat", Solid::box(Pose::Identity(), Vec3(0.2, 0.2, 0.001)), ""},
                      {"ball", Solid::sphere(Vec3(0, 0, 1), 0.1), ""},
                      {"post", Solid::capsule(Vec3(0, 0, 0.5), Vec3(0, 0, 1), 0.03), ""}};
    checkDrawn(support);
}

TEST_CASE("Drawn wheels and cushions are closed surfaces") {
    SupportSpec spec;
    spec.id = "chair";
    spec.kind = "chair-manual";
    const SupportMade made = makeSupport(spec);
    REQUIRE(made.support);
    MeshStore store;
    for (const SupportSolid& s : made.support->solids) {
        if (s.name != "wheel_left" && s.name != "castor_right" && s.name != "hand_rim_left" && s.name != "seat" && s.name != "armrest_pad_left") continue;
        INFO(s.name);
        for (const DrawnPiece& piece : drawnSolid(*made.support, s, store)) {
            CHECK(factsOf(*piece.mesh).openSides == 0);
            CHECK(factsOf(*piece.mesh).volume > 0);
        }
    }
}
