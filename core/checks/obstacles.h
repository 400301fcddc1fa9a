#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/chain/limits.h"
#include "core/checks/finding.h"

namespace hither {

/// One solid that a mount must keep away from, in W at the present settings, with the moving group
/// that carries it.
struct Obstacle {
    enum class Kind { body, support, mount, keepOut };
    Kind kind = Kind::support;
    Subject subject;
    Solid solid_W;
    std::string support, group;         ///< what carries it; support empty: fixed in W
    std::optional<SegmentId> segment;   ///< body
    std::string solidName;              ///< support
    double keepOutMargin_m = 0;         ///< keepOut
};
const char* word(Obstacle::Kind kind);

/// Everything that mount `index` of the setup could touch, in a fixed order. Another mount is an
/// obstacle only to the mounts before it, so that a pair is judged once.
std::vector<Obstacle> obstaclesOf(const Setup& setup, std::size_t index);

/// How far a piece of the mount must stay from an obstacle, or nothing where they touch by design:
/// a grip and the very tube or plate it holds. The switch may press into the body part that
/// operates it as deep as the site's tolerance (a negative margin); a clamp's jaw may come as near
/// to other pieces of the support as it likes without overlapping.
std::optional<double> requiredMargin(const Setup& setup, std::size_t mount, const PlacedSolid& piece,
                                     const Obstacle& obstacle, const CheckLimits& limits);

/// Whether that pair meets on purpose (a switch and the body part operating it), so that its small
/// distance says nothing about clearance.
bool meetsOnPurpose(const Setup& setup, std::size_t mount, const PlacedSolid& piece, const Obstacle& obstacle);

}  // namespace hither
