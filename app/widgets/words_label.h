#pragma once
#include <QLabel>
#include <QString>

namespace hither {

/// Words that wrap at the width there is. `quiet`: in the colour of what is beside the point.
QLabel* wordsLabel(const QString& text, bool quiet = false, QWidget* parent = nullptr);

/// The heading of a part of a form; screen readers call it a heading.
class SectionHeading : public QLabel {
    Q_OBJECT

public:
    explicit SectionHeading(const QString& text, QWidget* parent = nullptr);

protected:
    void changeEvent(QEvent* event) override;

private:
    void embolden();
};

}  // namespace hither
