#include "core/offers/offer_edits.h"

#include <algorithm>

#include "core/chain/placement.h"
#include "core/plan/edits/mounts.h"
#include "core/plan/edits/parts.h"

namespace hither {
namespace {

/// `next` applied to what an edit gave, or why that edit was not made.
template <class Next>
Edited then(Edited done, Next next) {
    if (!done) return done;
    return next(*done.plan);
}

Edited inserted(Edited done, const std::string& option, const std::string& mount, std::size_t at, const std::vector<OfferStep>& steps) {
    for (const OfferStep& step : steps) {
        done = then(std::move(done), [&](const Plan& p) { return insertPart(p, option, mount, at, *step.part, step.reversed); });
        ++at;
    }
    return done;
}

const Mount* mountOf(const Plan& plan, const std::string& option, const std::string& mount) {
    if (const PlanOption* o = plan.option(option))
        for (const Mount& m : o->mounts)
            if (m.id == mount) return &m;
    return nullptr;
}

}  // namespace

std::string newMountId(const Plan& plan, const std::string& option, const std::string& attachment) {
    return freeId("mount-" + attachment, [&](const std::string& id) { return mountOf(plan, option, id) != nullptr; });
}

Placement freePlace(const Attachment& attachment, const Grip& grip, const Placement& place) {
    Chain chain;
    std::vector<double> values;
    if (addPlacement(chain, values, attachment, Pose::Identity(), grip, place, false)) return place;
    Placement out = place;
    for (std::size_t i = 0; i < values.size(); ++i) {
        const Freedom& f = chain.freedoms[i];
        const double inside = f.fullTurn ? values[i] : std::clamp(values[i], f.min, f.max);
        if (f.of == Freedom::Of::along) out.along_m = inside;
        if (f.of == Freedom::Of::x) out.x_m = inside;
        if (f.of == Freedom::Of::y) out.y_m = inside;
    }
    return out;
}

Edited startMount(const Plan& plan, const std::string& option, const MountPlace& where, const Attachment& attachment,
                  const Offer& offer, const std::string& name) {
    Mount mount;
    mount.id = newMountId(plan, option, where.attachment);
    mount.name = name;
    mount.support = where.support;
    mount.attachment = where.attachment;
    const Grip* grip = gripFor(*offer.part, attachment);
    mount.place = grip ? freePlace(attachment, *grip, where.place) : where.place;
    MountPart part;
    part.part = offer.part->id;
    mount.parts.push_back(std::move(part));
    return addMount(plan, option, mount, {*offer.part});
}

Edited putBehind(const Plan& plan, const std::string& option, const std::string& mount, int part, const Offer& offer, const std::string& site) {
    std::vector<OfferStep> steps = offer.before;
    steps.push_back({offer.part, offer.reversed});
    steps.insert(steps.end(), offer.after.begin(), offer.after.end());
    Edited done = inserted({plan, {}}, option, mount, static_cast<std::size_t>(part) + 1, steps);
    if (!done || site.empty() || !offer.part->face) return done;
    const Mount* now = mountOf(*done.plan, option, mount);
    if (!now || !now->site.empty()) return done;
    return retargetMount(*done.plan, option, mount, site);
}

Edited putInPlaceOf(const Plan& plan, const std::string& option, const std::string& mount, int part, const Offer& offer) {
    const auto at = static_cast<std::size_t>(part);
    Edited done = replacePart(plan, option, mount, at, *offer.part);
    if (!done) return done;
    const Mount* now = mountOf(*done.plan, option, mount);
    if (now->parts[at].reversed != offer.reversed) done = reversePart(*done.plan, option, mount, at);
    done = inserted(std::move(done), option, mount, at + 1, offer.after);
    return inserted(std::move(done), option, mount, at, offer.before);
}

int numberBehind(int part, const Offer& offer) { return part + 1 + static_cast<int>(offer.before.size()); }
int numberInPlaceOf(int part, const Offer& offer) { return part + static_cast<int>(offer.before.size()); }

std::string nearestUnservedSite(const Setup& setup, const std::string& mount) {
    const auto found = std::find_if(setup.mounts.begin(), setup.mounts.end(), [&](const SetupMount& m) { return m.mount.id == mount; });
    if (found == setup.mounts.end()) return {};
    const Vec3 end = forward(found->chain, found->q).last().translation();
    std::string best;
    double least = 0;
    for (const Site& site : setup.situation.sites) {
        const bool served = std::any_of(setup.mounts.begin(), setup.mounts.end(), [&](const SetupMount& m) { return m.mount.site == site.id; });
        const double away = (site.p_W - end).norm();
        if (served || (!best.empty() && away >= least)) continue;
        best = site.id;
        least = away;
    }
    return best;
}

}  // namespace hither
