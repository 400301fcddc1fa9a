#pragma once
#include <QWidget>

#include "app/widgets/number_field.h"

namespace hither {

/// The two ends of a range of angles, side by side, by numbers.
class RangeField : public QWidget {
    Q_OBJECT

public:
    explicit RangeField(QWidget* parent = nullptr);

    NumberField* least() const { return least_; }
    NumberField* most() const { return most_; }
    /// Names both for screen readers: "Elbow flexion, right, least".
    void setNames(const QString& name);

private:
    NumberField* least_;
    NumberField* most_;
};

}  // namespace hither
