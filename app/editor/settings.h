#pragma once
#include <QString>

#include "app/widgets/theme.h"
#include "core/units/quantity.h"

namespace hither {

/// What a person chose about the program itself, kept in a small file in their own folder. It holds
/// nothing about a plan.
struct Settings {
    Brightness brightness = Brightness::asSystem;
    int textPercent = 100;                    ///< 75 to 300
    UnitSystem newPlanUnits = UnitSystem::metric;
    QString currency = "EUR";                 ///< of new plans
    bool started = false;                     ///< false: this is the first start

    /// From a file that may be missing or damaged: what cannot be read keeps its default.
    static Settings read(const QString& folder);
    /// Empty when kept, otherwise why not.
    QString write(const QString& folder) const;
};

/// Puts brightness and text size into effect. HITHER_BRIGHTNESS (light, dark) and HITHER_TEXT_PERCENT go
/// before what is kept: for looking at the window in other ways without changing one's settings.
void lookAsWished(const Settings& settings);

}  // namespace hither
