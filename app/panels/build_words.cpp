#include "app/panels/build_words.h"

#include <cmath>

#include <QCoreApplication>

#include "core/offers/offer_words.h"

namespace hither {
namespace {

struct Words { Q_DECLARE_TR_FUNCTIONS(BuildWords) };

QString length(double metres, UnitSystem units) { return QString::fromStdString(lengthWords(metres, units)); }

/// A landmark this near to the end of a rail is a better name for it than "front".
constexpr double nearEnd_m = 0.060;

}  // namespace

QString attachmentKindWord(AttachmentKind kind) {
    switch (kind) {
        case AttachmentKind::rail: return Words::tr("Rail");
        case AttachmentKind::edge: return Words::tr("Edge");
        case AttachmentKind::face: return Words::tr("Face");
        case AttachmentKind::cloth: return Words::tr("Cloth");
    }
    return {};
}

QString attachmentWords(const Attachment& at, UnitSystem units) {
    const auto size = [&](const Figure& f) { return f.known() ? length(*f.value, units) : Words::tr("size not known"); };
    switch (at.kind) {
        case AttachmentKind::rail:
            return (at.section == Section::round ? Words::tr("Rail, round tube, %1 outside, %2 long") : Words::tr("Rail, square tube, %1 outside, %2 long"))
                .arg(size(at.outside_m), length(at.length_m(), units));
        case AttachmentKind::edge: return Words::tr("Edge, %1 thick, %2 long").arg(size(at.thickness_m), length(at.length_m(), units));
        case AttachmentKind::face: return Words::tr("Face, %1 x %2").arg(length(at.sizeX_m, units), length(at.sizeY_m, units));
        case AttachmentKind::cloth: return Words::tr("Cloth, %1 thick, %2 long").arg(size(at.thickness_m), length(at.length_m(), units));
    }
    return {};
}

QString directionWords(const Vec3& d) {
    const Vec3 size = d.cwiseAbs();
    if (size.z() >= size.x() && size.z() >= size.y()) return d.z() >= 0 ? Words::tr("up") : Words::tr("down");
    if (size.x() >= size.y()) return d.x() >= 0 ? Words::tr("forward") : Words::tr("backward");
    return d.y() >= 0 ? Words::tr("left") : Words::tr("right");
}

QString startWords(const Support& support, const Attachment& at) {
    const Landmark* near = nullptr;
    double least = nearEnd_m;
    for (const Landmark& l : support.landmarks) {
        const double away = (l.p_S - at.a).norm();
        if (l.group != at.group || away > least || (l.p_S - at.b).norm() < away) continue;
        near = &l;
        least = away;
    }
    if (near && least < 0.002) return QString::fromStdString(near->name);
    const Vec3 d = at.a - at.b, size = d.cwiseAbs();
    if (size.z() >= size.x() && size.z() >= size.y()) return d.z() >= 0 ? Words::tr("its upper end") : Words::tr("its lower end");
    if (size.x() >= size.y()) return d.x() >= 0 ? Words::tr("its front end") : Words::tr("its rear end");
    return d.y() >= 0 ? Words::tr("its left end") : Words::tr("its right end");
}

QString placeWords(const Support& support, const Attachment& at, const Placement& p, UnitSystem units) {
    const QString along = Words::tr("%1 from %2").arg(length(p.along_m, units), startWords(support, at));
    const auto angle = [](double rad) { return QString::fromStdString(printAngle(rad)); };
    switch (at.kind) {
        case AttachmentKind::rail: return Words::tr("%1, turned %2 round it").arg(along, angle(p.around_rad));
        case AttachmentKind::edge: return p.fromBelow ? Words::tr("%1, from below").arg(along) : Words::tr("%1, from above").arg(along);
        case AttachmentKind::face: return Words::tr("%1 and %2 from its middle, turned %3").arg(length(p.x_m, units), length(p.y_m, units), angle(p.yaw_rad));
        case AttachmentKind::cloth: return along;
    }
    return {};
}

QString partKindWord(PartKind kind) {
    switch (kind) {
        case PartKind::grip: return Words::tr("Grip");
        case PartKind::arm: return Words::tr("Arm");
        case PartKind::neck: return Words::tr("Neck");
        case PartKind::post: return Words::tr("Post");
        case PartKind::joint: return Words::tr("Joint");
        case PartKind::adapter: return Words::tr("Adapter");
        case PartKind::back: return Words::tr("Switch back");
        case PartKind::switchDevice: return Words::tr("Switch");
    }
    return {};
}

QString partKindsWord(PartKind kind) {
    switch (kind) {
        case PartKind::grip: return Words::tr("Grips");
        case PartKind::arm: return Words::tr("Arms");
        case PartKind::neck: return Words::tr("Necks");
        case PartKind::post: return Words::tr("Posts");
        case PartKind::joint: return Words::tr("Joints");
        case PartKind::adapter: return Words::tr("Adapters");
        case PartKind::back: return Words::tr("Switch backs");
        case PartKind::switchDevice: return Words::tr("Switches");
    }
    return {};
}

QString priceWords(const std::optional<Money>& price) {
    return price ? QString::fromStdString(printMoney(*price)) : Words::tr("price not known");
}

QString asTitle(const std::string& name) {
    QString text = QString::fromStdString(name);
    text.replace('_', ' ');
    for (qsizetype i = 1; i < text.size(); ++i)
        if (text[i].isDigit() && text[i - 1].isLetter()) text.insert(i, ' ');
    if (!text.isEmpty()) text[0] = text[0].toUpper();
    return text;
}

QString numbered(int part, const std::string& name) { return Words::tr("%1 %2").arg(part + 1).arg(QString::fromStdString(name)); }

const Mount* mountIn(const Plan& plan, const std::string& option, const std::string& mount) {
    if (const PlanOption* o = plan.option(option))
        for (const Mount& m : o->mounts) if (m.id == mount) return &m;
    return nullptr;
}

const SetupMount* mountIn(const Setup* setup, const std::string& mount) {
    if (setup)
        for (const SetupMount& m : setup->mounts) if (m.mount.id == mount) return &m;
    return nullptr;
}

}  // namespace hither
