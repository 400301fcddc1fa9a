#include <algorithm>
#include <cctype>
#include <sstream>

#include "core/offers/offer.h"

namespace hither {
namespace {

std::string lower(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(), [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return text;
}

}  // namespace

Catalogue cupboard(const Catalogue& catalogue, const Plan& plan) {
    Catalogue all = catalogue;
    for (const auto& part : plan.parts) {
        const Part* shipped = all.find(part->id);
        if (!shipped || !(*shipped == *part)) all.add(*part);
    }
    return all;
}

bool turnsAbout(const Part& part) { return part.reversible && part.bases.size() == 1 && part.outlet && part.keepFree.empty(); }

std::shared_ptr<const Part> builtPart(const Plan& plan, const MountPart& part) {
    const Part* data = plan.part(part.part);
    if (!data || (part.reversed && !turnsAbout(*data))) return nullptr;
    return std::make_shared<const Part>(part.reversed ? reversed(*data) : *data);
}

bool matchesWords(const Part& part, const std::string& typed) {
    std::string all = part.name + ' ' + word(part.kind);
    for (const std::string& w : part.words) all += ' ' + w;
    all = lower(std::move(all));
    std::istringstream words(lower(typed));
    for (std::string w; words >> w;)
        if (all.find(w) == std::string::npos) return false;
    return true;
}

}  // namespace hither
