#pragma once
#include <cmath>
#include <random>
#include <string>
#include <vector>

#include "core/situation/support.h"

/// What several tests of supports need: samples over every kind and its dimensions' ranges, and a
/// signed distance to a solid written here from the solids' definition, apart from core/geometry.
namespace support_samples {

using namespace hither;

inline SupportSpec standard(const std::string& kind) {
    SupportSpec spec;
    spec.id = "s";
    spec.kind = kind;
    return spec;
}

/// Every kind with: the standard; each dimension alone at its least and most; all at once at the least
/// and the most; and twenty corners of the box of dimensions, drawn with a fixed seed.
inline std::vector<SupportSpec> samples() {
    std::vector<SupportSpec> all;
    std::mt19937 random(20261125);
    for (const SupportKind& kind : supportKinds()) {
        all.push_back(standard(kind.kind));
        SupportSpec least = standard(kind.kind), most = standard(kind.kind);
        for (const SupportDimension& d : kind.dimensions) {
            for (double value : {d.min, d.max}) {
                SupportSpec one = standard(kind.kind);
                one.dimensions[d.key] = value;
                all.push_back(one);
            }
            least.dimensions[d.key] = d.min;
            most.dimensions[d.key] = d.max;
        }
        all.push_back(least);
        all.push_back(most);
        for (int i = 0; i < 20 && !kind.dimensions.empty(); ++i) {
            SupportSpec corner = standard(kind.kind);
            for (const SupportDimension& d : kind.dimensions) corner.dimensions[d.key] = random() % 2 ? d.max : d.min;
            all.push_back(corner);
        }
    }
    return all;
}

inline std::string described(const SupportSpec& spec) {
    std::string text = spec.kind;
    for (const auto& [key, value] : spec.dimensions) text += " " + key + "=" + std::to_string(value);
    return text;
}

/// Signed distance of a point to a solid's surface, negative inside, from the definition in solid.h.
inline double signedDistance(const Solid& s, const Vec3& p_F) {
    const Vec3 p = s.X_FG.inverse() * p_F;
    switch (s.kind) {
        case SolidKind::sphere: return p.norm() - s.radius;
        case SolidKind::capsule: return (p - Vec3(0, 0, std::clamp(p.z(), -s.half.z(), s.half.z()))).norm() - s.radius;
        case SolidKind::cylinder: {
            const double radial = p.head<2>().norm() - s.radius, axial = std::abs(p.z()) - s.half.z();
            if (radial <= 0 && axial <= 0) return std::max(radial, axial);
            return std::hypot(std::max(radial, 0.0), std::max(axial, 0.0));
        }
        case SolidKind::box: {
            const Vec3 out = p.cwiseAbs() - s.half;
            return out.maxCoeff() <= 0 ? out.maxCoeff() : out.cwiseMax(0.0).norm();
        }
        default: return std::nan("");
    }
}

/// Nearest of the solids that an attachment lists; NaN when it lists one that the support does not have.
inline double distanceToListed(const Support& support, const Attachment& a, const Vec3& p) {
    double nearest = a.solids.empty() ? std::nan("") : 1e9;
    for (const std::string& name : a.solids) {
        double d = std::nan("");
        for (const SupportSolid& s : support.solids)
            if (s.name == name) d = signedDistance(s.solid, p);
        if (!(std::abs(d) < std::abs(nearest))) { if (std::isnan(d)) return d; continue; }
        nearest = d;
    }
    return nearest;
}

}  // namespace support_samples
