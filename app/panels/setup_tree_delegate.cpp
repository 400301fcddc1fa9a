#include "app/panels/setup_tree_delegate.h"

#include <algorithm>

#include <QKeyEvent>
#include <QPainter>
#include <QTimer>

#include "app/panels/setup_tree.h"
#include "app/widgets/theme.h"

namespace hither {
namespace {

constexpr int leastTarget = 24;   // px, the least a pointer target may be (WCAG 2.2, 2.5.8)

}  // namespace

SetupTreeDelegate::SetupTreeDelegate(SetupTree* tree) : QStyledItemDelegate(tree), tree_(tree) {}

QSize SetupTreeDelegate::sizeHint(const QStyleOptionViewItem&, const QModelIndex& index) const {
    const QTreeWidget* view = tree_->tree();
    int depth = 1;
    for (QModelIndex up = index.parent(); up.isValid(); up = up.parent()) ++depth;
    QFont font = view->font();
    font.setBold(depth == 1);
    const QFontMetrics metrics(font);
    const int space = std::max(3, metrics.height() / 5);
    const int width = std::max(2 * space + 1, view->columnWidth(0) - depth * view->indentation());
    const int height = metrics.boundingRect(QRect(0, 0, width - 2 * space, 100000), Qt::TextWordWrap, index.data().toString()).height();
    return {width, std::max(leastTarget, height + 2 * space)};
}

void SetupTreeDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const Theme& theme = Theme::current();
    const QTreeWidget* view = tree_->tree();
    const bool picked = option.state & QStyle::State_Selected;
    const int space = std::max(3, QFontMetrics(view->font()).height() / 5);
    painter->save();
    painter->fillRect(option.rect, picked ? theme.raised : theme.surface);
    if (picked) painter->fillRect(QRect(option.rect.topLeft(), QSize(3, option.rect.height())), theme.accent);
    QFont font = view->font();
    font.setBold(!index.parent().isValid());
    painter->setFont(font);
    painter->setPen(theme.text);
    painter->drawText(option.rect.adjusted(space + 2, 0, -space + 2, 0), Qt::AlignVCenter | Qt::TextWordWrap, index.data().toString());
    if (picked && view->hasFocus()) {
        painter->setPen(QPen(theme.focus, 2));
        painter->drawRect(option.rect.adjusted(1, 1, -1, -1));
    }
    painter->restore();
}

QWidget* SetupTreeDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&, const QModelIndex& index) const {
    const SetupRow* row = tree_->rowOf(static_cast<QTreeWidgetItem*>(index.internalPointer()));
    if (!row || !row->dial) return nullptr;
    const SetupRow of = *row;
    auto* field = new NumberField(of.dial->of, parent);
    field->setAccessibleName(of.setting.title == of.dial->name ? of.dial->name : tr("%1, %2").arg(of.setting.title, of.dial->name));
    if (of.dial->fullTurn) field->setRange(-2 * pi, 2 * pi);
    else field->setRange(of.dial->min, of.dial->max);
    if (of.dial->step) field->setStep(*of.dial->step);
    connect(field, &NumberField::tried, tree_, [tree = tree_, of](double value) { tree->tryValue(of, value); });
    connect(field, &NumberField::committed, tree_, [tree = tree_, of](std::optional<double> value) { if (value) tree->setValue(of, *value); });
    connect(field, &NumberField::abandoned, tree_, [tree = tree_] { tree->leaveValue(); });
    return field;
}

void SetupTreeDelegate::setEditorData(QWidget* editor, const QModelIndex& index) const {
    const SetupRow* row = tree_->rowOf(static_cast<QTreeWidgetItem*>(index.internalPointer()));
    auto* field = static_cast<NumberField*>(editor);
    if (!row || !row->dial) return;
    field->setUnits(tree_->units());
    field->setValue(row->dial->value);
    if (!field->isModified()) field->selectAll();
}

void SetupTreeDelegate::updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option, const QModelIndex&) const {
    const QSize wanted = editor->sizeHint();
    const int width = std::min(option.rect.width(), std::max(wanted.width(), option.rect.width() / 2));
    const int height = std::max(option.rect.height(), wanted.height());
    editor->setGeometry(option.rect.right() + 1 - width, option.rect.center().y() - height / 2, width, height);
}

bool SetupTreeDelegate::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::KeyPress) {
        auto* field = static_cast<NumberField*>(watched);
        const int key = static_cast<QKeyEvent*>(event)->key();
        // The field itself takes Enter and Esc: a number that is refused stays open with the reason below it.
        if (key == Qt::Key_Return || key == Qt::Key_Enter) {
            if (!field->complaint().isEmpty()) return false;
            QTimer::singleShot(0, field, [this, field] { emit closeEditor(field); });
            return false;
        }
        if (key == Qt::Key_Escape) {
            QTimer::singleShot(0, field, [this, field] { emit closeEditor(field); });
            return false;
        }
        if (key != Qt::Key_Tab && key != Qt::Key_Backtab) return false;
    }
    return QStyledItemDelegate::eventFilter(watched, event);
}

}  // namespace hither
