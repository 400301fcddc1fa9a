#pragma once
#include <QComboBox>

namespace hither {

/// A choice of a few that the wheel turns only with focus, and that a narrow column may make narrow.
class ChoiceBox : public QComboBox {
    Q_OBJECT

public:
    explicit ChoiceBox(QWidget* parent = nullptr);
    /// Picks the entry with this data; nothing is signalled. None: nothing is picked.
    void setChoice(const QVariant& choice);

protected:
    void wheelEvent(QWheelEvent* event) override;
};

}  // namespace hither
