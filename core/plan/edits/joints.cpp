#include "core/plan/edits/joints.h"

#include <algorithm>
#include <cmath>

#include <Eigen/Core>

namespace hither {
namespace {

/// Applies `change` to one part of a mount, given with its data.
template <class Change>
Edited editedPart(const Plan& plan, const std::string& option, const std::string& mount, std::size_t at, Change change) {
    return edited(plan, [&](Plan& p) -> std::string {
        Mount* m = findMount(p, option, mount);
        if (m == nullptr) return noMount(option, mount);
        if (at >= m->parts.size()) return "mount \"" + mount + "\" has no part number " + std::to_string(at + 1);
        const Part* part = p.part(m->parts[at].part);
        if (part == nullptr) return "there is no part \"" + m->parts[at].part + "\"";
        return change(m->parts[at], *part);
    });
}

const Element* jointOf(const Part& part, const std::string& name) {
    const auto found = std::find_if(part.elements.begin(), part.elements.end(), [&](const Element& e) { return !name.empty() && e.name == name && e.freedoms() > 0; });
    return found == part.elements.end() ? nullptr : &*found;
}
std::string noJoint(const Part& part, const std::string& joint) { return "\"" + part.name + "\" has no joint \"" + joint + "\""; }

}  // namespace

Edited setJoint(const Plan& plan, const std::string& option, const std::string& mount, std::size_t at, const std::string& joint, const std::vector<double>& q) {
    return editedPart(plan, option, mount, at, [&](MountPart& mounted, const Part& part) -> std::string {
        const Element* element = jointOf(part, joint);
        if (element == nullptr) return noJoint(part, joint);
        const auto wanted = static_cast<std::size_t>(element->freedoms());
        if (q.size() != wanted) return "joint \"" + joint + "\" takes " + std::to_string(wanted) + (wanted == 1 ? " value" : " values") + ", not " + std::to_string(q.size());
        for (const double v : q) if (!std::isfinite(v)) return "a value of joint \"" + joint + "\" is no number";
        mounted.joints[joint].q = q;
        return {};
    });
}

Edited setJointKept(const Plan& plan, const std::string& option, const std::string& mount, std::size_t at, const std::string& joint, bool kept) {
    return editedPart(plan, option, mount, at, [&](MountPart& mounted, const Part& part) -> std::string {
        if (jointOf(part, joint) == nullptr) return noJoint(part, joint);
        mounted.joints[joint].kept = kept;
        return {};
    });
}

Edited setClocking(const Plan& plan, const std::string& option, const std::string& mount, std::size_t at, double clocking_rad) {
    return editedPart(plan, option, mount, at, [&](MountPart& mounted, const Part& part) -> std::string {
        if (at == 0) return "\"" + part.name + "\" holds the support: its place is set instead of a clocking";
        if (!std::isfinite(clocking_rad)) return "the clocking is no number";
        mounted.clocking_rad = clocking_rad;
        return {};
    });
}

Edited setClockingKept(const Plan& plan, const std::string& option, const std::string& mount, std::size_t at, bool kept) {
    return editedPart(plan, option, mount, at, [&](MountPart& mounted, const Part& part) -> std::string {
        if (at == 0) return "\"" + part.name + "\" holds the support: its place is kept instead of a clocking";
        mounted.clockingKept = kept;
        return {};
    });
}

Edited applySolved(const Plan& plan, const std::string& option, const std::string& mount, const Chain& chain, const Eigen::VectorXd& q) {
    return edited(plan, [&](Plan& p) -> std::string {
        Mount* m = findMount(p, option, mount);
        if (m == nullptr) return noMount(option, mount);
        if (q.size() != chain.freedomCount()) return "there are " + std::to_string(q.size()) + " values for " + std::to_string(chain.freedomCount()) + " freedoms";
        if (!q.allFinite()) return "a value is no number";
        const bool same = chain.mount == m->id && chain.support == m->support && chain.attachment == m->attachment && chain.parts.size() == m->parts.size() &&
                          std::equal(m->parts.begin(), m->parts.end(), chain.parts.begin(), [](const MountPart& a, const std::shared_ptr<const Part>& b) { return a.part == b->id; });
        if (!same) return "the mount has changed since it was solved";
        *m = withValues(*m, chain, q);
        return {};
    });
}

}  // namespace hither
