#pragma once
#include <QLabel>

namespace hither {

/// Words with links that are followed by mouse or keyboard, in the theme's colour also after it changed: the
/// colour of a link is fixed when its text is set.
class LinkLabel : public QLabel {
    Q_OBJECT

public:
    explicit LinkLabel(QWidget* parent = nullptr);

protected:
    void changeEvent(QEvent* event) override;
};

}  // namespace hither
