#include <algorithm>
#include <map>

#include "core/checks/checks.h"
#include "core/checks/subjects.h"

namespace hither {
namespace {

/// Where an option has several mounts the same part may stand in two of them: sentences say in which.
void nameMounts(const Setup& setup, std::vector<Finding>& findings) {
    if (setup.mounts.size() < 2) return;
    std::map<std::string, std::string> names;
    for (const SetupMount& m : setup.mounts) names[m.mount.id] = mountSubject(m).name;
    static const char* const words[] = {"a", "b", "c"};
    for (Finding& f : findings) {
        for (std::size_t i = 0; i < f.subjects.size(); ++i) {
            Subject& s = f.subjects[i];
            if (s.kind != Subject::Kind::part) continue;
            s.name += " (" + names[s.id] + ")";
            if (i < 3) f.words[words[i]] = s.name;
        }
    }
}

}  // namespace

std::vector<Finding> checkAll(const Setup& setup, const CheckContext& context) {
    std::vector<Finding> all;
    for (const auto check : {checkFit, checkReach, checkAim, checkClearance, checkMovement}) {
        std::vector<Finding> found = check(setup, context);
        all.insert(all.end(), std::make_move_iterator(found.begin()), std::make_move_iterator(found.end()));
    }
    nameMounts(setup, all);
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
