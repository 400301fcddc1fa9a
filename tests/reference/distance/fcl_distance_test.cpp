#include <fcl/fcl.h>

#include <catch2/catch.hpp>
#include <cstdio>
#include <fstream>

#include "core/geometry/distance.h"
#include "tests/support/random_solids.h"

// Outside values: the Flexible Collision Library 0.7 (Pan, Chitta and Manocha 2012) as Debian builds it, asked at
// distance_tolerance 1e-9. It is itself wrong now and then, so each pair also carries a certificate that needs no
// library: two points on the surfaces bound the distance from above, two parallel planes from below.

using namespace hither;
using namespace hither::test;

namespace {

// A rounded box is the library's box, whose rounding is taken off the distance.
struct FclSolid {
    std::shared_ptr<fcl::CollisionGeometryd> shape;
    double rounding = 0;
};

FclSolid fclSolid(const Solid& s) {
    switch (s.kind) {
        case SolidKind::sphere:
            return {std::make_shared<fcl::Sphered>(s.radius), 0};
        case SolidKind::capsule:
            return {std::make_shared<fcl::Capsuled>(s.radius, 2 * s.half.z()), 0};
        case SolidKind::cylinder:
            return {std::make_shared<fcl::Cylinderd>(s.radius, 2 * s.half.z()), 0};
        case SolidKind::box:
            return {std::make_shared<fcl::Boxd>(Vec3(2 * s.half)), 0};
        case SolidKind::roundedBox:
            return {std::make_shared<fcl::Boxd>(Vec3(2 * (s.half.array() - s.radius))), s.radius};
        case SolidKind::hull: {
            auto points = std::make_shared<std::vector<Vec3>>(s.hull->points);
            auto faces = std::make_shared<std::vector<int>>();
            for (const auto& f : s.hull->faces) faces->insert(faces->end(), {3, f[0], f[1], f[2]});
            return {std::make_shared<fcl::Convexd>(points, static_cast<int>(s.hull->faces.size()), faces), 0};
        }
    }
    return {};
}

double fclDistance(const FclSolid& A, const Pose& X_WA, const FclSolid& B, const Pose& X_WB) {
    fcl::DistanceRequestd request;
    request.distance_tolerance = 1e-9;
    fcl::DistanceResultd result;
    fcl::distance(A.shape.get(), X_WA, B.shape.get(), X_WB, request, result);
    return result.min_distance - A.rounding - B.rounding;
}

// The worst errors of one pair of kinds, metres.
struct Row {
    SolidKind kindA = SolidKind::sphere;
    SolidKind kindB = SolidKind::sphere;
    int apart = 0;
    double certificate = 0;
    double fcl = 0;       // of those pairs on which the library is right by the certificate
    int fclWrong = 0;     // pairs on which it is not
    double fclWorst = 0;  // by how much
    int overlapping = 0;
    double attained = 0;  // depth along the normal, witnesses, relation
    double excess = 0;    // by how much some sampled direction needs less movement
};

void writeTable(const std::vector<Row>& rows, const std::string& file) {
    std::ofstream out(std::string(HITHER_BINARY_DIR) + "/" + file);
    out << "| pair | apart | certificate, m | against FCL, m | FCL wrong | by, m | overlapping | depth attained, m | sampled excess, m |\n"
        << "| --- | --- | --- | --- | --- | --- | --- | --- | --- |\n";
    for (const Row& r : rows) {
        std::array<char, 256> line{};
        std::snprintf(line.data(), line.size(), "| %s, %s | %d | %.1e | %.1e | %d | %.1e | %d | %.1e | %.1e |\n", name(r.kindA), name(r.kindB),
                      r.apart, r.certificate, r.fcl, r.fclWrong, r.fclWorst, r.overlapping, r.attained, r.excess);
        out << line.data();
    }
}

constexpr int solidsPerPair = 100;
constexpr int apartPerSolid = 1000;       // 100,000 a pair of kinds
constexpr int overlappingPerSolid = 30;   // 3,000
constexpr int directions = 400;

// Apart by 0.01 to 300 mm along some direction, so at least that much.
Pose poseApart(RandomSolids& random, const Solid& A, const Pose& X_WA, const Solid& B) {
    Pose X = random.anyPose(0.3);
    const Vec3 n = random.direction();
    const double gap = std::exp(random.uniform(std::log(1e-5), std::log(0.3)));
    X.translation() += (gap - gapAlong(A, X_WA, B, X, n)) * n;
    return X;
}

void measureApart(RandomSolids& random, Row& row) {
    for (int k = 0; k < solidsPerPair; ++k) {
        const Solid A = random.solid(row.kindA);
        const Solid B = random.solid(row.kindB);
        const FclSolid fclA = fclSolid(A);
        const FclSolid fclB = fclSolid(B);
        for (int i = 0; i < apartPerSolid; ++i) {
            const Pose X_WA = random.anyPose(0.3);
            const Pose X_WB = poseApart(random, A, X_WA, B);
            const Distance d = distance(A, X_WA, B, X_WB);
            const double certificate = certify(d, A, X_WA, B, X_WB).worst();
            const double difference = std::abs(fclDistance(fclA, X_WA, fclB, X_WB) - d.distance);
            ++row.apart;
            row.certificate = std::max(row.certificate, certificate);
            if (difference <= 1e-5) {
                row.fcl = std::max(row.fcl, difference);
            } else {
                ++row.fclWrong;
                row.fclWorst = std::max(row.fclWorst, difference);
            }
        }
    }
}

void measureOverlapping(RandomSolids& random, Row& row) {
    std::vector<Vec3> sampled;
    for (int k = 0; k < directions; ++k) sampled.push_back(random.direction());
    for (int k = 0; k < solidsPerPair; ++k) {
        const Solid A = random.solid(row.kindA);
        const Solid B = random.solid(row.kindB);
        for (int i = 0; i < overlappingPerSolid; ++i) {
            const Pose X_WA = random.anyPose(0.3);
            Pose X_WB = random.anyPose(0.3);
            const Vec3 off = random.direction();
            const double deepest = std::min(reach(A, Pose::Identity(), off), reach(B, Pose::Identity(), off));
            X_WB.translation() = X_WA.translation() + random.uniform(0, 1) * deepest * off;
            const Distance d = distance(A, X_WA, B, X_WB);
            if (d.distance > 0) continue;
            ++row.overlapping;
            row.attained = std::max(row.attained, certify(d, A, X_WA, B, X_WB).worst());
            double most = -1e300;
            const auto consider = [&](const Vec3& n) { most = std::max(most, gapAlong(A, X_WA, B, X_WB, n)); };
            for (const Vec3& n : sampled) consider(n);
            for (int j = 0; j < 60; ++j) consider((d.normal_AB + std::exp(random.uniform(-14, -1)) * random.direction()).normalized());
            for (int axis = 0; axis < 3; ++axis) {
                for (double sign : {1.0, -1.0}) {
                    consider(sign * X_WA.linear() * A.X_FG.linear().col(axis));
                    consider(sign * X_WB.linear() * B.X_FG.linear().col(axis));
                }
            }
            row.excess = std::max(row.excess, most - d.distance);
        }
    }
}

}  // namespace

TEST_CASE("distances of every two kinds agree with FCL and with their certificates", "[distance][fcl]") {
    std::vector<Row> rows;
    int wrong = 0;
    for (std::size_t a = 0; a < allKinds.size(); ++a) {
        for (std::size_t b = a; b < allKinds.size(); ++b) {
            Row row;
            row.kindA = allKinds[a];
            row.kindB = allKinds[b];
            RandomSolids random(static_cast<unsigned>(1000 + 10 * a + b));
            measureApart(random, row);
            measureOverlapping(random, row);
            rows.push_back(row);
            CAPTURE(name(row.kindA), name(row.kindB), row.fclWrong, row.fclWorst);
            CHECK(row.apart == solidsPerPair * apartPerSolid);
            CHECK(row.overlapping > 1000);
            CHECK(row.certificate < 1e-7);
            CHECK(row.fcl <= 1e-5);
            CHECK(row.fclWrong <= row.apart / 200);  // the library's own slips
            CHECK(row.attained < 1e-7);
            CHECK(row.excess < 1e-6);
            wrong += row.fclWrong;
        }
    }
    CAPTURE(wrong);
    CHECK(wrong < 21 * solidsPerPair * apartPerSolid / 1000);
    writeTable(rows, "distance_accuracy.md");
}
