#include "app/dialogs/dialog_text.h"

#include <algorithm>

#include <QDateTime>
#include <QDialog>
#include <QLabel>
#include <QLayout>
#include <QLocale>
#include <QPushButton>
#include <QScreen>
#include <QScrollArea>

#include "app/widgets/theme.h"

namespace hither {

QFont boldFont(QFont font, double scale) {
    font.setBold(true);
    if (font.pointSizeF() > 0) font.setPointSizeF(font.pointSizeF() * scale);
    return font;
}

QLabel* paragraph(const QString& words, QWidget* parent) {
    auto* label = new QLabel(words, parent);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    QSizePolicy policy(QSizePolicy::Ignored, QSizePolicy::Minimum);  // as wide as there is room, then as high as it needs
    policy.setHeightForWidth(true);
    label->setSizePolicy(policy);
    return label;
}

QLabel* heading(const QString& words, QWidget* parent) {
    QLabel* label = paragraph(words, parent);
    label->setFont(boldFont(label->font(), 1.25));
    return label;
}

QLabel* quietParagraph(const QString& words, QWidget* parent) {
    QLabel* label = paragraph(words, parent);
    label->setForegroundRole(QPalette::PlaceholderText);  // the theme's quieter text, and after it has changed too
    return label;
}

QString breakable(const QString& path) { return QString(path).replace("/", QString::fromUtf8("/\u200b")).replace("_", QString::fromUtf8("_\u200b")); }

QString localTime(const QString& utc) {
    const QDateTime time = QDateTime::fromString(utc, Qt::ISODate);
    if (!time.isValid()) return utc;
    const QDateTime local = time.toLocalTime();
    return QLocale().toString(local.date(), QLocale::LongFormat) + ", " + local.time().toString("HH:mm");
}

QString shortLocalTime(const QString& utc) {
    const QDateTime time = QDateTime::fromString(utc, Qt::ISODate);
    if (!time.isValid()) return utc;
    const QDateTime local = time.toLocalTime();
    return QLocale().toString(local.date(), "d MMM yyyy") + ", " + local.time().toString("HH:mm");
}

QScrollArea* scrolling(QWidget* inside, QWidget* parent) {
    auto* area = new QScrollArea(parent);
    area->setFocusPolicy(Qt::NoFocus);  // what is inside takes the keyboard and scrolls into view
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area->setWidget(inside);
    return area;
}

void roomyButtons(QWidget& inside) {
    for (QPushButton* b : inside.findChildren<QPushButton*>()) {
        const QFontMetrics text = b->fontMetrics();
        b->setMinimumSize(text.horizontalAdvance(b->text()) + text.averageCharWidth() * 4, std::max(26, text.height() * 9 / 5));
    }
}

void markAsNext(QPushButton& button) {
    QPalette palette = button.palette();
    palette.setColor(QPalette::Button, Theme::current().accent);
    palette.setColor(QPalette::ButtonText, Theme::current().accentText);
    button.setPalette(palette);
}

void fitHeight(QDialog& dialog, int letters) {
    const QSize room = dialog.screen()->availableGeometry().size() * 0.94;
    const int width = std::min(room.width(), dialog.fontMetrics().averageCharWidth() * letters);
    dialog.resize(width, std::min(room.height(), dialog.layout()->totalHeightForWidth(width)));
}

void sizeByText(QDialog& dialog, int letters, int lines) {
    const QFontMetrics text = dialog.fontMetrics();
    const QSize room = dialog.screen()->availableGeometry().size() * 0.94;
    dialog.resize(QSize(text.averageCharWidth() * letters, text.lineSpacing() * lines).boundedTo(room));
}

}  // namespace hither
