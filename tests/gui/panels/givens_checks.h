#pragma once
#include <QWidget>

namespace hither {

/// Every control that can have the keyboard has an accessible name.
void checkNames(const QWidget& panel);
/// Tab goes through every visible, enabled control of the panel once, from top to bottom.
void checkTabs(QWidget& panel);
/// Every label, button and field is at least as large as it must be, and inside the panel.
void checkRoom(const QWidget& panel);

}  // namespace hither
