#pragma once
#include <QApplication>
#include <QColor>
#include <QString>
#include <utility>
#include <vector>

#include "core/checks/finding.h"

namespace hither {

/// The colours of the window, light or dark. Text on what it stands on keeps 4.5 : 1, marks and borders
/// that mean something 3 : 1 (a test computes every pair of `pairs`).
struct Theme {
    bool dark = false;
    QColor window, surface, raised;              ///< behind panels; of fields and lists; of the picked row
    QColor text, quietText;                      ///< on window, surface and raised
    QColor border, strongBorder;                 ///< between things; round what can be typed in or pressed
    QColor accent, accentText;                   ///< the next action's button and the words on it
    QColor focus;                                ///< ring round what has the keyboard
    QColor meets, close, misses, unknown;        ///< verdict marks and words, on window, surface and raised

    QColor of(Verdict verdict) const;

    /// Pairs that must keep a contrast: foreground, background, least ratio, and what they are.
    struct Pair { QColor front, back; double least; QString what; };
    std::vector<Pair> pairs() const;

    static const Theme& light();
    static const Theme& darkOne();
    static const Theme& current();
};
/// Contrast ratio of two opaque colours (WCAG 2.1, 1.4.3).
double contrast(const QColor& a, const QColor& b);

enum class Brightness { asSystem, light, dark };
/// Palette, style and style sheet of the whole program. `pointScale` multiplies the system's font size.
void applyTheme(QApplication& application, Brightness brightness, double pointScale = 1);

}  // namespace hither
