#pragma once
#include <QString>

#include "app/widgets/theme.h"

namespace hither {

/// The program's style sheet in a theme's colours: fields and buttons with a border that is seen and a ring
/// in the focus colour round what has the keyboard. The borders' widths change with the focus, the sizes
/// do not. A button with the property "primary" is the next action; one with "plain" looks like text.
QString styleSheet(const Theme& theme);

}  // namespace hither
