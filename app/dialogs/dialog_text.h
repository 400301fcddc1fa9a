#pragma once
#include <QFont>
#include <QString>

class QDialog;
class QLabel;
class QPushButton;
class QScrollArea;
class QWidget;

namespace hither {

/// A heading, a paragraph and a quieter paragraph: wrapped, never cut.
QLabel* heading(const QString& words, QWidget* parent);
QLabel* paragraph(const QString& words, QWidget* parent);
QLabel* quietParagraph(const QString& words, QWidget* parent);
QFont boldFont(QFont font, double scale = 1);

/// A path that may be broken after each folder.
QString breakable(const QString& path);
/// "25 November 2026, 09:12" by the computer's clock and language, of a time in UTC; the text itself when
/// it is none.
QString localTime(const QString& utc);
QString shortLocalTime(const QString& utc);

/// Scrolls what does not fit; the inside is as wide as the area.
QScrollArea* scrolling(QWidget* inside, QWidget* parent);
/// Every button in it at least 24 px high and with room round its words.
void roomyButtons(QWidget& inside);
/// The button that most people want next, in the theme's accent.
void markAsNext(QPushButton& button);
/// As high as its contents are at that many letters' width, or what the screen has.
void fitHeight(QDialog& dialog, int letters);
/// So many letters wide and lines high, or what the screen has.
void sizeByText(QDialog& dialog, int letters, int lines);

}  // namespace hither
