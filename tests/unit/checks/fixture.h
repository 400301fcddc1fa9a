#pragma once
#include <map>
#include <memory>

#include "core/checks/checks.h"

namespace hither::test {

/// A small made-up situation: one vertical round rail of 25.4 mm on a post, a table top, a site in
/// front of it; a clamp with a stud, a straight post and a button, all of round figures so that
/// every expected value can be worked out by hand.
struct Bench {
    std::map<std::string, Part> parts;
    SupportSpec unused;
    Setup setup;

    Bench();
    /// Clamp on the rail at `along`, then the parts; serves site "site".
    void addMount(const std::string& id, double along, const std::vector<std::string>& partIds, const std::string& attachment = "rail");
    void rebuild();          ///< after changes of parts or mounts
    const Support& support() const { return setup.situation.supports.front(); }
    Support& support() { return setup.situation.supports.front(); }
};

Figure assumed(double v);
Figure measured(double v);
const Finding* find(const std::vector<Finding>& all, const std::string& idStart);

}  // namespace hither::test
