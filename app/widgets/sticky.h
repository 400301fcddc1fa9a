#pragma once
#include <QPointer>
#include <QWidget>

class QScrollArea;

namespace hither {

/// Keeps a widget in sight while the form that it belongs to is scrolled: it lies in its place, or at the
/// top of what is seen when its place has gone up out of sight. A field that gets the focus under it is
/// scrolled out from below it.
class Sticky : public QWidget {
    Q_OBJECT

public:
    /// Takes over `inside`, which must have a height for its width.
    explicit Sticky(QWidget* inside, QWidget* parent = nullptr);
    ~Sticky() override;

    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    bool event(QEvent* event) override;
    void moveEvent(QMoveEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;

private:
    void follow();
    void clear(QWidget* focus);

    QPointer<QWidget> inside_;
    QPointer<QScrollArea> area_;
};

}  // namespace hither
