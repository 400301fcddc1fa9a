#include <cassert>

#include "core/situation/body_table.h"

namespace hither {

const std::vector<std::string>& bodyDimensionNames() {
    static const std::vector<std::string> names{
        "stature", "sittingheight", "eyeheightsitting", "acromialheightsitting", "elbowrestheight",
        "acromionradialelength", "shoulderelbowlength", "radialestylionlength", "handlength", "handbreadth",
        "biacromialbreadth", "bideltoidbreadth", "hipbreadthsitting", "buttockkneelength", "buttockpopliteallength",
        "poplitealheight", "kneeheightsitting", "thighclearance", "abdominalextensiondepthsitting", "chestdepth",
        "chestbreadth", "footlength", "footbreadthhorizontal", "lateralmalleolusheight", "headbreadth", "headlength",
        "tragiontopofhead", "neckcircumference", "wristcircumference", "forearmcircumferenceflexed",
        "bicepscircumferenceflexed", "thumbtipreach", "weightkg"};
    return names;
}

double BodySize::m(const std::string& name) const {
    const auto at = dimensions.find(name);
    assert(at != dimensions.end());
    return at->second.value;
}

}  // namespace hither
