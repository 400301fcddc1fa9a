#include "app/scene/scene_click.h"

#include <algorithm>

#include <QCoreApplication>

#include "app/scene/hover_words.h"
#include "app/scene/placement_at.h"
#include "core/plan/edits/sites.h"

namespace hither {
namespace {

constexpr double near_m = 0.08;  // a control site farther away than that is another place

const ControlSite* controlSiteNear(const Body& body, const BodyPick& at) {
    const ControlSite* best = nullptr;
    double least = near_m;
    for (const ControlSite& c : body.sites) {
        if (c.segment != at.segment) continue;
        const double apart = (c.point - at.point_segment).norm();
        if (apart < least) {
            least = apart;
            best = &c;
        }
    }
    return best;
}

void putSite(const EditorContext& context, const Body& body, const BodyPick& at) {
    const Plan& plan = context.document.plan();
    const Picked& picked = context.view.picked();
    const std::string site = picked.kind == Picked::Kind::site ? picked.id : std::string();
    const bool moves = std::any_of(plan.sites.begin(), plan.sites.end(), [&](const SiteSpec& s) { return s.id == site; });
    const QString label = moves ? QCoreApplication::translate("hither::Scene", "Move the site on the body") : QCoreApplication::translate("hither::Scene", "Put a site on the body");
    const Edited edit = siteOnBody(plan, body, at, moves ? site : std::string());
    if (!context.document.apply(label, edit)) return;
    if (!moves) context.view.pick(Picked::site(context.document.plan().sites.back().id));
}

}  // namespace

Edited siteOnBody(const Plan& plan, const Body& body, const BodyPick& at, const std::string& site) {
    const auto found = std::find_if(plan.sites.begin(), plan.sites.end(), [&](const SiteSpec& s) { return s.id == site; });
    SiteSpec spec = found == plan.sites.end() ? SiteSpec{} : *found;
    const ControlSite* control = controlSiteNear(body, at);
    spec.given = SiteGiven::onBody;
    spec.segment = at.segment;
    spec.point = at.point_segment;
    spec.direction = at.normal_segment.normalized();
    spec.directionTyped = true;
    spec.controlSite = control ? control->id : std::string();
    if (found != plan.sites.end()) return replaceSite(plan, site, spec);
    const std::string base = control ? control->id : word(at.segment);
    spec.id = freeId(base, [&](const std::string& id) { return std::any_of(plan.sites.begin(), plan.sites.end(), [&](const SiteSpec& s) { return s.id == id; }); });
    spec.name = control ? control->name : segmentWords(word(at.segment)).toStdString();
    return addSite(plan, spec);
}

void clickInScene(const EditorContext& context, const Ray& ray_W, const std::optional<PictureHit>& hit) {
    ViewState& view = context.view;
    const auto situation = context.analysis.situation();
    const Picked pick = hit ? hit->pick : Picked{};
    if (view.step() == JobStep::site && pick.kind == Picked::Kind::person && situation && situation->body) {
        if (const auto at = pickOnBody(*situation->body, ray_W)) {
            putSite(context, *situation->body, *at);
            return;
        }
    }
    OfferFor offer;
    if (view.step() == JobStep::build && pick.kind == Picked::Kind::attachment && situation) {
        if (const auto place = placementAt(*situation, pick.id, pick.piece, hit->point_W)) {
            offer.kind = OfferFor::Kind::attachment;
            offer.support = pick.id;
            offer.attachment = pick.piece;
            offer.place = *place;
        }
    } else if (view.step() == JobStep::build && pick.kind == Picked::Kind::outlet) {
        offer.kind = OfferFor::Kind::outlet;
        offer.mount = pick.id;
        offer.part = pick.part;
    }
    view.pick(pick);
    if (view.step() == JobStep::build) view.setOfferFor(offer);
}

}  // namespace hither
