#include "app/panels/build_mount_bar.h"
#include "app/panels/build_offer_list.h"
#include "app/panels/build_panel.h"
#include "app/panels/build_ways_bar.h"
#include "app/panels/build_words.h"
#include "core/offers/offer_edits.h"
#include "core/plan/edits/options.h"

namespace hither {

void BuildPanel::goOn(const std::string& mount, int part, bool offerNext) {
    OfferFor next;
    if (offerNext) {
        next.kind = OfferFor::Kind::outlet;
        next.mount = mount;
        next.part = part;
    }
    context_.view.pick(offerNext ? Picked::outletOf(mount, part) : Picked::partOf(mount, part));
    context_.view.setOfferFor(next);
    if (offerNext) offers_->takeFocus();
    else ways_->takeFocus();
}

void BuildPanel::take(const Offer& offer) {
    Document& d = context_.document;
    const OfferFor to = context_.view.offerFor();
    const QString name = QString::fromStdString(offer.part->name);
    const std::string option = context_.view.option();
    if (to.kind == OfferFor::Kind::attachment) {
        const std::shared_ptr<const Situation> situation = context_.analysis.situation();
        const Support* support = situation ? situation->support(to.support) : nullptr;
        const Attachment* at = support ? support->attachment(to.attachment) : nullptr;
        if (!at) return;
        // A plan without an option gets its first one with its first mount.
        const std::string optionId = option.empty() ? "option-1" : option;
        Edited edit = option.empty() ? addOption(d.plan(), optionId, tr("Option 1").toStdString()) : Edited{d.plan(), {}};
        const std::string id = edit ? newMountId(*edit.plan, optionId, to.attachment) : std::string();
        if (edit) edit = startMount(*edit.plan, optionId, {to.support, to.attachment, to.place}, *at, offer, freeMountName(context_.view.planOption()).toStdString());
        if (d.apply(tr("Put %1 on %2").arg(name, QString::fromStdString(at->name)), edit)) goOn(id, 0, offer.part->outlet.has_value());
        return;
    }
    const Mount* mount = mountIn(d.plan(), option, to.mount);
    if (!mount) return;
    const std::string id = mount->id;
    const bool atEnd = to.part + 1 == static_cast<int>(mount->parts.size());
    if (to.kind == OfferFor::Kind::outlet) {
        std::string site;
        const std::shared_ptr<const Setup> setup = context_.analysis.setup();
        if (setup && offer.part->face) site = nearestUnservedSite(*setup, id);
        if (d.apply(tr("Add %1").arg(name), putBehind(d.plan(), option, id, to.part, offer, site)))
            goOn(id, numberBehind(to.part, offer), atEnd && offer.part->outlet.has_value());
    } else if (to.kind == OfferFor::Kind::replacement) {
        const Part* old = d.plan().part(mount->parts[static_cast<std::size_t>(to.part)].part);
        const QString was = old ? QString::fromStdString(old->name) : QString();
        if (d.apply(tr("Replace %1 by %2").arg(was, name), putInPlaceOf(d.plan(), option, id, to.part, offer)))
            goOn(id, numberInPlaceOf(to.part, offer), atEnd && offer.part->outlet.has_value());
    }
}

}  // namespace hither
