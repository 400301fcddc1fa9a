#include <catch2/catch.hpp>

#include <map>
#include <unsupported/Eigen/MatrixFunctions>

#include "core/catalogue/catalogue.h"
#include "core/catalogue/reversed.h"
#include "random_parts.h"

using namespace hither;

namespace {

const Pose F = pose(rotationFromVector(Vec3(3.14159265358979323846, 0, 0)), Vec3::Zero());

/// exp of the twist (w, v), a second way to the poses: the matrix exponential of Lynch and Park,
/// Modern Robotics, section 3.3, by Eigen's general routine.
Pose exponential(const Vec3& w, const Vec3& v) {
    Eigen::Matrix4d S = Eigen::Matrix4d::Zero();
    S.topLeftCorner<3, 3>() << 0, -w.z(), w.y(), w.z(), 0, -w.x(), -w.y(), w.x(), 0;
    S.topRightCorner<3, 1>() = v;
    Pose X;
    X.matrix() = S.exp();
    return X;
}

/// Incoming -> outgoing frame, with the frames after each arc of a bend.
std::vector<Pose> elementPoses(const Element& element, const std::vector<double>& q) {
    const Vec3 none = Vec3::Zero();
    if (const auto* rigid = std::get_if<RigidElement>(&element.what)) return {rigid->X};
    if (const auto* hinge = std::get_if<HingeElement>(&element.what)) return {exponential(hinge->axis * q[0], none)};
    if (std::holds_alternative<SwivelElement>(element.what)) return {exponential(Vec3(0, 0, q[0]), none)};
    if (const auto* slide = std::get_if<SlideElement>(&element.what)) return {exponential(none, slide->axis * q[0])};
    if (std::holds_alternative<BallElement>(element.what)) return {exponential(Vec3(q[0], q[1], 0), none) * exponential(Vec3(0, 0, q[2]), none)};
    const double arc = std::get<BendElement>(element.what).length / 3;
    std::vector<Pose> after;
    Pose X = Pose::Identity();
    for (std::size_t i = 0; i < 3; ++i) {
        X = X * exponential(arc * Vec3(q[2 * i], q[2 * i + 1], 0), Vec3(0, 0, arc));
        after.push_back(X);
    }
    return after;
}

/// Where everything of a part lands, with its base port frame at X_WB.
struct Laid {
    Pose X_WO;
    std::vector<Solid> solids;
    std::vector<Vec3> points;  ///< centres of mass; joints between the arcs of bends
};

Laid lay(const Part& part, const std::vector<std::vector<double>>& q, const Pose& X_WB) {
    Laid laid{X_WB, {}, {}};
    for (std::size_t i = 0; i < part.elements.size(); ++i) {
        const std::vector<Pose> X = elementPoses(part.elements[i], q[i]);
        if (const auto* rigid = std::get_if<RigidElement>(&part.elements[i].what)) {
            for (const Solid& solid : rigid->solids) laid.solids.push_back(solid.movedBy(laid.X_WO));
            laid.points.push_back(laid.X_WO * rigid->centreOfMass);
        }
        for (std::size_t k = 0; k + 1 < X.size(); ++k) laid.points.push_back((laid.X_WO * X[k]).translation());
        laid.X_WO = laid.X_WO * X.back();
    }
    return laid;
}

double inDisc(test::RandomParts& random, double radius, std::vector<double>& q) {
    const double angle = random.between(0, 6.283), r = radius * random.between(0, 1);
    q.push_back(r * std::cos(angle));
    q.push_back(r * std::sin(angle));
    return r;
}

std::vector<double> randomValues(const Element& element, test::RandomParts& random) {
    std::vector<double> q;
    if (const auto* hinge = std::get_if<HingeElement>(&element.what)) q = {random.between(hinge->min, hinge->max)};
    if (const auto* swivel = std::get_if<SwivelElement>(&element.what)) q = {random.between(swivel->min, swivel->max)};
    if (const auto* slide = std::get_if<SlideElement>(&element.what)) q = {random.between(slide->min, slide->max)};
    if (const auto* ball = std::get_if<BallElement>(&element.what)) {
        inDisc(random, ball->cone, q);
        q.push_back(random.between(ball->twistMin, ball->twistMax));
    }
    if (const auto* bend = std::get_if<BendElement>(&element.what))
        for (int i = 0; i < 3; ++i) inDisc(random, 1 / bend->minRadius, q);
    return q;
}

}  // namespace

TEST_CASE("a part turned end for end takes the same poses, and its solids and masses stay where they were", "[catalogue][reversed]") {
    test::RandomParts random(20261125);
    std::map<std::size_t, int> seen;
    double worst = 0;
    for (int round = 0; round < 400; ++round) {
        const PartRead read = readPart(random.part(true), "random");
        REQUIRE(read.part);
        const Part& part = *read.part;
        const Part turned = reversed(part);
        const std::size_t n = part.elements.size();
        std::vector<std::vector<double>> q, q_rev(n);
        for (const Element& element : part.elements) {
            q.push_back(randomValues(element, random));
            ++seen[element.what.index()];
        }
        for (std::size_t i = 0; i < n; ++i) {
            q_rev[n - 1 - i] = reversedValues(part.elements[i], q[i]);
            // The turned element's own limits hold for the turned values, and turning twice is nothing.
            const std::vector<double> twice = reversedValues(part.elements[i], q_rev[n - 1 - i]);
            for (std::size_t k = 0; k < twice.size(); ++k) CHECK(twice[k] == Approx(q[i][k]).margin(1e-12));
            if (const auto* ball = std::get_if<BallElement>(&part.elements[i].what))
                CHECK(std::hypot(q_rev[n - 1 - i][0], q_rev[n - 1 - i][1]) <= ball->cone + 1e-12);
        }
        const Pose X_WB = pose(rotationFromVector(Vec3(random.between(-2, 2), random.between(-2, 2), random.between(-2, 2))),
                               Vec3(random.between(-1, 1), random.between(-1, 1), random.between(-1, 1)));
        const Laid there = lay(part, q, X_WB);
        const Laid back = lay(turned, q_rev, there.X_WO * F);
        worst = std::max(worst, (back.X_WO.matrix() - (X_WB * F).matrix()).cwiseAbs().maxCoeff());

        // The pose itself: X_rev = F X^-1 F.
        const Pose X = X_WB.inverse() * there.X_WO, X_rev = (there.X_WO * F).inverse() * back.X_WO;
        worst = std::max(worst, (X_rev.matrix() - (F * X.inverse() * F).matrix()).cwiseAbs().maxCoeff());

        REQUIRE(back.points.size() == there.points.size());
        for (std::size_t i = 0; i < there.points.size(); ++i)
            worst = std::max(worst, (back.points[there.points.size() - 1 - i] - there.points[i]).norm());
        REQUIRE(back.solids.size() == there.solids.size());
        for (const Solid& solid : there.solids) {
            double nearest = 1;
            for (const Solid& other : back.solids)
                if (other.kind == solid.kind && other.radius == solid.radius && other.half == solid.half && other.hull == solid.hull)
                    nearest = std::min(nearest, (other.X_FG.matrix() - solid.X_FG.matrix()).cwiseAbs().maxCoeff());
            worst = std::max(worst, nearest);
        }
    }
    CHECK(seen.size() == 6);
    for (const auto& [kind, count] : seen) CHECK(count > 100);
    CHECK(worst < 1e-11);
}

TEST_CASE("turning end for end changes the ports over and turning twice gives the part back", "[catalogue][reversed]") {
    test::RandomParts random(7);
    for (int round = 0; round < 100; ++round) {
        const PartRead read = readPart(random.part(true), "random");
        REQUIRE(read.part);
        const Part turned = reversed(*read.part), twice = reversed(turned);
        CHECK(turned.bases.front() == *read.part->outlet);
        CHECK(*turned.outlet == read.part->bases.front());
        CHECK(turned.id == read.part->id);
        CHECK(turned.totalMass_kg() == read.part->totalMass_kg());
        REQUIRE(twice.elements.size() == read.part->elements.size());
        for (std::size_t i = 0; i < twice.elements.size(); ++i) {
            CHECK(turned.elements[twice.elements.size() - 1 - i].name == twice.elements[i].name);
            const auto* rigid = std::get_if<RigidElement>(&twice.elements[i].what);
            const auto* hinge = std::get_if<HingeElement>(&twice.elements[i].what);
            if (rigid) CHECK(rigid->X.isApprox(std::get<RigidElement>(read.part->elements[i].what).X, 1e-12));
            if (hinge) CHECK(hinge->axis.isApprox(std::get<HingeElement>(read.part->elements[i].what).axis, 1e-12));
        }
    }
}

TEST_CASE("an arm turned end for end by hand", "[catalogue][reversed]") {
    // Worked by hand: a 100 mm rod, then an elbow about x. Bent by 30 degrees, y of the outlet's
    // z axis is -sin 30. Seen from the other end the elbow comes first and the bend goes the same way.
    const auto json = nlohmann::json::parse(R"({"id":"arm","name":"Arm","kind":"arm","reversible":true,
        "bases":[{"interface":"UNC 1/4-20","gender":"female"}],"outlet":{"interface":"UNC 1/4-20","gender":"male"},
        "elements":[{"kind":"rigid","to_mm":[0,0,100],"centre_of_mass_mm":[0,10,20]},{"kind":"hinge","name":"elbow","min_deg":-90,"max_deg":90}]})");
    const PartRead read = readPart(json, "arm");
    REQUIRE(read.part);
    const Part turned = reversed(*read.part);
    const auto& hinge = std::get<HingeElement>(turned.elements[0].what);
    CHECK(hinge.axis == Vec3(-1, 0, 0));
    const auto& rod = std::get<RigidElement>(turned.elements[1].what);
    CHECK((rod.X.translation() - Vec3(0, 0, 0.1)).norm() < 1e-15);
    CHECK((rod.centreOfMass - Vec3(0, -0.01, 0.08)).norm() < 1e-15);  // 20 mm from what is now its far end
}
