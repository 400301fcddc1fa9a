#include "givens_checks.h"

#include <catch2/catch.hpp>

#include <algorithm>

#include <QAbstractButton>
#include <QAccessible>
#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QTest>

namespace hither {
namespace {

std::string called(const QWidget& w) { return std::string(w.metaObject()->className()) + " \"" + w.objectName().toStdString() + "\" " + w.accessibleName().toStdString(); }

bool tabStop(const QWidget& w, const QWidget& panel) { return (w.focusPolicy() & Qt::TabFocus) && w.isVisibleTo(&panel) && w.isEnabled() && !w.focusProxy(); }

}  // namespace

void checkNames(const QWidget& panel) {
    int controls = 0;
    for (QWidget* w : panel.findChildren<QWidget*>()) {
        if (!(w->focusPolicy() & Qt::TabFocus) || w->objectName().startsWith("qt_")) continue;
        if (w->window() != panel.window()) continue;   // the list that a choice drops down
        QAccessibleInterface* said = QAccessible::queryAccessibleInterface(w);
        INFO(called(*w));
        REQUIRE(said);
        const bool anchor = w->metaObject() == &QWidget::staticMetaObject && w->isHidden();
        if (anchor) continue;
        ++controls;
        CHECK_FALSE(said->text(QAccessible::Name).trimmed().isEmpty());
    }
    CHECK(controls > 0);
}

void checkTabs(QWidget& panel) {
    std::vector<QWidget*> wanted;
    for (QWidget* w : panel.findChildren<QWidget*>())
        if (tabStop(*w, panel)) wanted.push_back(w);
    REQUIRE_FALSE(wanted.empty());
    const auto top = [&](QWidget* w) { return w->mapTo(&panel, QPoint(0, 0)).y(); };
    QWidget* first = *std::min_element(wanted.begin(), wanted.end(), [&](QWidget* a, QWidget* b) { return top(a) < top(b); });
    first->setFocus(Qt::TabFocusReason);
    std::vector<QWidget*> met;
    for (std::size_t i = 0; i < wanted.size() + 3; ++i) {
        QWidget* now = QApplication::focusWidget();
        REQUIRE(now);
        if (!met.empty() && now == met.front()) break;
        if (panel.isAncestorOf(now)) met.push_back(now);
        QTest::keyClick(now, Qt::Key_Tab);
        QApplication::processEvents();
    }
    for (QWidget* w : wanted) {
        INFO(called(*w));
        CHECK(std::count(met.begin(), met.end(), w) == 1);
    }
    for (std::size_t i = 1; i < met.size(); ++i) {
        INFO(called(*met[i - 1]) << " then " << called(*met[i]));
        const QRect a(met[i - 1]->mapTo(&panel, QPoint(0, 0)), met[i - 1]->size());
        CHECK(met[i]->mapTo(&panel, QPoint(0, met[i]->height())).y() > a.top());
    }
}

void checkRoom(const QWidget& panel) {
    int looked = 0;
    for (QWidget* w : panel.findChildren<QWidget*>()) {
        if (!w->isVisibleTo(&panel) || w->objectName() == "refusal") continue;
        INFO(called(*w));
        if (const auto* label = qobject_cast<QLabel*>(w)) {
            if (label->text().isEmpty()) continue;
            INFO(label->text().toStdString());
            ++looked;
            const int needed = label->hasHeightForWidth() ? label->heightForWidth(w->width()) : label->sizeHint().height();
            CHECK(w->height() >= needed);
            if (!label->wordWrap()) CHECK(w->width() >= label->sizeHint().width());
        } else if (const auto* button = qobject_cast<QAbstractButton*>(w)) {
            ++looked;
            CHECK(w->height() >= (button->hasHeightForWidth() ? button->heightForWidth(w->width()) : button->minimumSizeHint().height()));
            CHECK(w->width() >= button->minimumSizeHint().width());
        } else if (qobject_cast<QLineEdit*>(w)) {
            ++looked;
            CHECK(w->height() >= w->minimumSizeHint().height());
            CHECK(w->width() >= w->minimumSizeHint().width());
        } else {
            continue;
        }
        const QRect inPanel(w->mapTo(&panel, QPoint(0, 0)), w->size());
        CHECK(panel.rect().contains(inPanel));
    }
    CHECK(looked > 0);
}

}  // namespace hither
