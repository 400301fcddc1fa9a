#pragma once
#include <array>
#include <cstdint>
#include <memory>
#include <vector>

#include <Eigen/Core>

#include "core/geometry/pose.h"

namespace hither {

/// A surface to draw, in the frame of the thing that carries it, metres. Triangles are counter-clockwise
/// seen from outside; `normals` is one a point (points are doubled at creases). `edges` are the lines
/// that a drawing shows: creases and borders, as pairs of points of their own.
struct Mesh {
    std::vector<Eigen::Vector3f> points, normals;
    std::vector<std::array<std::uint32_t, 3>> triangles;
    std::vector<std::array<Eigen::Vector3f, 2>> edges;

    /// Adds another mesh, moved.
    void add(const Mesh& other, const Pose& X = Pose::Identity());
};
using MeshRef = std::shared_ptr<const Mesh>;

}  // namespace hither
