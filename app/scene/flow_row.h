#pragma once
#include <QLayout>
#include <QList>

namespace hither {

/// Widgets in a row that goes on in a further row where the width ends.
class FlowRow : public QLayout {
    Q_OBJECT

public:
    FlowRow(QWidget* parent, int gap);
    ~FlowRow() override;

    void addItem(QLayoutItem* item) override { items_.append(item); }
    int count() const override { return static_cast<int>(items_.size()); }
    QLayoutItem* itemAt(int index) const override { return items_.value(index); }
    QLayoutItem* takeAt(int index) override { return index >= 0 && index < items_.size() ? items_.takeAt(index) : nullptr; }
    Qt::Orientations expandingDirections() const override { return {}; }
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override { return lay(QRect(0, 0, width, 0), false); }
    void setGeometry(const QRect& rect) override;
    QSize sizeHint() const override;
    QSize minimumSize() const override;

private:
    int lay(const QRect& rect, bool move) const;

    QList<QLayoutItem*> items_;
    int gap_;
};

}  // namespace hither
