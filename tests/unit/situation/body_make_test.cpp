#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <random>

#include "core/situation/person.h"
#include "core/units/quantity.h"

using namespace hither;

namespace {

const BodyData& data() {
    static const BodyData read = [] {
        std::vector<std::string> problems;
        auto found = BodyData::read(std::string(HITHER_SOURCE_DIR) + "/resources/body", problems);
        REQUIRE(found);
        return *found;
    }();
    return read;
}

/// An upright seat with the seat surface at `seat_z`, feet on the floor.
Support upright(double seat_z) {
    Support support;
    support.id = "seat";
    support.resting.posture = Resting::Posture::seated;
    support.resting.hip_S = Vec3(0, 0, seat_z);
    return support;
}

/// A bed of 0.5 m with a back section (turning up about the hip) and a leg section (about the knees).
Support bed(double back_deg = 0, double leg_deg = 0) {
    Support support;
    support.id = "bed";
    const auto section = [](const char* id, const Vec3& pivot, const Vec3& axis, double value) {
        MovingGroup group;
        group.id = group.name = id;
        group.pivot = pivot;
        group.axis = axis;
        group.max = radians(80);
        group.value = radians(value);
        return group;
    };
    support.groups = {section("back", Vec3(0, 0, 0.5), Vec3::UnitY(), back_deg), section("leg", Vec3(0.45, 0, 0.5), Vec3::UnitY(), leg_deg)};
    support.resting.posture = Resting::Posture::lying;
    support.resting.hip_S = Vec3(0, 0, 0.5);
    support.resting.backAngle_rad = radians(90);
    support.resting.trunkGroup = "back";
    support.resting.legGroup = "leg";
    return support;
}

Body made(const PersonSpec& spec, const Support& support, std::size_t problems = 0) {
    const BodyMade result = makeBody(spec, support, data());
    for (const auto& problem : result.problems) UNSCOPED_INFO(problem);
    REQUIRE(result.body);
    REQUIRE(result.problems.size() == problems);
    return *result.body;
}

/// Farthest extent of the solids of one segment along a direction of W, by casting rays is not
/// enough for tops of curved things: bounds are taken in a frame turned so that the direction is z.
double extent(const Body& body, std::initializer_list<SegmentId> segments, const Vec3& direction) {
    double most = -1e9;
    const Pose X_DW = frameFromZ(Vec3::Zero(), direction, Vec3(0.3, 0.5, 0.7)).inverse();
    for (const auto& each : body.solids)
        if (std::find(segments.begin(), segments.end(), each.segment) != segments.end())
            most = std::max(most, each.solid.bounds(X_DW * body.X_WSegment.at(each.segment)).max().z());
    return most;
}

const SegmentId head{Segment::head, Side::none}, pelvis{Segment::pelvis, Side::none}, trunk{Segment::trunk, Side::none};

}  // namespace

TEST_CASE("seated heights come out as the size says", "[body]") {
    // Definitions of ISO 7250-1, on an upright 90/90 seat without a cushion, all above the seat surface
    // but knee and popliteal height, which are above the foot's support.
    std::vector<BodySpec> bodies;
    for (const auto table : {BodyTable::woman, BodyTable::man})
        for (const double percentile : {1.0, 5.0, 50.0, 95.0, 99.0}) bodies.push_back({table, percentile, {}});
    bodies.push_back({BodyTable::child, {}, {{"stature", 1.10}}});
    bodies.push_back({BodyTable::child, {}, {{"stature", 1.50}}});
    bodies.push_back({BodyTable::man, {}, {{"stature", 1.70}, {"weightkg", 120}}});
    bodies.push_back({BodyTable::woman, {}, {{"sittingheight", 0.80}, {"eyeheightsitting", 0.70}, {"acromialheightsitting", 0.53}, {"elbowrestheight", 0.20}, {"kneeheightsitting", 0.52}, {"buttockkneelength", 0.55}}});
    for (const auto& spec : bodies) {
        PersonSpec person;
        person.body = spec;
        person.cushion_m = 0;
        std::vector<std::string> none;
        const BodySize size = data().size(spec, none);
        const double seat = size.m("poplitealheight");
        const Body body = made(person, upright(seat));
        const auto s = [&](const char* name) { return body.size.m(name); };
        INFO("stature " << s("stature"));
        constexpr double within = 0.005;
        CHECK(extent(body, {head}, Vec3::UnitZ()) - seat == Approx(s("sittingheight")).margin(within));
        CHECK(body.eyes_W.z() - seat == Approx(s("eyeheightsitting")).margin(1e-9));
        CHECK(extent(body, {{Segment::upperArm, Side::left}}, Vec3::UnitZ()) - seat == Approx(s("acromialheightsitting")).margin(within));
        const double elbow = -extent(body, {{Segment::upperArm, Side::right}, {Segment::forearm, Side::right}}, -Vec3::UnitZ());
        CHECK(elbow - seat == Approx(s("elbowrestheight")).margin(within));
        CHECK(extent(body, {{Segment::shank, Side::left}, {Segment::thigh, Side::left}}, Vec3::UnitX()) == Approx(s("buttockkneelength")).margin(within));
        CHECK(extent(body, {pelvis}, -Vec3::UnitX()) == Approx(0.0).margin(within));  // the back plane
        CHECK(-extent(body, {{Segment::foot, Side::left}}, -Vec3::UnitZ()) == Approx(0.0).margin(1e-9));
        // Top of the knee: over the knee joint.
        const Vec3 knee = body.X_WSegment.at({Segment::shank, Side::left}).translation();
        const auto top = pickOnBody(body, {knee + Vec3(0, 0, 1), Vec3(0, 0, -1)});
        REQUIRE(top);
        CHECK(top->point_W.z() == Approx(s("kneeheightsitting")).margin(within));
        CHECK(extent(body, {{Segment::thigh, Side::left}}, Vec3::UnitZ()) - seat == Approx(s("thighclearance")).margin(within));
        CHECK(-extent(body, {{Segment::thigh, Side::left}, pelvis}, -Vec3::UnitZ()) - seat == Approx(0.0).margin(within));
        CHECK(extent(body, {{Segment::upperArm, Side::left}}, Vec3::UnitY()) * 2 >= s("bideltoidbreadth") - within);
        CHECK(extent(body, {pelvis}, Vec3::UnitY()) * 2 == Approx(s("hipbreadthsitting")).margin(within));
        CHECK(extent(body, {head}, Vec3::UnitY()) * 2 == Approx(s("headbreadth")).margin(within));
        CHECK(extent(body, {head}, Vec3::UnitX()) + extent(body, {head}, -Vec3::UnitX()) == Approx(s("headlength")).margin(within));
        CHECK(extent(body, {trunk}, Vec3::UnitX()) >= std::max(s("chestdepth"), s("abdominalextensiondepthsitting")) - within);
    }
}

TEST_CASE("the cushion lifts and the chair's lean turns the body", "[body]") {
    PersonSpec person;
    person.body.table = BodyTable::man;
    person.cushion_m = 0.05;
    Support chair = upright(0.45);
    const Body flat = made(person, chair);
    CHECK(flat.eyes_W.z() == Approx(0.45 + 0.05 + flat.size.m("eyeheightsitting")).margin(1e-9));

    chair.resting.backAngle_rad = radians(20);
    chair.resting.seatAngle_rad = radians(5);
    const Body leaning = made(person, chair);
    // Trunk along the back plane, head upright, upper arm hanging, forearm level.
    CHECK((leaning.X_WSegment.at(trunk).linear() * Vec3::UnitZ() - Vec3(-std::sin(radians(20)), 0, std::cos(radians(20)))).norm() < 1e-12);
    CHECK((leaning.X_WSegment.at(head).linear() - Mat3::Identity()).norm() < 1e-12);
    CHECK(std::abs((leaning.X_WSegment.at({Segment::upperArm, Side::left}).linear() * Vec3::UnitZ()).x()) < 1e-12);
    CHECK(std::abs((leaning.X_WSegment.at({Segment::forearm, Side::left}).linear() * Vec3::UnitZ()).z()) < 0.01);
    // The buttocks touch the leaning back plane: farthest back along its normal.
    const Vec3 normal(std::cos(radians(20)), 0, std::sin(radians(20)));
    CHECK(extent(leaning, {pelvis}, -normal) + normal.dot(Vec3(0, 0, 0.45)) == Approx(0).margin(0.002));
    // Thighs rest on the raised cushion plane.
    const Vec3 seatUp(-std::sin(radians(5)), 0, std::cos(radians(5)));
    const double under = -extent(leaning, {{Segment::thigh, Side::left}}, -seatUp) - seatUp.dot(Vec3(0, 0, 0.45));
    CHECK(under == Approx(0.05).margin(0.002));
    // Both joints of the thigh are their own half thickness above the cushion, and the shanks hang.
    const double kneeHalf = 0.5 * (leaning.size.m("kneeheightsitting") - leaning.size.m("poplitealheight"));
    const Vec3 seatMiddle = Vec3(0, 0, 0.45) + 0.05 * seatUp;
    CHECK(seatUp.dot(leaning.X_WSegment.at({Segment::shank, Side::left}).translation() - seatMiddle) == Approx(kneeHalf).margin(1e-9));
    CHECK(seatUp.dot(leaning.X_WSegment.at({Segment::thigh, Side::left}).translation() - seatMiddle) == Approx(0.5 * leaning.size.m("thighclearance")).margin(1e-9));
    CHECK((leaning.X_WSegment.at({Segment::shank, Side::left}).linear() - Mat3::Identity()).norm() < 1e-9);
    // Feet flat on the foot plates when the seat is too low for hanging shanks.
    chair = upright(0.30);
    chair.resting.footrest_z_m = 0.05;
    const Body low = made(person, chair);
    CHECK(-extent(low, {{Segment::foot, Side::right}}, -Vec3::UnitZ()) == Approx(0.05).margin(1e-9));
    CHECK((low.X_WSegment.at({Segment::foot, Side::right}).linear() - Mat3::Identity()).norm() < 1e-9);
}

TEST_CASE("groups of the support carry the body", "[body]") {
    PersonSpec person;
    const Body flat = made(person, bed()), raised = made(person, bed(45));
    CHECK(flat.group.at(head) == "back");
    CHECK(flat.group.at({Segment::hand, Side::left}) == "back");
    CHECK(flat.group.at(pelvis).empty());
    CHECK(flat.group.at({Segment::foot, Side::left}) == "leg");
    // On the back, head toward -x, face up; the trunk turns rigidly about the section's pivot.
    CHECK((flat.X_WSegment.at(trunk).linear() * Vec3::UnitZ() + Vec3::UnitX()).norm() < 1e-12);
    CHECK((flat.X_WSegment.at(trunk).linear() * Vec3::UnitX() - Vec3::UnitZ()).norm() < 1e-12);
    const Vec3 pivot(0, 0, 0.5);
    const Vec3 turned = pivot + Eigen::AngleAxisd(radians(45), Vec3::UnitY()) * (flat.eyes_W - pivot);
    CHECK((raised.eyes_W - turned).norm() < 1e-12);
    CHECK(raised.eyes_W.z() > flat.eyes_W.z() + 0.3);
    CHECK((raised.X_WSegment.at(pelvis).matrix() - flat.X_WSegment.at(pelvis).matrix()).norm() < 1e-12);
    // The forearms stay as level as they were, above the mattress.
    for (const Side side : {Side::left, Side::right}) {
        const Pose& X_WForearm = raised.X_WSegment.at({Segment::forearm, side});
        CHECK((X_WForearm.linear() * Vec3::UnitZ()).z() == Approx((flat.X_WSegment.at({Segment::forearm, side}).linear() * Vec3::UnitZ()).z()).margin(0.02));
        CHECK(raised.X_WSegment.at({Segment::hand, side}).translation().z() > pivot.z());
    }
    // A leg section whose pivot is not at this person's knee: the knee is bridged.
    const Body dropped = made(person, bed(0, 30));
    CHECK(dropped.solids.size() == flat.solids.size() + 2);
    for (const Side side : {Side::left, Side::right})
        for (const auto& each : dropped.solids)
            if (each.segment == SegmentId{Segment::thigh, side} && &each >= &dropped.solids[flat.solids.size()]) {
                const Vec3 shank = dropped.X_WSegment.at({Segment::shank, side}).translation();
                CHECK(distance(Solid::sphere(shank, 0.001), each.solid.movedBy(dropped.X_WSegment.at(each.segment))).distance < 0);
            }
}

TEST_CASE("lying on a side puts that side down", "[body]") {
    PersonSpec person;
    person.lying = PersonSpec::Lying::onLeft;
    const Body left = made(person, bed());
    CHECK((left.X_WSegment.at(pelvis).linear() * Vec3::UnitY() + Vec3::UnitZ()).norm() < 1e-12);
    CHECK(left.X_WSegment.at(pelvis).linear().determinant() == Approx(1));
    CHECK(left.X_WSegment.at({Segment::upperArm, Side::left}).translation().z() < left.X_WSegment.at({Segment::upperArm, Side::right}).translation().z());
    person.lying = PersonSpec::Lying::onRight;
    const Body right = made(person, bed());
    CHECK((right.X_WSegment.at(pelvis).linear() * Vec3::UnitY() - Vec3::UnitZ()).norm() < 1e-12);
    CHECK(right.X_WSegment.at(pelvis).linear().determinant() == Approx(1));
}

TEST_CASE("left and right are mirror images", "[body]") {
    PersonSpec person;
    const Body body = made(person, upright(0.42));
    for (const auto& site : body.sites) {
        const auto at = site.id.rfind("_left");
        if (at == std::string::npos) continue;
        const ControlSite* twin = body.site(site.id.substr(0, at) + "_right");
        REQUIRE(twin);
        INFO(site.id);
        const Vec3 mirror(1, -1, 1);
        const Vec3 p = body.X_WSegment.at(site.segment) * site.point, q = body.X_WSegment.at(twin->segment) * twin->point;
        CHECK((p.cwiseProduct(mirror) - q).norm() < 1e-9);
        CHECK((site.movement.cwiseProduct(mirror) - twin->movement).norm() < 1e-12);
        CHECK(site.usual_m == twin->usual_m);
        CHECK("right" + site.name.substr(4) == twin->name);
    }
    for (const auto& each : body.solids) {
        if (each.segment.side != Side::left) continue;
        const Eigen::AlignedBox3d box = each.solid.bounds(body.X_WSegment.at(each.segment));
        const bool twin = std::any_of(body.solids.begin(), body.solids.end(), [&](const BodySolid& other) {
            if (other.segment != SegmentId{each.segment.segment, Side::right}) return false;
            const Eigen::AlignedBox3d theirs = other.solid.bounds(body.X_WSegment.at(other.segment));
            return std::abs(theirs.max().y() + box.min().y()) < 1e-9 && std::abs(theirs.min().y() + box.max().y()) < 1e-9 && std::abs(theirs.max().x() - box.max().x()) < 1e-9 && std::abs(theirs.min().z() - box.min().z()) < 1e-9;
        });
        CHECK(twin);
    }
}

TEST_CASE("control sites lie on the body's surface and move out of it", "[body]") {
    for (const BodySpec& spec : {BodySpec{BodyTable::woman, 5, {}}, BodySpec{BodyTable::man, 95, {}}, BodySpec{BodyTable::child, {}, {{"stature", 1.0}}}}) {
        PersonSpec person;
        person.body = spec;
        const Body body = made(person, upright(0.42));
        CHECK(body.sites.size() == controlSites().size());
        for (std::size_t i = 0; i < body.sites.size(); ++i) {
            const ControlSite& site = body.sites[i];
            INFO(site.id);
            CHECK(site.id == controlSites()[i].first);
            CHECK(site.name == controlSites()[i].second);
            CHECK(site.movement.norm() == Approx(1));
            CHECK(site.usual_m >= 0.01);
            double least = 1;
            bool ahead = false;
            for (const auto& each : body.solids)
                if (each.segment == site.segment) {
                    least = std::min(least, distance(Solid::sphere(site.point, 1e-6), each.solid).distance);
                    // A point 5 mm ahead along the movement is outside.
                    ahead = ahead || distance(Solid::sphere(site.point + 0.005 * site.movement, 1e-6), each.solid).distance < 0;
                }
            CHECK(std::abs(least) < 0.002);
            CHECK(!ahead);
        }
        for (const char* id : {"elbow_right", "head_left", "knee_inner_left", "index_right"}) CHECK(body.site(id));
        CHECK(!body.site("tail"));
    }
    // Where they are on a seated person: the right elbow outward is to the right and low, the head's left to the left.
    PersonSpec person;
    const Body body = made(person, upright(0.42));
    const auto at = [&](const char* id) { const ControlSite* s = body.site(id); return Vec3(body.X_WSegment.at(s->segment) * s->point); };
    const auto toward = [&](const char* id) { const ControlSite* s = body.site(id); return Vec3(body.X_WSegment.at(s->segment).linear() * s->movement); };
    CHECK(at("elbow_right").y() < -0.15);
    CHECK(toward("elbow_right").y() < -0.9);
    CHECK(at("head_left").y() == Approx(0.5 * body.size.m("headbreadth")).margin(0.002));
    CHECK(toward("knee_top_left").z() > 0.99);
    CHECK(toward("hand_back_left").z() > 0.4);   // palms half down on the armrest
    CHECK(at("index_right").x() > at("wrist_right").x() + 0.1);
    CHECK(at("foot_sole_left").z() == Approx(body.X_WSegment.at({Segment::foot, Side::left}).translation().z() - body.size.m("lateralmalleolusheight")).margin(0.002));
}

TEST_CASE("the body is joined without gaps", "[body]") {
    const auto joined = [](const Body& body) {
        const auto near = [&](SegmentId a, SegmentId b) {
            double least = 1;
            for (const auto& p : body.solids)
                for (const auto& q : body.solids)
                    if (p.segment == a && q.segment == b) least = std::min(least, distance(p.solid, body.X_WSegment.at(a), q.solid, body.X_WSegment.at(b)).distance);
            INFO(word(a) << " and " << word(b));
            CHECK(least < 0);
        };
        near(pelvis, trunk);
        near(trunk, {Segment::neck, Side::none});
        near({Segment::neck, Side::none}, head);
        for (const Side side : {Side::left, Side::right}) {
            near(trunk, {Segment::upperArm, side});
            near({Segment::upperArm, side}, {Segment::forearm, side});
            near({Segment::forearm, side}, {Segment::hand, side});
            near(pelvis, {Segment::thigh, side});
            near({Segment::thigh, side}, {Segment::shank, side});
            near({Segment::shank, side}, {Segment::foot, side});
        }
    };
    PersonSpec person;
    joined(made(person, upright(0.4)));
    joined(made(person, bed(60, 30)));
    person.body = {BodyTable::child, {}, {{"stature", 1.0}}};
    joined(made(person, upright(0.3)));
    for (const auto& [joint, range] : publishedRanges()) {
        person.posture = {{joint, range.max}};
        joined(made(person, upright(0.3)));
        person.posture = {{joint, range.min}};
        joined(made(person, upright(0.3)));
    }
}

TEST_CASE("signs of the joint angles", "[body]") {
    PersonSpec person;
    const auto posed = [&](const Posture& posture) {
        person.posture = posture;
        return made(person, upright(0.42));
    };
    const auto tip = [](const Body& body, Segment segment, Side side) { return Vec3(body.X_WSegment.at({segment, side}) * Vec3(0, 0, -0.1)); };
    const auto origin = [](const Body& body, Segment segment, Side side) { return Vec3(body.X_WSegment.at({segment, side}).translation()); };
    const Body rest = posed({});
    const auto moved = [&](const char* joint, double by, Segment segment, Side side) {
        const double from = std::string(joint).find("elbow") == 0 ? radians(90) : 0.0;
        return Vec3(tip(posed({{joint, from + by}}), segment, side) - tip(posed({{joint, from}}), segment, side));
    };
    CHECK(moved("shoulder_flexion_left", 0.5, Segment::upperArm, Side::left).x() > 0.03);
    CHECK(moved("shoulder_abduction_left", 0.5, Segment::upperArm, Side::left).y() > 0.03);
    CHECK(moved("shoulder_abduction_right", 0.5, Segment::upperArm, Side::right).y() < -0.03);
    CHECK(moved("shoulder_rotation_left", 0.5, Segment::forearm, Side::left).y() > 0.03);   // forearm forward swings outward
    CHECK(moved("shoulder_rotation_right", 0.5, Segment::forearm, Side::right).y() < -0.03);
    CHECK(moved("elbow_flexion_left", 0.5, Segment::forearm, Side::left).z() > 0.03);
    CHECK(moved("knee_flexion_left", 0.5, Segment::shank, Side::left).norm() > 0.03);
    CHECK(moved("hip_abduction_right", 0.5, Segment::thigh, Side::right).y() < -0.03);
    // Ankle upward: the toes rise.
    const auto toes = [](const Body& body) { return Vec3(body.X_WSegment.at({Segment::foot, Side::left}) * Vec3(0.15, 0, 0)); };
    CHECK(toes(posed({{"ankle_flexion_left", 0.3}})).z() > toes(rest).z() + 0.02);
    // Knee 0 stretches the leg forward, hip 0 drops the thigh.
    CHECK(origin(posed({{"knee_flexion_left", 0}}), Segment::foot, Side::left).x() > origin(rest, Segment::foot, Side::left).x() + 0.2);
    CHECK(origin(posed({{"hip_flexion_left", 0}}), Segment::shank, Side::left).z() < origin(rest, Segment::shank, Side::left).z() - 0.3);
    // Forearm forward: pronation 80 turns the back of the hand up, supination the palm.
    const auto back = [](const Body& body, Side side) { return Vec3(body.X_WSegment.at({Segment::hand, side}).linear() * Vec3(0, side == Side::left ? 1 : -1, 0)); };
    for (const Side side : {Side::left, Side::right}) {
        const std::string end = side == Side::left ? "_left" : "_right";
        CHECK(back(posed({{"forearm_pronation" + end, radians(80)}}), side).z() > 0.9);
        CHECK(back(posed({{"forearm_pronation" + end, radians(-80)}}), side).z() < -0.9);
        // With the back of the hand up, wrist flexion lowers the finger tips, extension raises them;
        // deviation to the thumb side moves them inward.
        const auto hand = [&](Posture more) { more["forearm_pronation" + end] = radians(90); return tip(posed(more), Segment::hand, side); };
        CHECK(hand({{"wrist_flexion" + end, 0.5}}).z() < hand({}).z() - 0.03);
        CHECK(hand({{"wrist_flexion" + end, -0.5}}).z() > hand({}).z() + 0.03);
        const double inward = side == Side::left ? -1 : 1;
        CHECK(inward * (hand({{"wrist_deviation" + end, 0.3}}).y() - hand({}).y()) > 0.02);
    }
    // Neck: forward, to the right, turn to the left.
    CHECK(posed({{"neck_flexion", 0.4}}).eyes_W.x() > rest.eyes_W.x() + 0.02);
    CHECK(posed({{"neck_bend", 0.4}}).eyes_W.y() < -0.02);
    CHECK(posed({{"neck_rotation", 0.4}}).eyes_W.y() > 0.02);
}

TEST_CASE("picking finds the nearest body part", "[body]") {
    PersonSpec person;
    const Body body = made(person, upright(0.42));
    const auto face = pickOnBody(body, {Vec3(2, 0, body.eyes_W.z()), Vec3(-3, 0, 0)});
    REQUIRE(face);
    CHECK(face->segment == head);
    CHECK(face->normal_segment.x() > 0.8);
    CHECK((body.X_WSegment.at(face->segment) * face->point_segment - face->point_W).norm() < 1e-12);
    CHECK(face->point_W.x() > body.eyes_W.x());
    const auto chest = pickOnBody(body, {Vec3(2, 0, 0.42 + 0.05 + 0.45), Vec3(-1, 0, 0)});
    REQUIRE(chest);
    CHECK(chest->segment == trunk);
    CHECK(!pickOnBody(body, {Vec3(2, 0, 3), Vec3(-1, 0, 0)}));
}

TEST_CASE("a body that cannot be made says why", "[body]") {
    const auto why = [](const PersonSpec& person, const Support& support, bool still) {
        const BodyMade result = makeBody(person, support, data());
        CHECK(result.body.has_value() == still);
        REQUIRE(!result.problems.empty());
        return result.problems.front();
    };
    PersonSpec person;
    Support support = upright(0.4);
    support.resting.posture = Resting::Posture::none;
    CHECK(why(person, support, false).find("nobody can sit or lie") == 0);
    support = upright(0.4);
    support.resting.backAngle_rad = radians(90);
    CHECK(why(person, support, false).find("lie in one plane") != std::string::npos);
    support = upright(0.4);
    person.cushion_m = -0.1;
    CHECK(why(person, support, false).find("cushion") != std::string::npos);
    person.cushion_m = 0.05;
    person.posture = {{"tail_flexion", 1}};
    CHECK(why(person, support, true).find("\"tail_flexion\" is not a joint; allowed are ankle_flexion_left") == 0);
    person.posture = {{"elbow_flexion_left", std::nan("")}};
    CHECK(why(person, support, true).find("\"elbow_flexion_left\" must be between") == 0);
    person.posture.clear();
    person.activeRanges = {{"elbow_flexion_left", {1.0, 0.5, ""}}};
    CHECK(why(person, support, true).find("active range") != std::string::npos);
    person.activeRanges.clear();
    person.body.typed = {{"eyeheightsitting", 0.9}, {"sittingheight", 0.85}};
    bool said = false;
    for (const auto& problem : makeBody(person, support, data()).problems) said = said || problem.find("must be at least 40 mm more than \"eyeheightsitting\"") != std::string::npos;
    CHECK(said);
    CHECK(!makeBody(person, support, data()).body);
    // Heights that hold and an arm that gives way.
    person.body.typed = {{"acromialheightsitting", 0.563}, {"elbowrestheight", 0.26}, {"shoulderelbowlength", 0.36}};
    const BodyMade bent = makeBody(person, support, data());
    REQUIRE(bent.body);
    REQUIRE(!bent.problems.empty());
    CHECK(bent.problems.back().find("the upper arm is made") != std::string::npos);
}

TEST_CASE("any sizes that are not refused make a whole body", "[body]") {
    std::mt19937 random(20120);  // fixed seed
    std::uniform_real_distribution<double> scale(0.3, 2.5), chance(0, 1);
    const auto& statistics = data().tables.at(BodyTable::man).statistics;
    int bodies = 0;
    for (int i = 0; i < 400; ++i) {
        PersonSpec person;
        person.body.table = i % 3 == 0 ? BodyTable::child : i % 3 == 1 ? BodyTable::woman : BodyTable::man;
        const double share = chance(random) * chance(random);
        for (const auto& [name, statistic] : statistics)
            if (chance(random) < share) person.body.typed[name] = statistic.mean * (chance(random) < 0.5 ? scale(random) : 1 + 0.2 * (scale(random) - 1.4));
        person.body.typed["stature"] = 1.0 + chance(random);
        person.lying = static_cast<PersonSpec::Lying>(i % 3);
        for (const auto& [joint, range] : publishedRanges())
            if (chance(random) < 0.3) person.posture[joint] = range.min + chance(random) * (range.max - range.min);
        const BodyMade result = makeBody(person, i % 2 == 0 ? upright(0.4) : bed(80 * chance(random), 40 * chance(random)), data());
        if (!result.body) {
            CHECK(!result.problems.empty());
            continue;
        }
        ++bodies;
        for (const auto& [id, X] : result.body->X_WSegment) {
            REQUIRE(X.matrix().allFinite());
            CHECK((X.linear() * X.linear().transpose() - Mat3::Identity()).norm() < 1e-9);
        }
        for (const auto& site : result.body->sites) REQUIRE(site.point.allFinite());
        for (const auto& [name, value] : person.body.typed) CHECK(result.body->size.m(name) == value);
    }
    CHECK(bodies > 100);
}
