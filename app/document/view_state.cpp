#include "app/document/view_state.h"

#include <algorithm>
#include <utility>

namespace hither {

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
    const Plan& plan = document_.plan();
    if (!plan.option(option_)) {
        option_ = plan.options.empty() ? std::string() : plan.options.front().id;
        emit optionChanged();
    }
    const PlanOption* option = planOption();
    const auto mountOf = [&](const std::string& id) -> const Mount* {
        if (option) for (const Mount& m : option->mounts) if (m.id == id) return &m;
        return nullptr;
    };
    const auto supportThere = [&](const std::string& id) {
        return std::any_of(plan.supports.begin(), plan.supports.end(), [&](const SupportSpec& s) { return s.id == id; });
    };
    bool there = true;
    const Mount* mount = mountOf(picked_.id);
    switch (picked_.kind) {
        case Picked::Kind::nothing: break;
        case Picked::Kind::support:
        case Picked::Kind::attachment: there = supportThere(picked_.id); break;
        case Picked::Kind::person: there = plan.person.has_value(); break;
        case Picked::Kind::site: there = std::any_of(plan.sites.begin(), plan.sites.end(), [&](const SiteSpec& s) { return s.id == picked_.id; }); break;
        case Picked::Kind::mount: there = mount; break;
        case Picked::Kind::part:
        case Picked::Kind::outlet:
        case Picked::Kind::joint: there = mount && picked_.part >= 0 && static_cast<std::size_t>(picked_.part) < mount->parts.size(); break;
        case Picked::Kind::keepOut: there = option && std::any_of(option->keepOuts.begin(), option->keepOuts.end(), [&](const KeepOut& k) { return k.id == picked_.id; }); break;
    }
    if (!there) pick({});
    const Mount* offered = mountOf(offerFor_.mount);
    const bool offerThere = offerFor_.kind == OfferFor::Kind::nothing || (offerFor_.kind == OfferFor::Kind::attachment ? supportThere(offerFor_.support)
                            : offered && offerFor_.part >= 0 && static_cast<std::size_t>(offerFor_.part) < offered->parts.size());
    if (!offerThere) setOfferFor({});
}

}  // namespace hither
