#pragma once
#include "core/plan/edits/edited.h"

namespace hither {

/// Edits of the placement options.
Edited addOption(const Plan& plan, const std::string& option, const std::string& name);  ///< empty
Edited renameOption(const Plan& plan, const std::string& option, const std::string& name);
Edited setOptionNotes(const Plan& plan, const std::string& option, const std::string& notes);
/// A copy under another id, right after the one it is from. Findings accepted there are not accepted in the copy.
Edited copyOption(const Plan& plan, const std::string& option, const std::string& newOption, const std::string& newName);
/// With the findings accepted in it and the parts that only it used.
Edited removeOption(const Plan& plan, const std::string& option);

}  // namespace hither
