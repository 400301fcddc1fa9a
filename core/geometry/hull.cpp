#include <algorithm>
#include <cmath>

#include "core/geometry/solid.h"

// Quickhull (Barber, Dobkin and Huhdanpaa 1996) with one change that keeps it robust for the
// boxes, prisms and duplicates that drawings are full of: faces that the new point lies on (within
// the tolerance) are replaced together with those that it sees, so no face with nearly no area is made.
namespace hither {
namespace {

struct Face {
    std::array<int, 3> corner{};
    Vec3 normal = Vec3::Zero();
    bool alive = true;
    std::vector<int> outside;  // points farther out than the tolerance, not yet on the hull
};

class Builder {
public:
    explicit Builder(const std::vector<Vec3>& cloud) : cloud_(cloud) {}

    std::shared_ptr<const Hull> build() {
        for (const Vec3& p : cloud_) {
            if (!p.allFinite()) return nullptr;
        }
        if (cloud_.size() < 4 || !firstTetrahedron()) return nullptr;
        // Each round adds one point for good or finds that the farthest is not outside after all.
        for (std::size_t round = 0; round <= cloud_.size(); ++round) {
            int at = -1;
            int point = -1;
            double most = tolerance_;
            for (std::size_t f = 0; f < faces_.size(); ++f) {
                if (!faces_[f].alive) continue;
                for (int p : faces_[f].outside) {
                    const double d = height(faces_[f], p);
                    if (d > most) {
                        most = d;
                        at = static_cast<int>(f);
                        point = p;
                    }
                }
                if (at >= 0) break;  // the farthest of one face is enough
            }
            if (at < 0) break;
            add(point);
        }
        return result();
    }

private:
    const Vec3& at(int i) const { return cloud_[static_cast<std::size_t>(i)]; }
    double height(const Face& f, int p) const { return f.normal.dot(at(p) - at(f.corner[0])); }

    Face face(int a, int b, int c) const {
        Face f;
        f.corner = {a, b, c};
        f.normal = (at(b) - at(a)).cross(at(c) - at(a)).normalized();
        return f;
    }

    template <class Measure>
    int farthest(const Measure& measure) const {
        int best = 0;
        double most = -1;
        for (int i = 0; i < static_cast<int>(cloud_.size()); ++i) {
            const double m = measure(at(i));
            if (m > most) {
                most = m;
                best = i;
            }
        }
        return best;
    }

    bool firstTetrahedron() {
        const int a = farthest([&](const Vec3& p) { return (p - cloud_[0]).norm(); });
        const int b = farthest([&](const Vec3& p) { return (p - at(a)).norm(); });
        const double size = (at(b) - at(a)).norm();
        // A nanometre for a metre: far above rounding, far below what anybody can make or measure.
        tolerance_ = 1e-9 * size;
        if (!(size > 0)) return false;
        const Vec3 along = (at(b) - at(a)) / size;
        const int c = farthest([&](const Vec3& p) { return (p - at(a)).cross(along).norm(); });
        if ((at(c) - at(a)).cross(along).norm() <= 1e-6 * size) return false;
        const Vec3 normal = along.cross(at(c) - at(a)).normalized();
        const int d = farthest([&](const Vec3& p) { return std::abs(normal.dot(p - at(a))); });
        const double side = normal.dot(at(d) - at(a));
        if (std::abs(side) <= 1e-6 * size) return false;
        const int b2 = side > 0 ? c : b;  // (a, b2, c2) is seen counter-clockwise from outside, d on the inner side
        const int c2 = side > 0 ? b : c;
        faces_ = {face(a, b2, c2), face(a, c2, d), face(c2, b2, d), face(b2, a, d)};
        std::vector<int> all;
        for (int i = 0; i < static_cast<int>(cloud_.size()); ++i) all.push_back(i);
        distribute(all, 0);
        return true;
    }

    void distribute(const std::vector<int>& points, std::size_t fromFace) {
        for (int p : points) {
            std::size_t best = faces_.size();
            double most = tolerance_;
            for (std::size_t f = fromFace; f < faces_.size(); ++f) {
                if (!faces_[f].alive) continue;
                const double d = height(faces_[f], p);
                if (d > most) {
                    most = d;
                    best = f;
                }
            }
            if (best < faces_.size()) faces_[best].outside.push_back(p);
        }
    }

    void add(int point) {
        std::vector<std::array<int, 2>> edges;
        std::vector<int> orphans;
        for (Face& f : faces_) {
            if (!f.alive || height(f, point) < -tolerance_) continue;
            f.alive = false;
            for (std::size_t k = 0; k < 3; ++k) edges.push_back({f.corner[k], f.corner[(k + 1) % 3]});
            for (int p : f.outside) {
                if (p != point) orphans.push_back(p);
            }
            f.outside.clear();
        }
        std::sort(edges.begin(), edges.end());
        const std::size_t firstNew = faces_.size();
        for (const auto& e : edges) {  // the rim: edges whose other side was not replaced
            if (!std::binary_search(edges.begin(), edges.end(), std::array<int, 2>{e[1], e[0]})) {
                faces_.push_back(face(e[0], e[1], point));
            }
        }
        distribute(orphans, firstNew);
        dead_ += edges.size() / 3;
        if (2 * dead_ > faces_.size()) compact();
    }

    void compact() {
        faces_.erase(std::remove_if(faces_.begin(), faces_.end(), [](const Face& f) { return !f.alive; }), faces_.end());
        dead_ = 0;
    }

    std::shared_ptr<const Hull> result() {
        compact();
        auto hull = std::make_shared<Hull>();
        std::vector<int> number(cloud_.size(), -1);
        for (const Face& f : faces_) {
            std::array<int, 3> corner{};
            for (std::size_t k = 0; k < 3; ++k) {
                int& n = number[static_cast<std::size_t>(f.corner[k])];
                if (n < 0) {
                    n = static_cast<int>(hull->points.size());
                    hull->points.push_back(at(f.corner[k]));
                }
                corner[k] = n;
            }
            hull->faces.push_back(corner);
        }
        return hull;
    }

    const std::vector<Vec3>& cloud_;
    std::vector<Face> faces_;
    std::size_t dead_ = 0;
    double tolerance_ = 0;
};

}  // namespace

std::shared_ptr<const Hull> makeHull(const std::vector<Vec3>& cloud) { return Builder(cloud).build(); }

}  // namespace hither
