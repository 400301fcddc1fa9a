#pragma once
#include <array>

#include <QWidget>

#include "app/actions/editor_context.h"
#include "app/analysis/job_status.h"

class QAbstractButton;

namespace hither {

/// The steps of the job in a row across the window: each a button with its number, its name and what
/// is there or still missing.
class JobRail : public QWidget {
    Q_OBJECT

public:
    explicit JobRail(const EditorContext& context, QWidget* parent = nullptr);

private:
    void refresh();
    EditorContext context_;
    std::array<QAbstractButton*, jobSteps> buttons_{};
};

}  // namespace hither
