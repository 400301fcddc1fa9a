#include "app/widgets/style_sheet.h"

namespace hither {
namespace {

const char* const sheet = R"(
QPushButton, QToolButton { background: @surface; color: @text; border: 1px solid @strongBorder; border-radius: 5px; }
QPushButton { padding: 4px 11px; min-height: 18px; }
QToolButton { padding: 3px 6px; min-height: 18px; min-width: 14px; }
QPushButton:hover, QToolButton:hover { background: @raised; }
QPushButton:pressed, QToolButton:pressed, QPushButton:checked, QToolButton:checked { background: @raised; border-color: @accent; }
QPushButton:disabled, QToolButton:disabled { color: @quietText; border-color: @border; background: @window; }
QPushButton:focus { border: 2px solid @focus; padding: 3px 10px; }
QToolButton:focus { border: 2px solid @focus; padding: 2px 5px; }
QPushButton[primary="true"] { background: @accent; color: @accentText; border-color: @accent; font-weight: 600; padding: 6px 13px; }
QPushButton[primary="true"]:hover { background: @accentHover; }
QPushButton[primary="true"]:focus { background: @surface; color: @text; border: 2px solid @focus; padding: 5px 12px; }
QPushButton[primary="true"]:disabled { background: @window; color: @quietText; border-color: @border; }
QToolButton[autoRaise="true"], QPushButton[plain="true"], QToolButton[plain="true"] { background: transparent; border-color: transparent; }
QToolButton[autoRaise="true"]:hover, QPushButton[plain="true"]:hover, QToolButton[plain="true"]:hover { background: @raised; }
QToolButton[autoRaise="true"]:checked { background: @raised; border-color: @accent; }
QToolButton[autoRaise="true"]:focus, QPushButton[plain="true"]:focus, QToolButton[plain="true"]:focus { border: 2px solid @focus; }
QLineEdit, QPlainTextEdit, QTextEdit, QAbstractSpinBox { background: @surface; border: 1px solid @strongBorder; border-radius: 4px; selection-background-color: @accent; selection-color: @accentText; }
QLineEdit { padding: 3px 5px; min-height: 18px; }
QLineEdit:focus { border: 2px solid @focus; padding: 2px 4px; }
QPlainTextEdit:focus, QTextEdit:focus, QAbstractSpinBox:focus { border: 2px solid @focus; }
QLineEdit[refused="true"] { border: 2px solid @misses; padding: 2px 4px; }
QLineEdit:disabled, QLineEdit:read-only { background: @window; border-color: @border; }
QComboBox QLineEdit, QAbstractSpinBox QLineEdit, QAbstractItemView QLineEdit { border: none; padding: 0px; background: transparent; }
QAbstractItemView { background: @surface; color: @text; border: 1px solid @border; border-radius: 4px; outline: none; selection-background-color: @raised; selection-color: @text; }
QAbstractItemView:focus { border: 2px solid @focus; }
QAbstractItemView::item:selected { background: @raised; color: @text; }
QComboBox QAbstractItemView { border: 1px solid @strongBorder; }
QHeaderView::section { background: @window; color: @quietText; border: none; border-bottom: 1px solid @border; padding: 3px 5px; }
QCheckBox, QRadioButton { border: 2px solid transparent; border-radius: 4px; padding: 2px; min-height: 18px; spacing: 7px; }
QCheckBox:focus, QRadioButton:focus { border-color: @focus; }
QSlider { min-height: 26px; border: 2px solid transparent; border-radius: 6px; }
QSlider:focus { border-color: @focus; }
QSlider::groove:horizontal { height: 4px; background: @strongBorder; border-radius: 2px; margin: 0px 2px; }
QSlider::handle:horizontal { width: 18px; height: 18px; margin: -8px 0px; border-radius: 9px; background: @accent; border: 1px solid @accent; }
QSlider::handle:horizontal:disabled { background: @strongBorder; border-color: @strongBorder; }
QGroupBox { border: 1px solid @border; border-radius: 6px; margin-top: 0.9em; padding: 8px 6px 6px 6px; }
QGroupBox::title { subcontrol-origin: margin; left: 8px; padding: 0px 4px; color: @text; }
QToolTip { background: @surface; color: @text; border: 1px solid @strongBorder; padding: 4px; }
QLabel#refusal { background: @surface; color: @text; border: 2px solid @misses; border-radius: 5px; padding: 4px 6px; }
QLabel[quiet="true"] { color: @quietText; }
QLabel[chip="true"] { color: @quietText; border: 1px solid @border; border-radius: 7px; padding: 0px 5px; }
QLabel[chip="true"][strong="true"] { color: @text; border-color: @strongBorder; }
)";

}  // namespace

QString styleSheet(const Theme& theme) {
    QString text = QString::fromLatin1(sheet);
    const QColor accentHover = theme.dark ? theme.accent.lighter(108) : theme.accent.lighter(118);
    // Longer names first: "@strongBorder" before "@border" would do, but "@accentText" begins like "@accent".
    const std::pair<const char*, QColor> colours[] = {{"@accentText", theme.accentText}, {"@accentHover", accentHover}, {"@accent", theme.accent}, {"@strongBorder", theme.strongBorder},
                                                      {"@border", theme.border}, {"@surface", theme.surface}, {"@raised", theme.raised}, {"@window", theme.window}, {"@quietText", theme.quietText},
                                                      {"@text", theme.text}, {"@focus", theme.focus}, {"@misses", theme.misses}};
    for (const auto& [name, colour] : colours) text.replace(QLatin1String(name), colour.name());
    return text;
}

}  // namespace hither
