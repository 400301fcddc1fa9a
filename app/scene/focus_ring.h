#pragma once
#include <QWidget>

namespace hither {

/// Room that a view leaves at its border for the ring that says it has the keyboard, pixels.
constexpr int focusRingWidth = 3;
/// The ring round a widget that has the keyboard, a quiet border otherwise.
void paintFocusRing(QWidget& widget);
/// Keys that mean something in a view; the others go on to the window.
bool takesKey(int key);

}  // namespace hither
