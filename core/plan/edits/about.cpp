#include "core/plan/edits/about.h"

#include <algorithm>
#include <cmath>

namespace hither {

Edited setTitle(const Plan& plan, const std::string& title) {
    return edited(plan, [&](Plan& p) -> std::string {
        if (title.find_first_not_of(" \t\r\n") == std::string::npos) return "a plan needs a title";
        p.title = title;
        return {};
    });
}

Edited setShows(const Plan& plan, const std::string& shows) {
    return edited(plan, [&](Plan& p) -> std::string {
        if (shows.find_first_of("\r\n") != std::string::npos) return "what the plan shows is one line";
        p.shows = shows;
        return {};
    });
}

Edited setNotes(const Plan& plan, const std::string& notes) {
    return edited(plan, [&](Plan& p) -> std::string { p.notes = notes; return {}; });
}

Edited setDisplay(const Plan& plan, UnitSystem display) {
    return edited(plan, [&](Plan& p) -> std::string { p.display = display; return {}; });
}

Edited setCurrency(const Plan& plan, const std::string& currency) {
    return edited(plan, [&](Plan& p) -> std::string {
        if (currency.size() != 3 || !std::all_of(currency.begin(), currency.end(), [](char c) { return c >= 'A' && c <= 'Z'; }))
            return "a currency is three capital letters, for example EUR";
        p.currency = currency;
        return {};
    });
}

Edited setLimits(const Plan& plan, const CheckLimits& limits) {
    return edited(plan, [&](Plan& p) -> std::string {
        for (const double v : {limits.clearanceBody_m, limits.clearanceSupport_m, limits.clearanceMount_m, limits.pressFactor, limits.knock_N, limits.threadTurns, limits.threadFactor})
            if (!std::isfinite(v) || v < 0) return "a limit must be a number that is not negative";
        p.limits = limits;
        return {};
    });
}

}  // namespace hither
