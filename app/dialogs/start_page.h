#pragma once
#include <vector>

#include <QScrollArea>

#include "app/document/recent_plans.h"

class QBoxLayout;

namespace hither {

/// A sample plan as the start page offers it.
struct SamplePlan { QString path, title, shows; };
/// The shipped sample plans in name order; one that cannot be read is left out.
std::vector<SamplePlan> samplePlans(const QString& folder);

/// What to do next when there is no plan yet: begin one with what the person sits or lies on, go on with one
/// of late, open a file, look at a sample. Large rows; everything by keyboard.
class StartPage : public QScrollArea {
    Q_OBJECT

public:
    StartPage(const std::vector<RecentPlan>& recent, const std::vector<SamplePlan>& samples, QWidget* parent = nullptr);

signals:
    void newPlan(const QString& supportKind);   ///< one of supportKinds()
    void openPath(const QString& path);
    void openSample(const QString& path);
    void browse();                              ///< choose a file

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    QWidget* beginning();
    QWidget* goingOn(const std::vector<RecentPlan>& recent);
    QWidget* looking(const std::vector<SamplePlan>& samples);

    QBoxLayout* columns_;
};

}  // namespace hither
