#pragma once
#include <map>
#include <random>
#include <string>

#include "app/shipped/shipped.h"
#include "core/plan/edits/edited.h"

namespace hither::test {

/// Edits of any kind, drawn at random for the plan as it is: most can be made, some cannot (a name that is
/// not there, a part that does not go there).
class RandomEdits {
public:
    RandomEdits(unsigned seed, const Shipped& shipped) : random_(seed), shipped_(shipped) {}
    /// `name` is the edit function's.
    struct Drawn { std::string name; Edited edited; };
    Drawn next(const Plan& plan);
    /// Another value for the same thing: what a gesture shows on its way.
    Edited joint(const Plan& plan, const std::string& option, const std::string& mount, std::size_t part, const std::string& joint);
    bool oneIn(int n) { return below(static_cast<std::size_t>(n)) == 0; }
    std::size_t below(std::size_t n) { return std::uniform_int_distribution<std::size_t>(0, n - 1)(random_); }
    double number(double from, double to) { return std::uniform_real_distribution<double>(from, to)(random_); }
    /// How many kinds of edits there are.
    static constexpr int kinds = 44;

private:
    Edited draw(int kind, const Plan& plan, std::string& name);
    std::string word() { return "w" + std::to_string(below(100000)); }
    /// An id of the list, sometimes one that is not there.
    template <class List> std::string idOf(const List& list) { return list.empty() || oneIn(12) ? "nobody" : list[below(list.size())].id; }
    std::string removable(const Plan& plan);   ///< a support, but not the one that mounts are added to
    const Part& anyPart();

    std::mt19937 random_;
    const Shipped& shipped_;
};

}  // namespace hither::test
