#include "app/panels/givens_words.h"

#include <cmath>

#include <QCoreApplication>

#include "core/units/quantity.h"

namespace hither {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("GivensWords", text); }

}  // namespace

Bearing bearingOf(const Vec3& direction) {
    const double level = std::hypot(direction.x(), direction.y());
    return {level < 1e-12 ? 0.0 : std::atan2(direction.y(), direction.x()), std::atan2(direction.z(), level)};
}

Vec3 directionOf(const Bearing& b) { return {std::cos(b.elevation) * std::cos(b.azimuth), std::cos(b.elevation) * std::sin(b.azimuth), std::sin(b.elevation)}; }

QString movementWords(const Vec3& direction_W) {
    const Bearing b = bearingOf(direction_W);
    const int up = static_cast<int>(std::lround(degrees(b.elevation)));
    if (up >= 80) return tr("up");
    if (up <= -80) return tr("down");
    // Eight ways round, from forward to the left.
    static const char* const ways[] = {QT_TRANSLATE_NOOP("GivensWords", "forward"), QT_TRANSLATE_NOOP("GivensWords", "forward and to the left"), QT_TRANSLATE_NOOP("GivensWords", "to the left"),
                                       QT_TRANSLATE_NOOP("GivensWords", "backward and to the left"), QT_TRANSLATE_NOOP("GivensWords", "backward"), QT_TRANSLATE_NOOP("GivensWords", "backward and to the right"),
                                       QT_TRANSLATE_NOOP("GivensWords", "to the right"), QT_TRANSLATE_NOOP("GivensWords", "forward and to the right")};
    const int way = (static_cast<int>(std::lround(degrees(b.azimuth) / 45.0)) + 8) % 8;
    const QString level = tr(ways[way]);
    if (std::abs(up) < 3) return level;
    return up > 0 ? tr("%1, %2° up").arg(level).arg(up) : tr("%1, %2° down").arg(level).arg(-up);
}

QString controlSiteGroup(const std::string& id) {
    const auto begins = [&](const char* with) { return id.rfind(with, 0) == 0; };
    if (begins("forehead") || begins("head") || begins("chin") || begins("cheek") || begins("mouth")) return tr("Head and face");
    if (begins("shoulder")) return tr("Shoulder");
    if (begins("elbow") || begins("forearm")) return tr("Elbow and forearm");
    if (begins("wrist") || begins("hand") || begins("palm")) return tr("Wrist and hand");
    if (begins("index") || begins("thumb")) return tr("Fingers");
    if (begins("knee")) return tr("Knee");
    if (begins("foot")) return tr("Foot");
    return tr("Other");
}

}  // namespace hither
