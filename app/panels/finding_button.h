#pragma once
#include <QPushButton>

namespace hither {

/// A push button whose words are wrapped to its width: for those that say a whole sentence.
class WrappedButton : public QPushButton {
    Q_OBJECT

public:
    explicit WrappedButton(QWidget* parent = nullptr);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    int heightForWidth(int width) const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    int edge() const;
};

}  // namespace hither
