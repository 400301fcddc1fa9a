#pragma once
#include <QAbstractButton>

#include "app/analysis/job_status.h"

namespace hither {

/// One step of the job rail: a number in a shape that says its state (open ring: missing; half: needs
/// a look; full with a tick: done), its name, and a line of words below.
class StepButton : public QAbstractButton {
    Q_OBJECT

public:
    StepButton(int number, const QString& name, QWidget* parent = nullptr);
    void setStatus(const StepStatus& status);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    int number_;
    StepStatus status_;
};

}  // namespace hither
