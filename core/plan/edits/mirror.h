#pragma once
#include "core/plan/edits/edited.h"

namespace hither {

/// A copy of an option, mirrored left to right in the middle plane (y = 0) of the supports that its
/// mounts are fixed to. It is built of the same parts: each mount goes to the attachment of the same
/// support that lies where the mirror puts it, and its joints take the values that make the mirrored
/// pose. Sites become their twins on the other side; one that has no twin in the plan is added.
/// Keep-outs are mirrored too.
///
/// Refused with the reason when it is not well defined: the supports have different middle planes, no
/// attachment lies there, a part is not the same on its left and its right, or a joint cannot take the
/// mirrored value.
Edited mirrorOption(const Plan& plan, const std::string& option, const std::string& newOption, const std::string& newName);

/// "elbow_right" <-> "elbow_left", "Right elbow" <-> "Left elbow": the text with its sides changed.
std::string otherSide(const std::string& text);

}  // namespace hither
