#include "core/storage/next_revision.h"

#include <utility>

#include "core/storage/fresh.h"
#include "core/storage/plan_rules.h"

namespace hither {
namespace {

/// The beginning of a line that a plan may hold, not cut inside a letter.
std::string fitting(std::string line) {
    if (line.size() <= planBounds::lineBytes) return line;
    std::size_t end = planBounds::lineBytes - 3;
    while (end > 0 && (static_cast<unsigned char>(line[end]) & 0xc0) == 0x80) --end;
    line.resize(end);
    return line + "...";
}

}  // namespace

Plan nextRevision(Plan plan, const std::string& what, const std::string& now_utc) {
    ++plan.revision;
    plan.changed_utc = now_utc.empty() ? utcNow() : now_utc;
    plan.history.push_back({plan.revision, plan.changed_utc, {}, fitting(what)});
    return plan;
}

void takeSaves(Plan& plan, const Plan& from) {
    plan.revision = from.revision;
    plan.changed_utc = from.changed_utc;
    plan.history = from.history;
}

bool sameSaves(const Plan& a, const Plan& b) { return a.revision == b.revision && a.changed_utc == b.changed_utc && a.history == b.history; }

}  // namespace hither
