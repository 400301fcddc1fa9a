#include <catch2/catch.hpp>

#include "core/geometry/distance.h"
#include "tests/support/random_solids.h"

using namespace hither;
using namespace hither::test;

namespace {

// Half of the pairs anywhere in a room, the rest with centres near each other, so that deep, shallow and
// hardly separate ones all come up.
Pose poseNear(RandomSolids& random, const Solid& A, const Solid& B, const Pose& X_WA, int i) {
    Pose X = random.anyPose(0.3);
    if (i % 2 == 0) return X;
    double reachBoth = 0;
    for (int k = 0; k < 3; ++k) {
        const Vec3 n = random.direction();
        reachBoth = std::max(reachBoth, std::min(reach(A, Pose::Identity(), n), reach(B, Pose::Identity(), n)));
    }
    X.translation() = X_WA.translation() + random.direction() * reachBoth * random.uniform(0, 1.3);
    return X;
}

template <class Check>
void forPairs(unsigned seed, int count, const Check& check) {
    RandomSolids random(seed);
    for (SolidKind kindA : allKinds) {
        for (SolidKind kindB : allKinds) {
            CAPTURE(name(kindA), name(kindB));
            for (int i = 0; i < count; ++i) {
                const Solid A = random.solid(kindA);
                const Solid B = random.solid(kindB);
                const Pose X_WA = random.anyPose(0.3);
                const Pose X_WB = poseNear(random, A, B, X_WA, i);
                check(random, A, X_WA, B, X_WB);
            }
        }
    }
}

}  // namespace

TEST_CASE("the invariants of a distance hold for random pairs of every two kinds", "[geometry]") {
    int apart = 0;
    int overlapping = 0;
    forPairs(41, 300, [&](RandomSolids&, const Solid& A, const Pose& X_WA, const Solid& B, const Pose& X_WB) {
        const Distance d = distance(A, X_WA, B, X_WB);
        const Certificate c = certify(d, A, X_WA, B, X_WB);
        if (!(c.worst() < 1e-7)) {
            CAPTURE(d.distance, c.surface, c.relation, c.gap);
            FAIL("the certificate of a distance is off");
        }
        (d.distance > 0 ? apart : overlapping) += 1;
    });
    CHECK(apart > 4000);
    CHECK(overlapping > 4000);
}

TEST_CASE("no sampled direction separates overlapping solids with less movement", "[geometry]") {
    forPairs(42, 60, [&](RandomSolids& random, const Solid& A, const Pose& X_WA, const Solid& B, const Pose& X_WB) {
        const Distance d = distance(A, X_WA, B, X_WB);
        if (d.distance > 0) return;
        double most = -1e300;
        const auto consider = [&](const Vec3& n) { most = std::max(most, gapAlong(A, X_WA, B, X_WB, n)); };
        for (int k = 0; k < 500; ++k) consider(random.direction());
        for (int k = 0; k < 500; ++k) consider((d.normal_AB + 0.1 * random.uniform(0, 1) * random.direction()).normalized());
        const Mat3 R_WA = X_WA.linear() * A.X_FG.linear();
        const Mat3 R_WB = X_WB.linear() * B.X_FG.linear();
        for (int k = 0; k < 3; ++k) {
            for (double sign : {1.0, -1.0}) {
                consider(sign * R_WA.col(k));
                consider(sign * R_WB.col(k));
                for (int j = 0; j < 3; ++j) {
                    const Vec3 across = R_WA.col(k).cross(R_WB.col(j));
                    if (across.norm() > 1e-6) consider(sign * across.normalized());
                }
            }
        }
        if (!(most <= d.distance + 1e-8)) {
            CAPTURE(d.distance, most);
            FAIL("a sampled direction needs less movement");
        }
    });
}

TEST_CASE("moved by the distance along the normal the two just touch", "[geometry]") {
    forPairs(43, 60, [&](RandomSolids&, const Solid& A, const Pose& X_WA, const Solid& B, const Pose& X_WB) {
        const Distance d = distance(A, X_WA, B, X_WB);
        Pose moved = X_WB;
        moved.translation() -= d.distance * d.normal_AB;
        if (!(std::abs(distance(A, X_WA, B, moved).distance) < 1e-7)) FAIL("moved by the distance they do not touch");
    });
}

TEST_CASE("the distance from B to A is the distance from A to B", "[geometry]") {
    forPairs(44, 60, [&](RandomSolids&, const Solid& A, const Pose& X_WA, const Solid& B, const Pose& X_WB) {
        const double there = distance(A, X_WA, B, X_WB).distance;
        const double back = distance(B, X_WB, A, X_WA).distance;
        if (!(std::abs(there - back) < 1e-8)) {
            CAPTURE(there, back);
            FAIL("the two ways round differ");
        }
    });
}

TEST_CASE("distances go smoothly through touching", "[geometry]") {
    RandomSolids random(45);
    for (SolidKind kindA : allKinds) {
        for (SolidKind kindB : allKinds) {
            CAPTURE(name(kindA), name(kindB));
            for (int i = 0; i < 6; ++i) {
                const Solid A = random.solid(kindA);
                const Solid B = random.solid(kindB);
                const Pose X_WA = random.anyPose();
                const Pose start = random.anyPose();
                const Distance d = distance(A, X_WA, B, start);
                for (double gap : {1e-3, 1e-5, 1e-7, 1e-9, 1e-11, 1e-13, 0.0, -1e-13, -1e-11, -1e-9, -1e-7, -1e-5}) {
                    Pose X_WB = start;
                    X_WB.translation() += (gap - d.distance) * d.normal_AB;
                    const Distance near = distance(A, X_WA, B, X_WB);
                    CAPTURE(gap, near.distance);
                    // Pushed together, another direction may be the shorter way out.
                    if (gap >= 0) CHECK(std::abs(near.distance - gap) < 1e-9);
                    if (gap < 0) CHECK(near.distance > gap - 1e-9);
                    CHECK(certify(near, A, X_WA, B, X_WB).worst() < 1e-7);
                }
            }
        }
    }
}

TEST_CASE("an answer does not depend on where in the room the pair is", "[geometry]") {
    forPairs(46, 20, [&](RandomSolids& random, const Solid& A, const Pose& X_WA, const Solid& B, const Pose& X_WB) {
        const Pose X = random.anyPose(10);
        const double here = distance(A, X_WA, B, X_WB).distance;
        const double there = distance(A, X * X_WA, B, X * X_WB).distance;
        if (!(std::abs(here - there) < 1e-8)) {
            CAPTURE(here, there);
            FAIL("the distance changed with the place");
        }
    });
}
