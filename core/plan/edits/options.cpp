#include "core/plan/edits/options.h"

namespace hither {
namespace {

std::string cannotName(Plan& plan, const std::string& id) {
    if (id.empty()) return "an option needs an id";
    if (findOption(plan, id) != nullptr) return "there is an option \"" + id + "\" already";
    return {};
}

}  // namespace

Edited addOption(const Plan& plan, const std::string& option, const std::string& name) {
    return edited(plan, [&](Plan& p) -> std::string {
        if (std::string why = cannotName(p, option); !why.empty()) return why;
        PlanOption made;
        made.id = option;
        made.name = name;
        p.options.push_back(std::move(made));
        return {};
    });
}

Edited renameOption(const Plan& plan, const std::string& option, const std::string& name) {
    return edited(plan, [&](Plan& p) -> std::string {
        PlanOption* o = findOption(p, option);
        if (o == nullptr) return noOption(option);
        if (name.empty()) return "an option needs a name";
        o->name = name;
        return {};
    });
}

Edited setOptionNotes(const Plan& plan, const std::string& option, const std::string& notes) {
    return edited(plan, [&](Plan& p) -> std::string {
        PlanOption* o = findOption(p, option);
        if (o == nullptr) return noOption(option);
        o->notes = notes;
        return {};
    });
}

Edited copyOption(const Plan& plan, const std::string& option, const std::string& newOption, const std::string& newName) {
    return edited(plan, [&](Plan& p) -> std::string {
        if (findOption(p, option) == nullptr) return noOption(option);
        if (std::string why = cannotName(p, newOption); !why.empty()) return why;
        const auto from = p.options.begin() + (findOption(p, option) - p.options.data());
        PlanOption copy = *from;
        copy.id = newOption;
        copy.name = newName;
        p.options.insert(from + 1, std::move(copy));
        return {};
    });
}

Edited removeOption(const Plan& plan, const std::string& option) {
    return edited(plan, [&](Plan& p) -> std::string {
        if (findOption(p, option) == nullptr) return noOption(option);
        std::erase_if(p.options, [&](const PlanOption& o) { return o.id == option; });
        std::erase_if(p.accepted, [&](const AcceptedFinding& a) { return a.option == option; });
        dropUnusedParts(p);
        return {};
    });
}

}  // namespace hither
