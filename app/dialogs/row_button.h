#pragma once
#include <QAbstractButton>

namespace hither {

/// A large row to press: a name, below it a quieter line, wrapped so that nothing is cut; a mark at the right
/// says that it leads on. Up and down go to the next row in the same parent.
class RowButton : public QAbstractButton {
    Q_OBJECT

public:
    RowButton(const QString& name, const QString& more, QWidget* parent);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;

private:
    int pad() const { return fontMetrics().height() / 2; }
    int textWidth(int width) const;
    QString more_;
};

}  // namespace hither
