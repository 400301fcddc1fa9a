#pragma once
#include <QTimer>
#include <QWidget>

#include "app/actions/editor_context.h"
#include "app/panels/finding_model.h"

class QLabel;

namespace hither {

class FindingView;

/// What the checks say of the option in view, worst first, kept up to date while the plan changes. Going
/// to a row shows the finding in the scene and picks what it is about; Enter leads to the Check step.
class FindingList : public QWidget {
    Q_OBJECT

public:
    explicit FindingList(const EditorContext& context, QWidget* parent = nullptr);

protected:
    void changeEvent(QEvent* event) override;

private:
    void addActions();
    void refresh();
    void showOverall();
    void followFinding();
    void noteStale();
    void choose(const QString& finding);
    void step(int by);
    bool anyMissed() const;
    void showMenu(const QPoint& at);

    EditorContext context_;
    FindingModel model_;
    FindingView* view_ = nullptr;
    QLabel* mark_ = nullptr;
    QLabel* overall_ = nullptr;
    QLabel* computing_ = nullptr;
    QTimer stale_;
};

}  // namespace hither
