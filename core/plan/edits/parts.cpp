#include "core/plan/edits/parts.h"

#include <algorithm>

#include "core/plan/edits/build_rules.h"

namespace hither {
namespace {

std::string noPart(const std::string& mount, std::size_t at, std::size_t count) {
    return "mount \"" + mount + "\" has no part number " + std::to_string(at + 1) + "; it has " + std::to_string(count);
}

const Element* jointOf(const Part& part, const std::string& name) {
    const auto found = std::find_if(part.elements.begin(), part.elements.end(), [&](const Element& e) { return !name.empty() && e.name == name && e.freedoms() > 0; });
    return found == part.elements.end() ? nullptr : &*found;
}

/// Applies `change` to the mount's row of parts and judges what came of it.
template <class Change>
Edited editedParts(const Plan& plan, const std::string& option, const std::string& mount, Change change) {
    return edited(plan, [&](Plan& p) -> std::string {
        Mount* m = findMount(p, option, mount);
        if (m == nullptr) return noMount(option, mount);
        if (std::string why = change(p, m->parts); !why.empty()) return why;
        if (std::string why = cannotBuild(p, m->parts); !why.empty()) return why;
        dropUnusedParts(p);
        return {};
    });
}

}  // namespace

Edited insertPart(const Plan& plan, const std::string& option, const std::string& mount, std::size_t at, const Part& data, bool reversed) {
    return editedParts(plan, option, mount, [&](Plan& p, std::vector<MountPart>& parts) -> std::string {
        if (at > parts.size()) return noPart(mount, at, parts.size());
        copyPart(p, data);
        MountPart part;
        part.part = data.id;
        part.reversed = reversed;
        parts.insert(parts.begin() + static_cast<std::ptrdiff_t>(at), std::move(part));
        return {};
    });
}

Edited replacePart(const Plan& plan, const std::string& option, const std::string& mount, std::size_t at, const Part& by) {
    return editedParts(plan, option, mount, [&](Plan& p, std::vector<MountPart>& parts) -> std::string {
        if (at >= parts.size()) return noPart(mount, at, parts.size());
        copyPart(p, by);
        const Part& now = *p.part(by.id);
        MountPart& part = parts[at];
        part.part = by.id;
        if (!now.reversible) part.reversed = false;
        std::erase_if(part.joints, [&](const auto& joint) {
            const Element* element = jointOf(now, joint.first);
            return element == nullptr || (!joint.second.q.empty() && joint.second.q.size() != static_cast<std::size_t>(element->freedoms()));
        });
        return {};
    });
}

Edited removePart(const Plan& plan, const std::string& option, const std::string& mount, std::size_t at) {
    return editedParts(plan, option, mount, [&](Plan&, std::vector<MountPart>& parts) -> std::string {
        if (at >= parts.size()) return noPart(mount, at, parts.size());
        if (parts.size() == 1) return "it is the mount's only part; remove the mount";
        if (at == 0) return "it holds the whole mount; replace it by another grip instead";
        parts.erase(parts.begin() + static_cast<std::ptrdiff_t>(at));
        return {};
    });
}

Edited reversePart(const Plan& plan, const std::string& option, const std::string& mount, std::size_t at) {
    return editedParts(plan, option, mount, [&](Plan&, std::vector<MountPart>& parts) -> std::string {
        if (at >= parts.size()) return noPart(mount, at, parts.size());
        parts[at].reversed = !parts[at].reversed;
        return {};
    });
}

}  // namespace hither
