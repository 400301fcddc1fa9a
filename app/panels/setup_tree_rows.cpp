#include "app/panels/setup_tree_rows.h"

#include <cmath>

#include <QCoreApplication>
#include <QStringList>

#include "app/panels/build_words.h"
#include "core/checks/serving.h"
#include "core/offers/offer.h"
#include "core/offers/offer_words.h"

namespace hither {
namespace {

struct Words { Q_DECLARE_TR_FUNCTIONS(SetupTree) };

QString qs(const std::string& text) { return QString::fromStdString(text); }
QString length(double metres, UnitSystem units) { return qs(printLength(metres, units)); }
QString degreesWords(double rad) { return qs(printAngle(rad)); }

SetupRow row(const QString& key, const QString& text, Picked picked = {}) {
    SetupRow r;
    r.key = key;
    r.text = text;
    r.picked = std::move(picked);
    return r;
}

/// "312 mm forward, 280 mm right, 690 mm up".
QString pointWords(const Vec3& p, UnitSystem units) {
    return Words::tr("%1, %2, %3")
        .arg((p.x() >= 0 ? Words::tr("%1 forward") : Words::tr("%1 backward")).arg(length(std::abs(p.x()), units)),
             (p.y() >= 0 ? Words::tr("%1 left") : Words::tr("%1 right")).arg(length(std::abs(p.y()), units)), Words::tr("%1 up").arg(length(p.z(), units)));
}

struct Rows {
    const EditorContext& context;
    const Plan& plan;
    UnitSystem units;
    std::shared_ptr<const Situation> situation;
    std::shared_ptr<const Setup> setup;
    const PlanOption* option;

    SetupRow supports() const {
        SetupRow top = row("supports", plan.supports.empty() ? Words::tr("Supports: none yet") : Words::tr("Supports"));
        top.open = true;
        for (const SupportSpec& spec : plan.supports) {
            SetupRow s = row(qs(spec.id), qs(spec.name), Picked::support(spec.id));
            const Support* made = situation ? situation->support(spec.id) : nullptr;
            if (!made) s.text = Words::tr("%1: cannot be made").arg(s.text);
            else {
                for (const MovingGroup& g : made->groups)
                    s.children.push_back(row("group/" + qs(g.id), Words::tr("%1: %2 (%3 to %4)").arg(qs(g.name), groupValue(g, g.value), groupValue(g, g.min), groupValue(g, g.max)), Picked::support(spec.id)));
                for (const Attachment& a : made->attachments) {
                    QStringList holds;
                    if (option)
                        for (const Mount& m : option->mounts) if (m.support == spec.id && m.attachment == a.id) holds << qs(m.name);
                    QString text = Words::tr("%1: %2").arg(qs(a.name), attachmentWords(a, units));
                    if (!holds.isEmpty()) text = Words::tr("%1; holds %2").arg(text, holds.join(Words::tr(", ")));
                    s.children.push_back(row("at/" + qs(a.id), text, Picked::attachment(spec.id, a.id)));
                }
            }
            top.children.push_back(std::move(s));
        }
        return top;
    }
    QString groupValue(const MovingGroup& g, double value) const { return g.slides ? length(value, units) : degreesWords(value); }

    SetupRow person() const {
        if (!plan.person) return row("person", Words::tr("Person: nobody yet"));
        const Support* on = situation && situation->body ? situation->support(situation->body->support) : nullptr;
        const QString name = plan.person->name.empty() ? Words::tr("without a name") : qs(plan.person->name);
        QString text = Words::tr("Person: %1").arg(name);
        if (on) text = (on->resting.posture == Resting::Posture::lying ? Words::tr("%1, lying on %2") : Words::tr("%1, sitting on %2")).arg(text, qs(on->name));
        SetupRow top = row("person", text, Picked::person());
        for (const auto& [joint, angle] : plan.person->posture)
            top.children.push_back(row(qs(joint), Words::tr("%1: %2").arg(asTitle(joint), degreesWords(angle)), Picked::person()));
        return top;
    }

    SetupRow sites() const {
        SetupRow top = row("sites", plan.sites.empty() ? Words::tr("Sites: none yet") : Words::tr("Sites"));
        top.open = true;
        for (const SiteSpec& spec : plan.sites) {
            QStringList said{qs(spec.name)};
            if (const Site* site = situation ? situation->site(spec.id) : nullptr) {
                said << pointWords(site->p_W, units) << Words::tr("the movement goes %1").arg(directionWords(site->d_W));
                if (site->movement_m.known()) said << Words::tr("%1 long").arg(length(*site->movement_m.value, units));
            }
            QStringList by;
            if (option)
                for (const Mount& m : option->mounts) if (m.site == spec.id) by << qs(m.name);
            said << (by.isEmpty() ? Words::tr("no switch serves it") : Words::tr("served by %1").arg(by.join(Words::tr(", "))));
            top.children.push_back(row(qs(spec.id), said.join(Words::tr("; ")), Picked::site(spec.id)));
        }
        return top;
    }

    SetupRow dialRow(const Dial& d, const Setting& setting, const QString& name, const Picked& picked, int number) const {
        QString text = Words::tr("%1: %2").arg(name, dialWords(d, d.value, units));
        if (!d.usable) text = Words::tr("%1: none while it is straight").arg(name);
        else if (const QString limits = dialLimits(d, units); !limits.isEmpty()) text = Words::tr("%1 (%2)").arg(text, limits);
        if (setting.kept) text = Words::tr("%1, locked").arg(text);
        SetupRow r = row(QStringLiteral("dial/%1").arg(number), text, picked);
        if (d.usable) r.dial = d;
        r.setting.of = setting.of;
        r.setting.title = setting.title;
        return r;
    }

    void addSetting(SetupRow& part, const Setting& s, const std::string& mount) const {
        const Picked picked = s.of.what == SettingOf::What::joint ? Picked::jointOf(mount, s.of.part, s.of.joint) : Picked::partOf(mount, s.of.part);
        const QString key = QStringLiteral("%1/%2").arg(static_cast<int>(s.of.what)).arg(qs(s.of.joint));
        if (s.dials.size() == 1) {
            SetupRow only = dialRow(s.dials.front(), s, s.title, picked, 0);
            only.key = key;
            part.children.push_back(std::move(only));
            return;
        }
        SetupRow group = row(key, s.kept ? Words::tr("%1, locked").arg(s.title) : s.title, picked);
        group.open = true;
        Setting plain = s;
        plain.kept = false;   // said once, by the row above
        int number = 0;
        for (const Dial& d : s.dials) group.children.push_back(dialRow(d, plain, d.name, picked, number++));
        part.children.push_back(std::move(group));
    }

    SetupRow mount(const Mount& m) const {
        SetupRow top = row(qs(m.id), qs(m.name), Picked::mount(m.id));
        top.open = true;
        const Support* support = situation ? situation->support(m.support) : nullptr;
        if (const Attachment* at = support ? support->attachment(m.attachment) : nullptr)
            top.text = Words::tr("%1: on %2, %3").arg(qs(m.name), qs(at->name), placeWords(*support, *at, m.place, units));
        const SetupMount* made = mountIn(setup.get(), m.id);
        const std::vector<Setting> settings = made ? settingsOf(plan, *setup, *made, -1) : std::vector<Setting>{};
        std::size_t next = 0;
        for (int i = 0; i < static_cast<int>(m.parts.size()); ++i) {
            const MountPart& here = m.parts[static_cast<std::size_t>(i)];
            const Part* data = plan.part(here.part);
            SetupRow part = row(QStringLiteral("part/%1/%2").arg(i).arg(qs(here.part)), numbered(i, data ? data->name : here.part), Picked::partOf(m.id, i));
            if (here.reversed) part.text = Words::tr("%1, end for end").arg(part.text);
            for (; next < settings.size() && settings[next].of.part == i; ++next) addSetting(part, settings[next], m.id);
            top.children.push_back(std::move(part));
        }
        const auto last = m.parts.empty() ? nullptr : builtPart(plan, m.parts.back());
        if (last && last->outlet)
            top.children.push_back(row("end", Words::tr("Free end: %1").arg(qs(portWords(*last->outlet, units))), Picked::outletOf(m.id, static_cast<int>(m.parts.size()) - 1)));
        if (const QString words = made ? faceToSiteWords(*setup, *made, units) : QString(); !words.isEmpty())
            top.children.push_back(row("face", words, Picked::site(m.site)));
        return top;
    }

    SetupRow mounts() const {
        const bool none = !option || option->mounts.empty();
        SetupRow top = row("mounts", none ? Words::tr("Mounts: none yet") : Words::tr("Mounts"));
        top.open = true;
        if (option)
            for (const Mount& m : option->mounts) top.children.push_back(mount(m));
        return top;
    }

    SetupRow keepOuts() const {
        const bool none = !option || option->keepOuts.empty();
        SetupRow top = row("keep", none ? Words::tr("Keep free: nothing named") : Words::tr("Keep free"));
        top.open = true;
        if (option)
            for (const KeepOut& k : option->keepOuts)
                top.children.push_back(row(qs(k.id), Words::tr("%1: %2; margin %3").arg(qs(k.name), pointWords(k.solid.X_FG.translation(), units), length(k.margin_m, units)), Picked::keepOut(k.id)));
        return top;
    }
};

}  // namespace

QString faceToSiteWords(const Setup& setup, const SetupMount& mount, UnitSystem units) {
    const Site* site = setup.situation.site(mount.mount.site);
    if (!site || !mount.chain.face) return {};
    const Pose face = forward(mount.chain, mount.q).last();
    const Vec3 axis = (face.linear() * mount.chain.operatingAxis).normalized();
    const double angle = std::atan2(axis.cross(site->d_W).norm(), axis.dot(site->d_W));
    return Words::tr("Its face is %1 from %2 and turned %3 from the movement")
        .arg(qs(lengthWords(faceToPoint(mount, face, site->p_W), units)), qs(site->name), qs(printAngle(angle, 1)));
}

std::vector<SetupRow> setupRows(const EditorContext& context) {
    Rows rows{context, context.document.plan(), context.view.units(), context.analysis.situation(), context.analysis.setup(), context.view.planOption()};
    return {rows.supports(), rows.person(), rows.sites(), rows.mounts(), rows.keepOuts()};
}

}  // namespace hither
