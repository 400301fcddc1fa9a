#include "core/plan/edits/findings.h"

#include <algorithm>

namespace hither {

Edited acceptFinding(const Plan& plan, const AcceptedFinding& accepted) {
    return edited(plan, [&](Plan& p) -> std::string {
        if (findOption(p, accepted.option) == nullptr) return noOption(accepted.option);
        if (accepted.finding.empty()) return "no finding is named";
        if (accepted.note.find_first_not_of(" \t\r\n") == std::string::npos) return "say why the finding is accepted";
        if (accepted.who.empty()) return "say who accepts the finding";
        const auto old = std::find_if(p.accepted.begin(), p.accepted.end(), [&](const AcceptedFinding& a) { return a.option == accepted.option && a.finding == accepted.finding; });
        if (old == p.accepted.end()) p.accepted.push_back(accepted);
        else *old = accepted;
        return {};
    });
}

Edited withdrawAcceptance(const Plan& plan, const std::string& option, const std::string& finding) {
    return edited(plan, [&](Plan& p) -> std::string {
        const auto before = p.accepted.size();
        std::erase_if(p.accepted, [&](const AcceptedFinding& a) { return a.option == option && a.finding == finding; });
        if (p.accepted.size() == before) return "that finding is not accepted in option \"" + option + "\"";
        return {};
    });
}

}  // namespace hither
