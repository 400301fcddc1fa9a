#pragma once
#include <QToolButton>
#include <QWidget>

class QVBoxLayout;

namespace hither {

/// A part of a form that opens and closes by its heading, which is a button.
class Fold : public QWidget {
    Q_OBJECT

public:
    Fold(const QString& words, bool open, QWidget* parent = nullptr);
    QVBoxLayout* inside() const { return inside_; }
    void setOpen(bool open);
    bool isOpen() const { return button_->isChecked(); }
    void setWords(const QString& words);

private:
    QToolButton* button_;
    QWidget* content_;
    QVBoxLayout* inside_;
};

}  // namespace hither
