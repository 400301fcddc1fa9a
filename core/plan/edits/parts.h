#pragma once
#include "core/plan/edits/edited.h"

namespace hither {

/// Edits of the parts in a mount; `at` counts from 0, the grip. Every other part keeps its settings.
/// `data` is copied into the plan unless it has that part already; copies that no option uses any
/// more are dropped.

/// Before the part that is now number `at`, or at the end.
Edited insertPart(const Plan& plan, const std::string& option, const std::string& mount, std::size_t at, const Part& data, bool reversed = false);
/// Another part in its place. Its clocking stays; joint values stay where the new part has a joint of that name with as many values.
Edited replacePart(const Plan& plan, const std::string& option, const std::string& mount, std::size_t at, const Part& by);
/// The parts on both sides of it then meet. Refused for the last part that is left and for a grip that others hang on.
Edited removePart(const Plan& plan, const std::string& option, const std::string& mount, std::size_t at);
/// Turned end for end. Joint values stay: the reversed part has the same joints with the same meaning of their values.
Edited reversePart(const Plan& plan, const std::string& option, const std::string& mount, std::size_t at);

}  // namespace hither
