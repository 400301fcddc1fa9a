#include "app/panels/finding_delegate.h"

#include <QAbstractItemView>
#include <QPainter>

#include "app/widgets/theme.h"
#include "app/widgets/verdict_mark.h"

namespace hither {
namespace {

QFont boldFont(QFont font) {
    font.setBold(true);
    return font;
}
int gap(const QFontMetrics& metrics) { return std::max(4, metrics.height() / 4); }

const FindingRow& rowAt(const QModelIndex& index) {
    return static_cast<const FindingModel*>(index.model())->row(index.row());
}

/// The word at the head of a row: its verdict, or that there is none.
QString headWord(const FindingRow& row) { return row.kind == FindingRow::Kind::problem ? row.title : verdictWord(row.verdict); }

}  // namespace

/// Where the pieces of a row go, from its top left corner.
struct FindingDelegate::Laid { QRect mark, verdict, check, text, value, chip, accepted; int height = 0; };

FindingDelegate::FindingDelegate(QAbstractItemView* view) : QStyledItemDelegate(view), view_(view) {}

int FindingDelegate::heightOf(const QString& text, int width, bool bold) const {
    if (text.isEmpty()) return 0;
    const QFont font = bold ? boldFont(view_->font()) : view_->font();
    if (const QString key = view_->font().key(); key != font_ || heights_.size() > 2000) {
        heights_.clear();
        font_ = key;
    }
    int& height = heights_[{text, bold ? -width : width}];
    if (height == 0) height = QFontMetrics(font).boundingRect(QRect(0, 0, width, 100000), Qt::TextWordWrap, text).height();
    return height;
}

FindingDelegate::Laid FindingDelegate::lay(const FindingRow& row, int width) const {
    const QFontMetrics metrics(view_->font()), bold(boldFont(view_->font()));
    const int space = gap(metrics), mark = metrics.ascent() + metrics.descent();
    Laid out;
    int y = space;
    out.mark = QRect(2 * space, y, mark, mark);
    const int x = out.mark.right() + 1 + space, room = std::max(metrics.averageCharWidth() * 6, width - x - 2 * space);
    const int verdictWidth = std::min(room, bold.horizontalAdvance(headWord(row)) + 2);
    out.verdict = QRect(x, y, verdictWidth, heightOf(headWord(row), verdictWidth, true));
    int free = x + verdictWidth + 2 * space, line = y;   // where the head line goes on
    if (row.kind == FindingRow::Kind::finding) {
        const int checkWidth = bold.horizontalAdvance(row.title) + 2;
        if (free + checkWidth <= x + room) {
            out.check = QRect(free, y, checkWidth, bold.height());
        } else {
            line = out.verdict.bottom() + 1;
            out.check = QRect(x, line, room, heightOf(row.title, room, true));
            free = x;
        }
        free += checkWidth + 2 * space;
    }
    y = std::max(out.verdict.bottom(), out.check.bottom()) + 1;
    if (!row.basis.isEmpty()) {
        const int chipWidth = metrics.horizontalAdvance(row.basis) + metrics.height();
        if (free + chipWidth <= x + room) {
            out.chip = QRect(x + room - chipWidth, line, chipWidth, metrics.height());
        } else {
            out.chip = QRect(x, y + space / 2, std::min(chipWidth, room), metrics.height());
            y = out.chip.bottom() + 1;
        }
    }
    out.text = QRect(x, y + space / 2, room, heightOf(row.text, room, false));
    y = out.text.bottom() + 1;
    if (!row.value.isEmpty()) {
        out.value = QRect(x, y + space / 2, room, heightOf(row.value, room, false));
        y = out.value.bottom() + 1;
    }
    if (!row.accepted.isEmpty()) {
        out.accepted = QRect(x, y + space / 2, room, heightOf(row.accepted, room, false));
        y = out.accepted.bottom() + 1;
    }
    out.height = y + space;
    return out;
}

QSize FindingDelegate::sizeHint(const QStyleOptionViewItem&, const QModelIndex& index) const {
    const int width = view_->viewport()->width();
    const FindingRow& row = rowAt(index);
    if (row.kind != FindingRow::Kind::heading) return {width, std::max(24, lay(row, width).height)};
    const QFontMetrics bold(boldFont(view_->font()));
    const int space = gap(bold);
    return {width, std::max(24, heightOf(row.title, width - 2 * bold.height() - 6 * space, true) + 2 * space)};
}

void FindingDelegate::paintHeading(QPainter& painter, const QRect& rect, const FindingRow& row) const {
    const Theme& theme = Theme::current();
    const QFontMetrics bold(boldFont(view_->font()));
    const int space = gap(bold), size = bold.height();
    painter.fillRect(rect, theme.window);
    painter.setPen(theme.border);
    painter.drawLine(rect.topLeft(), rect.topRight());
    painter.setPen(Qt::NoPen);
    painter.setBrush(theme.quietText);
    const QPointF middle(rect.left() + 2 * space + size * 0.35, rect.center().y() + 0.5);
    const double r = size * 0.22;
    if (row.open) painter.drawPolygon(QPolygonF({middle + QPointF(-r, -r * 0.6), middle + QPointF(r, -r * 0.6), middle + QPointF(0, r * 0.8)}));
    else painter.drawPolygon(QPolygonF({middle + QPointF(-r * 0.6, -r), middle + QPointF(r * 0.8, 0), middle + QPointF(-r * 0.6, r)}));
    const int x = rect.left() + 2 * space + size;
    painter.setFont(boldFont(view_->font()));
    painter.setPen(theme.text);
    painter.drawText(QRect(x, rect.top(), rect.right() - x - space, rect.height()), Qt::AlignVCenter | Qt::TextWordWrap, row.title);
}

void FindingDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const FindingRow& row = rowAt(index);
    const Theme& theme = Theme::current();
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const QRect rect = option.rect;
    if (row.kind == FindingRow::Kind::heading) {
        paintHeading(*painter, rect, row);
    } else {
        const bool picked = option.state & QStyle::State_Selected;
        painter->fillRect(rect, picked ? theme.raised : theme.surface);
        const Laid laid = lay(row, rect.width());
        const auto at = [&](const QRect& r) { return r.translated(rect.topLeft()); };
        if (row.kind == FindingRow::Kind::finding) paintVerdict(*painter, at(laid.mark), row.verdict);
        else paintVerdict(*painter, at(laid.mark), Verdict::unknown);
        painter->setFont(boldFont(view_->font()));
        painter->setPen(theme.of(row.verdict));
        painter->drawText(at(laid.verdict), Qt::TextWordWrap, headWord(row));
        painter->setPen(theme.text);
        if (row.kind == FindingRow::Kind::finding) painter->drawText(at(laid.check), Qt::TextWordWrap, row.title);
        painter->setFont(view_->font());
        painter->drawText(at(laid.text), Qt::TextWordWrap, row.text);
        painter->setPen(theme.quietText);
        if (!row.value.isEmpty()) painter->drawText(at(laid.value), Qt::TextWordWrap, row.value);
        if (!row.accepted.isEmpty()) painter->drawText(at(laid.accepted), Qt::TextWordWrap, row.accepted);
        if (!row.basis.isEmpty()) {
            painter->drawText(at(laid.chip), Qt::AlignCenter, row.basis);
            painter->setBrush(Qt::NoBrush);
            painter->setPen(theme.strongBorder);
            painter->drawRoundedRect(QRectF(at(laid.chip)).adjusted(0.5, 0.5, -0.5, -0.5), laid.chip.height() / 2.0, laid.chip.height() / 2.0);
        }
        if (picked) painter->fillRect(QRect(rect.left(), rect.top(), 4, rect.height()), theme.accent);
        painter->setPen(theme.border);
        painter->drawLine(rect.bottomLeft(), rect.bottomRight());
    }
    if ((option.state & QStyle::State_HasFocus) && view_->hasFocus()) {
        painter->setBrush(Qt::NoBrush);
        painter->setPen(QPen(theme.focus, 2));
        painter->drawRect(QRectF(rect).adjusted(1, 1, -1, -1));
    }
    painter->restore();
}

}  // namespace hither
