#pragma once
#include <QStyledItemDelegate>

namespace hither {

class SetupTree;

/// Lines of the setup tree: as high as their words need at the width there is; numbers are typed in place.
class SetupTreeDelegate : public QStyledItemDelegate {
    Q_OBJECT

public:
    explicit SetupTreeDelegate(SetupTree* tree);
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    void setEditorData(QWidget* editor, const QModelIndex& index) const override;
    void setModelData(QWidget*, QAbstractItemModel*, const QModelIndex&) const override {}
    void updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option, const QModelIndex& index) const override;

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    SetupTree* tree_;
};

}  // namespace hither
