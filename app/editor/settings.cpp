#include "app/editor/settings.h"

#include <algorithm>

#include <QDir>
#include <QFile>
#include <QJsonDocument>
#include <QJsonObject>
#include <QSaveFile>

namespace hither {
namespace {

QString path(const QString& folder) { return folder + "/settings.json"; }

}  // namespace

Settings Settings::read(const QString& folder) {
    Settings s;
    QFile file(path(folder));
    if (folder.isEmpty() || !file.open(QIODevice::ReadOnly) || file.size() > 100000) return s;
    const QJsonObject o = QJsonDocument::fromJson(file.readAll()).object();
    const QString brightness = o["brightness"].toString();
    if (brightness == "light") s.brightness = Brightness::light;
    if (brightness == "dark") s.brightness = Brightness::dark;
    s.textPercent = std::clamp(o["text_percent"].toInt(100), 75, 300);
    if (o["new_plan_display"].toString() == "inch") s.newPlanUnits = UnitSystem::inch;
    const QString currency = o["currency"].toString();
    if (currency.size() == 3 && std::all_of(currency.begin(), currency.end(), [](QChar c) { return c >= 'A' && c <= 'Z'; })) s.currency = currency;
    s.started = o["started"].toBool();
    return s;
}

QString Settings::write(const QString& folder) const {
    if (folder.isEmpty()) return {};
    QDir().mkpath(folder);
    QSaveFile file(path(folder));
    file.setDirectWriteFallback(false);
    const char* brightnessWord = brightness == Brightness::light ? "light" : brightness == Brightness::dark ? "dark" : "as_system";
    const QJsonObject o{{"brightness", brightnessWord}, {"text_percent", textPercent}, {"new_plan_display", newPlanUnits == UnitSystem::inch ? "inch" : "metric"},
                        {"currency", currency}, {"started", started}};
    if (!file.open(QIODevice::WriteOnly) || file.write(QJsonDocument(o).toJson()) < 0 || !file.commit()) return file.errorString();
    return {};
}

void lookAsWished(const Settings& settings) {
    const QString wished = qEnvironmentVariable("HITHER_BRIGHTNESS");
    const int percent = qEnvironmentVariableIntValue("HITHER_TEXT_PERCENT");
    const Brightness brightness = wished == "dark" ? Brightness::dark : wished == "light" ? Brightness::light : settings.brightness;
    applyTheme(*static_cast<QApplication*>(QCoreApplication::instance()), brightness, (percent >= 50 && percent <= 400 ? percent : settings.textPercent) / 100.0);
}

}  // namespace hither
