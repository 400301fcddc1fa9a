#include "app/widgets/theme.h"

#include <algorithm>
#include <cmath>

#include <QFont>
#include <QPalette>

#include "app/widgets/own_style.h"
#include "app/widgets/style_sheet.h"

namespace hither {
namespace {

const Theme* chosen = nullptr;

Theme makeLight() {
    Theme t;
    t.window = "#f2f0eb"; t.surface = "#ffffff"; t.raised = "#dcebea";
    t.text = "#1f2529"; t.quietText = "#525b63";
    t.border = "#cfcabf"; t.strongBorder = "#7d7a72";
    t.accent = "#0f5e62"; t.accentText = "#ffffff";
    t.focus = "#b4430a";
    t.meets = "#1c6636"; t.close = "#7f5200"; t.misses = "#a3182c"; t.unknown = "#4b5666";
    return t;
}

Theme makeDark() {
    Theme t;
    t.dark = true;
    t.window = "#1d2225"; t.surface = "#262c30"; t.raised = "#24484a";
    t.text = "#eceae4"; t.quietText = "#b3b9bd";
    t.border = "#3c444a"; t.strongBorder = "#8b949b";
    t.accent = "#7fd1cf"; t.accentText = "#10292b";
    t.focus = "#ffab6b";
    t.meets = "#7fd99a"; t.close = "#f0bf5a"; t.misses = "#ff98a0"; t.unknown = "#c3ccd6";
    return t;
}

double luminance(const QColor& c) {
    const auto channel = [](double v) { return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4); };
    return 0.2126 * channel(c.redF()) + 0.7152 * channel(c.greenF()) + 0.0722 * channel(c.blueF());
}

}  // namespace

const Theme& Theme::light() { static const Theme theme = makeLight(); return theme; }
const Theme& Theme::darkOne() { static const Theme theme = makeDark(); return theme; }
const Theme& Theme::current() { return chosen ? *chosen : light(); }

QColor Theme::of(Verdict verdict) const {
    switch (verdict) {
        case Verdict::meets: return meets;
        case Verdict::close: return close;
        case Verdict::misses: return misses;
        case Verdict::unknown: break;
    }
    return unknown;
}

std::vector<Theme::Pair> Theme::pairs() const {
    std::vector<Pair> out;
    const std::vector<std::pair<QColor, QString>> backs = {{window, "window"}, {surface, "surface"}, {raised, "picked row"}};
    for (const auto& [back, name] : backs) {
        out.push_back({text, back, 4.5, "text on " + name});
        out.push_back({quietText, back, 4.5, "quiet text on " + name});
        out.push_back({meets, back, 4.5, "meets on " + name});
        out.push_back({close, back, 4.5, "close on " + name});
        out.push_back({misses, back, 4.5, "misses on " + name});
        out.push_back({unknown, back, 4.5, "unknown on " + name});
        out.push_back({focus, back, 3, "focus ring on " + name});
        out.push_back({strongBorder, back, 3, "border of a field on " + name});
    }
    out.push_back({accentText, accent, 4.5, "words on the next action"});
    out.push_back({accent, window, 3, "next action on window"});
    out.push_back({accent, surface, 3, "slider's handle on surface"});
    return out;
}

double contrast(const QColor& a, const QColor& b) {
    const double la = luminance(a), lb = luminance(b);
    return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

void applyTheme(QApplication& application, Brightness brightness, double pointScale) {
    static const double systemPoints = application.font().pointSizeF();
    static const bool systemDark = application.palette().color(QPalette::Window).lightness() < 110;
    const bool dark = brightness == Brightness::dark || (brightness == Brightness::asSystem && systemDark);
    chosen = dark ? &Theme::darkOne() : &Theme::light();
    const Theme& t = *chosen;
    application.setStyle(new OwnStyle);   // the application owns it
    QFont font = application.font();
    font.setPointSizeF(systemPoints * pointScale);
    application.setFont(font);
    QPalette p;
    p.setColor(QPalette::Window, t.window);
    p.setColor(QPalette::WindowText, t.text);
    p.setColor(QPalette::Base, t.surface);
    p.setColor(QPalette::AlternateBase, t.window);
    p.setColor(QPalette::Text, t.text);
    p.setColor(QPalette::PlaceholderText, t.quietText);
    p.setColor(QPalette::Button, t.surface);
    p.setColor(QPalette::ButtonText, t.text);
    p.setColor(QPalette::BrightText, t.misses);
    p.setColor(QPalette::Highlight, t.raised);
    p.setColor(QPalette::HighlightedText, t.text);
    p.setColor(QPalette::ToolTipBase, t.surface);
    p.setColor(QPalette::ToolTipText, t.text);
    p.setColor(QPalette::Link, t.accent);
    p.setColor(QPalette::Light, t.surface);
    p.setColor(QPalette::Midlight, t.border);
    p.setColor(QPalette::Mid, t.border);
    p.setColor(QPalette::Dark, t.strongBorder);
    p.setColor(QPalette::Shadow, t.strongBorder);
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText}) p.setColor(QPalette::Disabled, role, t.quietText);
    application.setPalette(p);
    application.setStyleSheet(styleSheet(t));
}

}  // namespace hither
