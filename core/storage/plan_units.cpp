#include "core/storage/plan_units.h"

#include <algorithm>
#include <map>

namespace hither {
namespace {

template <class E>
std::optional<E> among(std::initializer_list<E> all, const std::string& text) {
    for (E e : all) if (text == word(e)) return e;
    return std::nullopt;
}

/// The moving groups that a kind can have, made once: some are there only when a range of theirs is not
/// zero, so every range is opened. Whether a support of other dimensions has the group is not asked here.
const std::vector<MovingGroup>& groupsOfKind(const std::string& kind) {
    static const std::map<std::string, std::vector<MovingGroup>> groups = [] {
        std::map<std::string, std::vector<MovingGroup>> out;
        for (const SupportKind& k : supportKinds()) {
            SupportSpec spec;
            spec.id = spec.kind = k.kind;
            for (const SupportDimension& d : k.dimensions)
                if (d.key.size() > 6 && d.key.compare(d.key.size() - 6, 6, "_range") == 0) spec.dimensions[d.key] = d.max;
            if (const SupportMade made = makeSupport(spec); made.support) out[k.kind] = made.support->groups;
        }
        return out;
    }();
    static const std::vector<MovingGroup> none;
    const auto found = groups.find(kind);
    return found == groups.end() ? none : found->second;
}

}  // namespace

JointForm jointForm(const Element& element) {
    if (std::holds_alternative<BallElement>(element.what)) return JointForm::swingTwist;
    if (std::holds_alternative<SlideElement>(element.what)) return JointForm::slide;
    if (std::holds_alternative<BendElement>(element.what)) return JointForm::curvature;
    return JointForm::angle;
}

std::vector<double> homeValues(const Element& element) {
    struct Home {
        std::vector<double> operator()(const RigidElement&) const { return {}; }
        std::vector<double> operator()(const HingeElement& e) const { return {std::clamp(0.0, e.min, e.max)}; }
        std::vector<double> operator()(const SwivelElement& e) const { return {std::clamp(0.0, e.min, e.max)}; }
        std::vector<double> operator()(const BallElement& e) const { return {0, 0, std::clamp(0.0, e.twistMin, e.twistMax)}; }
        std::vector<double> operator()(const SlideElement& e) const { return {std::clamp(0.0, e.min, e.max)}; }
        std::vector<double> operator()(const BendElement&) const { return std::vector<double>(6, 0.0); }
    };
    return std::visit(Home{}, element.what);
}

const char* attachmentList(AttachmentKind kind) {
    switch (kind) {
        case AttachmentKind::rail: return "rails";
        case AttachmentKind::edge: return "edges";
        case AttachmentKind::face: return "faces";
        case AttachmentKind::cloth: return "cloths";
    }
    return "rails";
}

std::optional<bool> groupSlidesIfKnown(const SupportSpec& support, const std::string& group) {
    for (const MovingGroup& g : support.groups) if (g.id == group) return g.slides;
    for (const MovingGroup& g : groupsOfKind(support.kind)) if (g.id == group) return g.slides;
    return std::nullopt;
}

std::vector<std::string> groupKeys(const SupportSpec& support) {
    std::vector<std::string> keys;
    for (const MovingGroup& g : groupsOfKind(support.kind)) keys.push_back(g.id + (g.slides ? "_mm" : "_deg"));
    for (const MovingGroup& g : support.groups) keys.push_back(g.id + (g.slides ? "_mm" : "_deg"));
    return keys;
}

std::string dimensionKeys(const SupportKind& kind) {
    std::string out;
    for (const SupportDimension& d : kind.dimensions) out += (out.empty() ? "" : ", ") + d.key + (d.angle ? "_deg" : "_mm");
    return out.empty() ? "none" : out;
}

const SupportKind* supportKind(const std::string& kind) {
    for (const SupportKind& k : supportKinds()) if (k.kind == kind) return &k;
    return nullptr;
}

const char* word(UnitSystem v) { return v == UnitSystem::inch ? "inch" : "metric"; }
const char* word(BodyTable v) { return v == BodyTable::woman ? "woman" : v == BodyTable::man ? "man" : "child"; }
const char* word(PersonSpec::Lying v) {
    return v == PersonSpec::Lying::onBack ? "on_back" : v == PersonSpec::Lying::onLeft ? "on_left" : "on_right";
}
const char* word(SiteGiven v) { return v == SiteGiven::typed ? "typed" : v == SiteGiven::onBody ? "on_body" : "from_posture"; }
const char* word(AttachmentKind v) {
    switch (v) {
        case AttachmentKind::rail: return "rail";
        case AttachmentKind::edge: return "edge";
        case AttachmentKind::face: return "face";
        case AttachmentKind::cloth: return "cloth";
    }
    return "rail";
}
const char* word(Section v) { return v == Section::round ? "round" : "square"; }

std::optional<UnitSystem> unitSystemFromWord(const std::string& t) { return among({UnitSystem::metric, UnitSystem::inch}, t); }
std::optional<BodyTable> bodyTableFromWord(const std::string& t) { return among({BodyTable::woman, BodyTable::man, BodyTable::child}, t); }
std::optional<PersonSpec::Lying> lyingFromWord(const std::string& t) { return among({PersonSpec::Lying::onBack, PersonSpec::Lying::onLeft, PersonSpec::Lying::onRight}, t); }
std::optional<SiteGiven> siteGivenFromWord(const std::string& t) { return among({SiteGiven::typed, SiteGiven::onBody, SiteGiven::fromPosture}, t); }
std::optional<AttachmentKind> attachmentKindFromWord(const std::string& t) { return among({AttachmentKind::rail, AttachmentKind::edge, AttachmentKind::face, AttachmentKind::cloth}, t); }
std::optional<Section> sectionFromWord(const std::string& t) { return among({Section::round, Section::square}, t); }

}  // namespace hither
