#include "app/document/view_state.h"

#include <algorithm>
#include <utility>

namespace hither {
namespace {

const SupportSpec* supportOf(const Plan& plan, const std::string& id) {
    for (const SupportSpec& s : plan.supports) if (s.id == id) return &s;
    return nullptr;
}

const Mount* mountOf(const PlanOption* option, const std::string& id) {
    if (option) for (const Mount& m : option->mounts) if (m.id == id) return &m;
    return nullptr;
}

bool hasPart(const Mount* mount, int part) { return mount && part >= 0 && static_cast<std::size_t>(part) < mount->parts.size(); }

bool hasJoint(const Plan& plan, const Mount* mount, int at, const std::string& joint) {
    if (!hasPart(mount, at)) return false;
    const Part* part = plan.part(mount->parts[static_cast<std::size_t>(at)].part);
    return joint.empty() || (part && std::any_of(part->elements.begin(), part->elements.end(), [&](const Element& e) { return e.name == joint; }));
}

bool isThere(const Picked& picked, const Plan& plan, const PlanOption* option) {
    const Mount* mount = mountOf(option, picked.id);
    switch (picked.kind) {
        case Picked::Kind::nothing: return true;
        case Picked::Kind::support:
        case Picked::Kind::attachment: return supportOf(plan, picked.id) != nullptr;
        case Picked::Kind::person: return plan.person.has_value();
        case Picked::Kind::site: return std::any_of(plan.sites.begin(), plan.sites.end(), [&](const SiteSpec& s) { return s.id == picked.id; });
        case Picked::Kind::mount: return mount != nullptr;
        case Picked::Kind::part:
        case Picked::Kind::outlet: return hasPart(mount, picked.part);
        case Picked::Kind::joint: return hasJoint(plan, mount, picked.part, picked.piece);
        case Picked::Kind::keepOut: break;
    }
    return option && std::any_of(option->keepOuts.begin(), option->keepOuts.end(), [&](const KeepOut& k) { return k.id == picked.id; });
}

bool isThere(const OfferFor& offer, const Plan& plan, const PlanOption* option) {
    switch (offer.kind) {
        case OfferFor::Kind::nothing: return true;
        case OfferFor::Kind::attachment: return supportOf(plan, offer.support) != nullptr;
        case OfferFor::Kind::outlet:
        case OfferFor::Kind::replacement: break;
    }
    return hasPart(mountOf(option, offer.mount), offer.part);
}

}  // namespace

ViewState::ViewState(Document& document, QObject* parent) : QObject(parent), document_(document) {
    connect(&document_, &Document::changed, this, &ViewState::follow);
    follow();
}

int ViewState::optionIndex() const {
    const auto& options = document_.plan().options;
    const auto found = std::find_if(options.begin(), options.end(), [&](const PlanOption& o) { return o.id == option_; });
    return found == options.end() ? -1 : static_cast<int>(found - options.begin());
}

const PlanOption* ViewState::planOption() const { return document_.plan().option(option_); }

const Mount* ViewState::mount() const {
    const PlanOption* option = planOption();
    if (!option || option->mounts.empty()) return nullptr;
    for (const Mount& m : option->mounts) if (m.id == mount_) return &m;
    return &option->mounts.front();
}

void ViewState::setOption(const std::string& option) {
    if (option == option_ || !document_.plan().option(option)) return;
    option_ = option;
    emit optionChanged();
    follow();
}

void ViewState::setStep(JobStep step) {
    if (step == step_) return;
    step_ = step;
    emit stepChanged();
}

void ViewState::pick(const Picked& picked) {
    using Kind = Picked::Kind;
    if (picked.kind == Kind::mount || picked.kind == Kind::part || picked.kind == Kind::outlet || picked.kind == Kind::joint) mount_ = picked.id;
    if (picked == picked_) return;
    picked_ = picked;
    emit pickedChanged();
}

void ViewState::setOfferFor(const OfferFor& offer) {
    if (offer == offerFor_) return;
    offerFor_ = offer;
    emit offerForChanged();
}

void ViewState::showFinding(const QString& finding) {
    if (finding == finding_) return;
    finding_ = finding;
    emit findingChanged();
}

void ViewState::follow() {
    // Held: whoever is told of a change here may change the document.
    const std::shared_ptr<const Plan> plan = document_.shared();
    if (plan->id != plan_) {
        plan_ = plan->id;
        mount_.clear();
        showFinding({});
    }
    if (!plan->option(option_)) {
        option_ = plan->options.empty() ? std::string() : plan->options.front().id;
        emit optionChanged();
    }
    const PlanOption* option = plan->option(option_);
    if (!isThere(picked_, *plan, option)) pick({});
    if (!isThere(offerFor_, *plan, option)) setOfferFor({});
}

}  // namespace hither
