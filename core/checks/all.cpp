#include <algorithm>

#include "core/checks/checks.h"

namespace hither {

std::vector<Finding> checkAll(const Setup& setup, const CheckContext& context) {
    std::vector<Finding> all;
    for (const auto check : {checkFit, checkReach, checkAim, checkClearance, checkMovement}) {
        std::vector<Finding> found = check(setup, context);
        all.insert(all.end(), std::make_move_iterator(found.begin()), std::make_move_iterator(found.end()));
    }
    std::stable_sort(all.begin(), all.end(), [](const Finding& a, const Finding& b) {
        if (gravity(a.verdict) != gravity(b.verdict)) return gravity(a.verdict) > gravity(b.verdict);
        if (a.check != b.check) return a.check < b.check;
        return a.id < b.id;
    });
    return all;
}

Verdict worst(const std::vector<Finding>& findings) {
    Verdict result = Verdict::meets;
    for (const Finding& f : findings) if (gravity(f.verdict) > gravity(result)) result = f.verdict;
    return result;
}

}  // namespace hither
