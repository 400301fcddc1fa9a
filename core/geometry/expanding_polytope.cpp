#include "core/geometry/expanding_polytope.h"

#include <algorithm>
#include <cmath>

namespace hither {
namespace {

constexpr int mostPoints = 260;
constexpr int mostFaces = 1400;

struct Face {
    std::array<int, 3> corner{};
    Vec3 n = Vec3::Zero();  // outward, unit
    double offset = 0;      // n . corner: the polytope's depth along n
    double depth = 0;       // D's own depth along n, once asked
    bool asked = false;
};

// A polytope inside -D, so that depths are positive: points are a - b.
class Polytope {
public:
    explicit Polytope(const CorePair& pair) : pair_(pair) {}

    WaysOut search() {
        WaysOut ways;
        if (!firstTetrahedron(ways)) return ways;
        while (pointCount_ < mostPoints && faceCount_ < mostFaces - 128) {
            Face* nearest = nullptr;
            for (int i = 0; i < faceCount_; ++i) {
                Face& f = faces_[static_cast<std::size_t>(i)];
                if (!f.asked || f.depth - f.offset > tolerance_) {
                    if (nearest == nullptr || f.offset < nearest->offset) nearest = &f;
                }
            }
            if (nearest == nullptr || nearest->offset > least_ - tolerance_) break;
            const Vec3 p = farthest(nearest->n);
            nearest->asked = true;
            nearest->depth = nearest->n.dot(p);
            if (nearest->depth < least_) {
                least_ = nearest->depth;
                best_ = nearest->n;
            }
            if (nearest->depth - nearest->offset <= tolerance_) continue;
            if (!add(p)) break;
        }
        collect(ways);
        return ways;
    }

private:
    Vec3 farthest(const Vec3& n) const { return -pair_.least(n).w; }
    const Vec3& at(int i) const { return points_[static_cast<std::size_t>(i)]; }

    void pushFace(int a, int b, int c) {
        Face& f = faces_[static_cast<std::size_t>(faceCount_++)];
        f = Face{};
        f.corner = {a, b, c};
        f.n = (at(b) - at(a)).cross(at(c) - at(a));
        f.n.normalize();
        f.offset = f.n.dot(at(a));
    }

    bool firstTetrahedron(WaysOut& ways) {
        Vec3 p0 = farthest(Vec3::UnitX());
        Vec3 p1 = farthest(-Vec3::UnitX());
        double size = (p1 - p0).norm();
        for (int axis = 1; axis < 3; ++axis) {
            const Vec3 q0 = farthest(Vec3::Unit(axis));
            const Vec3 q1 = farthest(-Vec3::Unit(axis));
            if ((q1 - q0).norm() > size) {
                p0 = q0;
                p1 = q1;
                size = (q1 - q0).norm();
            }
        }
        scale_ = size;
        tolerance_ = 1e-9 * size;
        const double flat = 1e-12 * size;
        const auto extreme = [&](const Vec3& n, const Vec3& from) {
            const Vec3 q = farthest(n);
            const Vec3 r = farthest(-n);
            return std::abs(n.dot(q - from)) >= std::abs(n.dot(r - from)) ? q : r;
        };
        const Vec3 along = (p1 - p0).normalized();
        const Vec3 side = anyPerpendicular(along);
        Vec3 p2 = extreme(side, p0);
        const Vec3 other = along.cross(side);
        const Vec3 p2b = extreme(other, p0);
        if ((p2b - p0).cross(along).norm() > (p2 - p0).cross(along).norm()) p2 = p2b;
        Vec3 n = along.cross(p2 - p0);
        if (n.norm() <= flat) n = side;
        n.normalize();
        const Vec3 p3 = extreme(n, p0);
        best_ = n;
        least_ = n.dot(farthest(n));
        const double back = -n.dot(farthest(-n));
        if (back < least_) {
            least_ = back;
            best_ = -n;
        }
        const double height = n.dot(p3 - p0);
        if (std::abs(height) <= flat || (p2 - p0).cross(along).norm() <= flat) {
            ways.n[0] = best_;  // D is flat: no depth across it
            ways.count = 1;
            return false;
        }
        if (height < 0) {
            points_[0] = p0, points_[1] = p1, points_[2] = p2;
        } else {
            points_[0] = p0, points_[1] = p2, points_[2] = p1;
        }
        points_[3] = p3;
        pointCount_ = 4;
        pushFace(0, 1, 2);
        pushFace(1, 0, 3);
        pushFace(2, 1, 3);
        pushFace(0, 2, 3);
        return true;
    }

    // Faces that the point sees or lies on give way to a fan from their rim to the point.
    bool add(const Vec3& p) {
        const double onFace = 1e-13 * scale_;
        std::array<std::array<int, 2>, mostFaces> edges;
        int edgeCount = 0;
        int kept = 0;
        for (int i = 0; i < faceCount_; ++i) {
            const Face& f = faces_[static_cast<std::size_t>(i)];
            if (f.n.dot(p - at(f.corner[0])) < -onFace) {
                faces_[static_cast<std::size_t>(kept++)] = f;
                continue;
            }
            for (std::size_t k = 0; k < 3; ++k) {
                const int a = f.corner[k];
                const int b = f.corner[(k + 1) % 3];
                int twin = 0;
                while (twin < edgeCount && edges[static_cast<std::size_t>(twin)] != std::array<int, 2>{b, a}) ++twin;
                if (twin < edgeCount) {
                    edges[static_cast<std::size_t>(twin)] = edges[static_cast<std::size_t>(--edgeCount)];
                } else if (edgeCount < mostFaces) {
                    edges[static_cast<std::size_t>(edgeCount++)] = {a, b};
                } else {
                    return false;
                }
            }
        }
        faceCount_ = kept;
        if (edgeCount < 3 || faceCount_ + edgeCount > mostFaces) return false;
        points_[static_cast<std::size_t>(pointCount_++)] = p;
        for (int e = 0; e < edgeCount; ++e) {
            const auto& edge = edges[static_cast<std::size_t>(e)];
            pushFace(edge[0], edge[1], pointCount_ - 1);
        }
        return true;
    }

    void collect(WaysOut& ways) const {
        ways.n[0] = best_;
        ways.count = 1;
        while (ways.count < static_cast<int>(ways.n.size())) {
            const Face* next = nullptr;
            for (int i = 0; i < faceCount_; ++i) {
                const Face& f = faces_[static_cast<std::size_t>(i)];
                if (!(f.offset < least_ - tolerance_) || (next != nullptr && f.offset >= next->offset)) continue;
                bool apart = true;
                for (int k = 0; k < ways.count; ++k) apart = apart && ways.n[static_cast<std::size_t>(k)].dot(f.n) < 0.97;
                if (apart) next = &f;
            }
            if (next == nullptr) break;
            ways.n[static_cast<std::size_t>(ways.count++)] = next->n;
        }
    }

    const CorePair& pair_;
    std::array<Vec3, mostPoints + 4> points_;
    std::array<Face, mostFaces> faces_;
    int pointCount_ = 0;
    int faceCount_ = 0;
    double scale_ = 0;
    double tolerance_ = 0;
    double least_ = 0;
    Vec3 best_ = Vec3::UnitZ();
};

}  // namespace

WaysOut waysOut(const CorePair& pair) { return Polytope(pair).search(); }

}  // namespace hither
