#include "app/panels/build_settings.h"

#include <cmath>

#include <QCoreApplication>
#include <QStringList>

#include "app/panels/build_words.h"

namespace hither {
namespace {

struct Words { Q_DECLARE_TR_FUNCTIONS(BuildSettings) };
using Of = Freedom::Of;

/// Curvature (kx, ky) turns the neck about that vector, so that its far end moves along (ky, -kx).
double bendDirection(double kx, double ky) { return std::atan2(-kx, ky); }

struct Maker {
    const Plan& plan;
    const Setup& setup;
    const SetupMount& mount;
    std::vector<Setting> out;

    double q(std::size_t i) const { return mount.q[static_cast<Eigen::Index>(i)]; }
    Dial dial(std::size_t i, Dial::What what, const QString& name) const {
        const Freedom& f = mount.chain.freedoms[i];
        Dial d;
        d.what = what;
        d.name = name;
        d.of = f.isAngle ? NumberField::Of::angle : NumberField::Of::length;
        d.min = f.min;
        d.max = f.max;
        d.fullTurn = f.fullTurn;
        d.step = f.step;
        d.firstStep = f.step ? detentValue(f, 0) : 0;
        d.value = q(i);
        return d;
    }

    Setting& place() {
        if (out.empty() || out.back().of.what != SettingOf::What::place) {
            Setting s;
            s.of = {SettingOf::What::place, 0, {}};
            s.kept = mount.mount.placeKept;
            const Support* support = setup.situation.support(mount.chain.support);
            const Attachment* at = support ? support->attachment(mount.chain.attachment) : nullptr;
            s.title = at ? Words::tr("Place on %1").arg(QString::fromStdString(at->name)) : Words::tr("Place");
            if (at && at->kind == AttachmentKind::edge) s.fromBelow = mount.mount.place.fromBelow;
            if (at && at->kind == AttachmentKind::rail) s.about = Words::tr("Turned by 0° it points %1.").arg(directionWords(at->reference));
            out.push_back(std::move(s));
        }
        return out.back();
    }
    QString alongName() const {
        const Support* support = setup.situation.support(mount.chain.support);
        const Attachment* at = support ? support->attachment(mount.chain.attachment) : nullptr;
        return at ? Words::tr("From %1").arg(startWords(*support, *at)) : Words::tr("Along");
    }
    void clocking(std::size_t i) {
        const Freedom& f = mount.chain.freedoms[i];
        Setting s;
        s.of = {SettingOf::What::clocking, f.part, {}};
        s.title = Words::tr("Turn against the part before it");
        s.kept = f.kept;
        for (const ChainMate& mate : mount.chain.mates)
            if (mate.part == f.part && mate.mate.threaded && !mate.mate.locked) s.about = Words::tr("Held by friction only: it can unscrew.");
        s.dials.push_back(dial(i, Dial::What::clocking, Words::tr("Turned by")));
        out.push_back(std::move(s));
    }
    QString together(int part, const std::string& name, const std::string& group) const {
        if (group.empty()) return {};
        QStringList others;
        for (const Freedom& f : mount.chain.freedoms)
            if (f.of == Of::joint && f.part == part && f.joint != name && f.figures.lockGroup == group && !others.contains(asTitle(f.joint))) others << asTitle(f.joint);
        return others.isEmpty() ? QString() : Words::tr("Locks together with %1.").arg(others.join(Words::tr(", ")));
    }
    /// The first freedom of a joint; returns how many of them there are.
    std::size_t joint(std::size_t i) {
        const Freedom& f = mount.chain.freedoms[i];
        const Part& part = *mount.chain.parts[static_cast<std::size_t>(f.part)];
        const Element* element = nullptr;
        for (const Element& e : part.elements) if (e.name == f.joint) element = &e;
        Setting s;
        s.of = {SettingOf::What::joint, f.part, f.joint};
        s.title = asTitle(f.joint);
        s.about = together(f.part, f.joint, f.figures.lockGroup);
        s.kept = f.kept;
        const std::size_t count = static_cast<std::size_t>(element->freedoms());
        if (std::holds_alternative<BallElement>(element->what)) {
            s.dials.push_back(dial(i, Dial::What::swingToward, Words::tr("Swing toward")));
            s.dials.push_back(dial(i + 1, Dial::What::swingSideways, Words::tr("Swing sideways")));
            s.dials.push_back(dial(i + 2, Dial::What::twist, Words::tr("Twist")));
        } else if (const auto* bend = std::get_if<BendElement>(&element->what)) {
            bends(s, i, *bend);
        } else {
            const bool slides = std::holds_alternative<SlideElement>(element->what);
            s.dials.push_back(dial(i, Dial::What::value, slides ? Words::tr("Length") : Words::tr("Angle")));
        }
        out.push_back(std::move(s));
        return count;
    }
    void bends(Setting& s, std::size_t i, const BendElement& neck) const {
        const QString where[] = {Words::tr("near the support"), Words::tr("in the middle"), Words::tr("near the switch")};
        const double arc = neck.length / 3, most = mount.chain.freedoms[i].max;
        for (int a = 0; a < 3; ++a) {
            const double kx = q(i + static_cast<std::size_t>(2 * a)), ky = q(i + static_cast<std::size_t>(2 * a) + 1), bent = std::hypot(kx, ky) * arc;
            Dial d;
            d.what = Dial::What::bend;
            d.arc = a;
            d.name = Words::tr("Bend %1").arg(where[a]);
            d.max = most * arc;
            d.value = bent;
            s.dials.push_back(d);
            d.what = Dial::What::bendDirection;
            d.name = Words::tr("Its direction");
            d.min = -pi;
            d.max = pi;
            d.fullTurn = true;
            d.usable = bent > 0;
            d.value = d.usable ? bendDirection(kx, ky) : 0;
            s.dials.push_back(d);
        }
    }
};

}  // namespace

bool Setting::sameShape(const Setting& other) const {
    if (!(of == other.of) || part != other.part || title != other.title || fromBelow.has_value() != other.fromBelow.has_value() || dials.size() != other.dials.size()) return false;
    for (std::size_t i = 0; i < dials.size(); ++i) {
        const Dial &a = dials[i], &b = other.dials[i];
        if (a.what != b.what || a.name != b.name || a.of != b.of || a.fullTurn != b.fullTurn || a.step.has_value() != b.step.has_value()) return false;
    }
    return true;
}

std::vector<Setting> settingsOf(const Plan& plan, const Setup& setup, const SetupMount& mount, int part) {
    Maker maker{plan, setup, mount, {}};
    const auto& freedoms = mount.chain.freedoms;
    for (std::size_t i = 0; i < freedoms.size();) {
        const Freedom& f = freedoms[i];
        std::size_t count = 1;
        if (part >= 0 && f.part != part) { ++i; continue; }
        switch (f.of) {
            case Of::along: maker.place().dials.push_back(maker.dial(i, Dial::What::along, maker.alongName())); break;
            case Of::around: maker.place().dials.push_back(maker.dial(i, Dial::What::around, Words::tr("Turned round it"))); break;
            case Of::x: maker.place().dials.push_back(maker.dial(i, Dial::What::x, Words::tr("From its middle, lengthwise"))); break;
            case Of::y: maker.place().dials.push_back(maker.dial(i, Dial::What::y, Words::tr("From its middle, across"))); break;
            case Of::yaw: maker.place().dials.push_back(maker.dial(i, Dial::What::yaw, Words::tr("Turned on it"))); break;
            case Of::clocking: maker.clocking(i); break;
            case Of::joint: count = maker.joint(i); break;
        }
        i += count;
    }
    for (Setting& s : maker.out) s.part = numbered(s.of.part, mount.chain.parts[static_cast<std::size_t>(s.of.part)]->name);
    return std::move(maker.out);
}

QString dialWords(const Dial& dial, double value, UnitSystem units) {
    return dial.of == NumberField::Of::angle ? QString::fromStdString(printAngle(value)) : QString::fromStdString(printLength(value, units));
}

QString dialLimits(const Dial& dial, UnitSystem units) {
    return dial.fullTurn ? QString() : Words::tr("%1 to %2").arg(dialWords(dial, dial.min, units), dialWords(dial, dial.max, units));
}

QString settingLabel(const Plan& plan, const std::string& option, const std::string& mount, const Setting& setting) {
    const Mount* m = mountIn(plan, option, mount);
    const Part* part = m && static_cast<std::size_t>(setting.of.part) < m->parts.size() ? plan.part(m->parts[static_cast<std::size_t>(setting.of.part)].part) : nullptr;
    const QString name = part ? QString::fromStdString(part->name) : QString();
    switch (setting.of.what) {
        case SettingOf::What::place: return Words::tr("Move %1").arg(name);
        case SettingOf::What::clocking: return Words::tr("Turn %1").arg(name);
        case SettingOf::What::joint: break;
    }
    return Words::tr("Set %1 of %2").arg(asTitle(setting.of.joint).toLower(), name);
}

}  // namespace hither
