#pragma once
#include <QLayout>
#include <QList>

namespace hither {

/// Widgets side by side that go on in the next line where the width ends: a row of buttons stays whole
/// with large letters.
class BuildFlow : public QLayout {
    Q_OBJECT

public:
    explicit BuildFlow(QWidget* parent = nullptr);
    ~BuildFlow() override;

    void addItem(QLayoutItem* item) override;
    int count() const override { return static_cast<int>(items_.size()); }
    QLayoutItem* itemAt(int index) const override;
    QLayoutItem* takeAt(int index) override;
    Qt::Orientations expandingDirections() const override { return {}; }
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;
    QSize sizeHint() const override { return minimumSize(); }
    QSize minimumSize() const override;
    void setGeometry(const QRect& rect) override;

private:
    int lay(const QRect& rect, bool place) const;
    QList<QLayoutItem*> items_;
};

}  // namespace hither
