#pragma once
#include <cmath>
#include <map>
#include <tuple>

#include "app/picture/mesh.h"

namespace hither {

/// What a test asks of a drawn surface, worked out from its triangles alone.
struct MeshFacts {
    int openSides = 0;       ///< sides of triangles without a neighbour that runs the other way
    double volume = 0;       ///< by the divergence theorem; positive when the triangles face outward
    int wrongNormals = 0;    ///< points whose normal is not of unit length or leans away from a triangle's own
    int badIndices = 0;
};

inline MeshFacts factsOf(const Mesh& mesh) {
    MeshFacts facts;
    const auto place = [](const Eigen::Vector3f& p) { return std::tuple(std::lround(1e6F * p.x()), std::lround(1e6F * p.y()), std::lround(1e6F * p.z())); };
    using Place = decltype(place(Eigen::Vector3f()));
    std::map<std::pair<Place, Place>, int> sides;
    if (mesh.normals.size() != mesh.points.size()) ++facts.badIndices;
    for (const auto& t : mesh.triangles) {
        if (std::max({t[0], t[1], t[2]}) >= mesh.points.size()) { ++facts.badIndices; continue; }
        const Eigen::Vector3d a = mesh.points[t[0]].cast<double>(), b = mesh.points[t[1]].cast<double>(), c = mesh.points[t[2]].cast<double>();
        facts.volume += a.dot(b.cross(c)) / 6;
        const Eigen::Vector3d n = (b - a).cross(c - a).normalized();
        for (std::size_t k = 0; k < 3; ++k) {
            const Eigen::Vector3d own = mesh.normals[t[k]].cast<double>();
            if (std::abs(own.norm() - 1) > 1e-4 || own.dot(n) < 0.2) ++facts.wrongNormals;
            const Place from = place(mesh.points[t[k]]), to = place(mesh.points[t[(k + 1) % 3]]);
            ++sides[{from, to}];
            --sides[{to, from}];
        }
    }
    for (const auto& [ends, count] : sides) facts.openSides += count != 0;
    return facts;
}

}  // namespace hither
