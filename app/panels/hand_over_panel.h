#pragma once
#include <QWidget>

#include "app/actions/editor_context.h"

class QLabel;

namespace hither {

class HandOverParts;

/// The Hand over step: what the plan says about itself, the parts list, saving and exporting, and the
/// cautions to read before anything is handed over.
class HandOverPanel : public QWidget {
    Q_OBJECT

public:
    explicit HandOverPanel(const EditorContext& context, QWidget* parent = nullptr);

    HandOverParts& parts() { return *parts_; }
    /// Saves the plan's JSON form. Empty when saved, otherwise why not.
    QString exportPlan(const QString& path) const;

private:
    void refreshSaved();
    void exportPlanAs();

    EditorContext context_;
    HandOverParts* parts_;
    QLabel *saved_, *said_;
};

}  // namespace hither
