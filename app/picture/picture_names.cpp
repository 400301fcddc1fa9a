#include <algorithm>
#include <cmath>

#include "app/picture/site_items.h"
#include "core/units/quantity.h"

namespace hither {

namespace {

std::string amount(double value, Measure measure, UnitSystem units) {
    switch (measure) {
        case Measure::length: return printLength(value, units, std::abs(value) < 0.010 && std::abs(value) >= 0.00005 ? 1 : 0);
        case Measure::angle: return printAngle(value);
        case Measure::mass: return printMass(value, units);
        case Measure::force: return printForce(value, units);
        case Measure::moment: return printMoment(value, units);
        default: return {};
    }
}

/// Middle of the bounds of every item that a click would pick so.
std::optional<Vec3> middleOf(const Picture& picture, const Picked& pick) {
    Eigen::AlignedBox3d box;
    for (const PictureItem& item : picture.items) {
        const bool whole = (pick.kind == Picked::Kind::mount && item.pick.kind == Picked::Kind::part && item.pick.id == pick.id) ||
                           (pick.kind == Picked::Kind::person && pick.piece.empty() && item.pick.kind == Picked::Kind::person) ||
                           (pick.kind == Picked::Kind::support && pick.piece.empty() && item.pick.kind == Picked::Kind::support && item.pick.id == pick.id);
        if (!whole && !(item.pick == pick)) continue;
        for (const Eigen::Vector3f& p : item.mesh->points) box.extend(item.X_W * p.cast<double>());
    }
    if (box.isEmpty()) return std::nullopt;
    return box.center();
}

std::string nameOf(const Situation& situation, const Setup* setup, const Picked& pick) {
    const auto mount = [&]() -> const SetupMount* {
        if (!setup) return nullptr;
        const auto found = std::find_if(setup->mounts.begin(), setup->mounts.end(), [&](const SetupMount& m) { return m.mount.id == pick.id; });
        return found == setup->mounts.end() ? nullptr : &*found;
    };
    switch (pick.kind) {
        case Picked::Kind::attachment: {
            const Support* support = situation.support(pick.id);
            const Attachment* attachment = support ? support->attachment(pick.piece) : nullptr;
            return attachment ? attachment->name : std::string();
        }
        case Picked::Kind::support: {
            const Support* support = situation.support(pick.id);
            return support && pick.piece.empty() ? support->name : std::string();
        }
        case Picked::Kind::mount: return mount() ? mount()->mount.name : std::string();
        case Picked::Kind::part: {
            const SetupMount* m = mount();
            const bool there = m && pick.part >= 0 && pick.part < static_cast<int>(m->chain.parts.size());
            return there ? m->chain.parts[static_cast<std::size_t>(pick.part)]->name : std::string();
        }
        case Picked::Kind::keepOut: {
            if (!setup) return {};
            const auto found = std::find_if(setup->keepOuts.begin(), setup->keepOuts.end(), [&](const KeepOut& k) { return k.id == pick.id; });
            return found == setup->keepOuts.end() ? std::string() : found->name;
        }
        default: return {};
    }
}

}  // namespace

void addFinding(Picture& picture, const PictureWishes& wishes) {
    if (!wishes.finding || !wishes.finding->witness) return;
    const Finding& finding = *wishes.finding;
    const Look look = finding.verdict == Verdict::misses ? Look::misses : finding.verdict == Verdict::close ? Look::close : Look::ghost;
    const Vec3 &a = finding.witness->a_W, &b = finding.witness->b_W;
    picture.lines.push_back({"finding", a, b, look});
    if (!wishes.labels) return;
    PictureLabel label;
    label.key = "finding";
    label.rank = PictureLabel::Rank::finding;
    label.at_W = 0.5 * (a + b);
    label.words = finding.value ? amount(*finding.value, finding.measure, wishes.units) : std::string();
    if (label.words.empty()) label.words = amount((b - a).norm(), Measure::length, wishes.units);
    picture.labels.push_back(std::move(label));
}

void addPickedName(Picture& picture, const Situation& situation, const Setup* setup, const PictureWishes& wishes) {
    if (!wishes.labels || wishes.picked.nothing()) return;
    PictureLabel label;
    label.words = nameOf(situation, setup, wishes.picked);
    const std::optional<Vec3> at = middleOf(picture, wishes.picked);
    if (label.words.empty() || !at) return;
    label.key = "picked";
    label.rank = PictureLabel::Rank::picked;
    label.at_W = *at;
    picture.labels.push_back(std::move(label));
}

}  // namespace hither
