#pragma once
#include <QAbstractButton>

namespace hither {

/// A button with a small picture, a name and a few wrapped words about it: one entry of a chooser.
class PictureButton : public QAbstractButton {
    Q_OBJECT

public:
    PictureButton(const QString& name, const QString& about, QWidget* parent = nullptr);

    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    /// Draws the picture into a box.
    virtual void paintPicture(QPainter& painter, const QRectF& box) = 0;
    void paintEvent(QPaintEvent* event) override;
    bool event(QEvent* event) override;

private:
    int pictureSize() const;
    QString about_;
};

}  // namespace hither
