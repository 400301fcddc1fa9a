#include "app/scene/hover_words.h"

#include <algorithm>

#include <QCoreApplication>
#include <QLocale>

#include "core/situation/person.h"
#include "core/units/quantity.h"

namespace hither {
namespace {

class HoverWords {
    Q_DECLARE_TR_FUNCTIONS(HoverWords)

public:
    static QString attachment(const Attachment& a, UnitSystem units) {
        const auto size = [units](const Figure& f) { return QString::fromStdString(printLength(*f.value, units)); };
        switch (a.kind) {
            case AttachmentKind::rail:
                if (!a.outside_m.known()) return tr("tube of unknown size");
                return a.section == Section::round ? tr("%1 round tube").arg(size(a.outside_m)) : tr("%1 square tube").arg(size(a.outside_m));
            case AttachmentKind::edge: return a.thickness_m.known() ? tr("edge %1 thick").arg(size(a.thickness_m)) : tr("edge of unknown thickness");
            case AttachmentKind::face:
                return tr("face %1 by %2").arg(QString::fromStdString(printLength(a.sizeX_m, units)), QString::fromStdString(printLength(a.sizeY_m, units)));
            case AttachmentKind::cloth: break;
        }
        return tr("cloth");
    }
    static QString segment(Segment segment) {
        switch (segment) {
            case Segment::pelvis: return tr("pelvis");
            case Segment::trunk: return tr("trunk");
            case Segment::neck: return tr("neck");
            case Segment::head: return tr("head");
            case Segment::upperArm: return tr("upper arm");
            case Segment::forearm: return tr("forearm");
            case Segment::hand: return tr("hand");
            case Segment::thigh: return tr("thigh");
            case Segment::shank: return tr("lower leg");
            case Segment::foot: break;
        }
        return tr("foot");
    }
    static QString onSide(Side side, const QString& what) {
        return side == Side::left ? tr("left %1").arg(what) : side == Side::right ? tr("right %1").arg(what) : what;
    }
    static QString onMount(const Picked& pick, JobStep step, const Setup& setup) {
        const auto found = std::find_if(setup.mounts.begin(), setup.mounts.end(), [&](const SetupMount& m) { return m.mount.id == pick.id; });
        if (found == setup.mounts.end()) return {};
        const QString mount = QString::fromStdString(found->mount.name);
        if (pick.part < 0 || static_cast<std::size_t>(pick.part) >= found->chain.parts.size()) return mount;
        const Part& part = *found->chain.parts[static_cast<std::size_t>(pick.part)];
        const QString name = QString::fromStdString(part.name);
        if (pick.kind == Picked::Kind::outlet) return tr("%1: open end – click to see what mates with it").arg(name);
        if (pick.kind == Picked::Kind::joint) {
            const bool known = std::any_of(part.elements.begin(), part.elements.end(), [&](const Element& e) { return e.name == pick.piece; });
            if (known) return tr("%1: %2 – drag to set it").arg(name, QString::fromStdString(pick.piece));
            return pick.part == 0 ? tr("%1 – drag to move the grip").arg(name) : tr("%1 – drag to turn it on its thread").arg(name);
        }
        const bool drags = step == JobStep::build || step == JobStep::check;
        if (drags && part.face) return tr("%1, %2 – drag it and the mount follows").arg(name, mount);
        if (drags && pick.part == 0) return tr("%1, %2 – drag to move the grip").arg(name, mount);
        return tr("%1, %2 – click to pick it").arg(name, mount);
    }
    static QString of(const Picked& pick, JobStep step, UnitSystem units, const Situation* situation, const Setup* setup) {
        const Support* support = situation ? situation->support(pick.id) : nullptr;
        switch (pick.kind) {
            case Picked::Kind::nothing: return {};
            case Picked::Kind::support: return support ? QString::fromStdString(support->name) : QString();
            case Picked::Kind::attachment: {
                const Attachment* a = support ? support->attachment(pick.piece) : nullptr;
                if (!a) return {};
                const QString what = tr("%1: %2").arg(QString::fromStdString(a->name), attachment(*a, units));
                return step == JobStep::build ? tr("%1 – click to see the grips that fit").arg(what) : what;
            }
            case Picked::Kind::person: {
                const QString part = pick.piece.empty() ? tr("The person") : segmentWords(pick.piece);
                return step == JobStep::site ? tr("%1 – click to put the site here").arg(part) : part;
            }
            case Picked::Kind::site: {
                const Site* site = situation ? situation->site(pick.id) : nullptr;
                return site ? tr("Site: %1").arg(QString::fromStdString(site->name)) : QString();
            }
            case Picked::Kind::keepOut: {
                if (!setup) return {};
                for (const KeepOut& k : setup->keepOuts) if (k.id == pick.id) return tr("Keep-out: %1").arg(QString::fromStdString(k.name));
                return {};
            }
            default: return setup ? onMount(pick, step, *setup) : QString();
        }
    }
};

}  // namespace

QString segmentWords(const std::string& segment) {
    const std::optional<SegmentId> id = segmentFromWord(segment);
    return id ? HoverWords::onSide(id->side, HoverWords::segment(id->segment)) : QString::fromStdString(segment);
}

QString hoverWords(const Picked& pick, JobStep step, UnitSystem units, const Situation* situation, const Setup* setup) {
    QString words = HoverWords::of(pick, step, units, situation, setup);
    if (!words.isEmpty()) words[0] = QLocale().toUpper(words.left(1)).at(0);
    return words;
}

}  // namespace hither
