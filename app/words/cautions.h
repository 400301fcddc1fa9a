#pragma once
#include <string>
#include <vector>

namespace hither {

/// The cautions that always stand beside a result: the usual ones of the trade.
const std::string& planningAidOnly();
const std::vector<std::string>& cautions();

}  // namespace hither
