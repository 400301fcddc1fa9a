#pragma once
#include <optional>
#include <string>

#include "core/situation/support.h"

namespace hither {

/// From where a drawing looks: from the person's right (x to the right, z up), from before the person
/// (y to the right, z up), from above (x to the right, y up).
enum class DrawnFrom { side, front, above };

/// What one dimension of a support measures, in S with every moving group at zero: the line from a to b,
/// or the angle at `a` from the direction `from` to the direction `to`.
struct DimensionMark {
    DrawnFrom drawnFrom = DrawnFrom::side;
    bool angle = false;
    Vec3 a = Vec3::Zero(), b = Vec3::Zero();
    Vec3 from = Vec3::UnitX(), to = Vec3::UnitX();

    /// What the mark measures: m, or rad.
    double measured() const;
};

/// The mark of a dimension by its key ("seat_width"), taken from the support's own attachments, landmarks,
/// solids and groups. Nothing when this support shows nothing to measure it at: a range of 0 moves nothing.
std::optional<DimensionMark> dimensionMark(const Support& support, const std::string& key);

}  // namespace hither
