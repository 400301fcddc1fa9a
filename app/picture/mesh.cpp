#include "app/picture/mesh.h"

namespace hither {

void Mesh::add(const Mesh& other, const Pose& X) {
    const Eigen::Isometry3f F = X.cast<float>();
    const auto first = static_cast<std::uint32_t>(points.size());
    points.reserve(points.size() + other.points.size());
    normals.reserve(normals.size() + other.normals.size());
    for (const Eigen::Vector3f& p : other.points) points.push_back(F * p);
    for (const Eigen::Vector3f& n : other.normals) normals.push_back(F.linear() * n);
    for (const auto& t : other.triangles) triangles.push_back({first + t[0], first + t[1], first + t[2]});
    for (const auto& e : other.edges) edges.push_back({F * e[0], F * e[1]});
}

}  // namespace hither
