#pragma once
#include <memory>

#include <QMainWindow>

#include "app/actions/editor_context.h"
#include "app/widgets/theme.h"

class QLabel;
class QSplitter;
class QStackedWidget;

namespace hither {

struct EditorParts;
class NoticeBar;
class Scene;

/// The editor's window: the steps of the job across the top; the step's form on the left; the scene in
/// the middle; what is in the setup, and the findings, on the right. Owns everything that works on the plan.
class MainWindow : public QMainWindow {
    Q_OBJECT

public:
    MainWindow(std::shared_ptr<Shipped> shipped, const QString& dataFolder, QWidget* parent = nullptr);
    ~MainWindow() override;

    Document& document();
    ViewState& view();
    Analysis& analysis();
    ActionTable& actions();
    Scene& scene() { return *scene_; }

    /// A plan named on the command line or dropped on the window; asks first when there are changes.
    bool openPlan(const QString& path);
    /// The first start: a sample plan and the next action.
    void startFresh();

protected:
    void showEvent(QShowEvent* event) override;
    void closeEvent(QCloseEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    void addFileActions();
    void addEditActions();
    void addStepActions();
    void addViewActions();
    void addHelpActions();
    QWidget* makeMiddle();
    void makeStepForms();
    void showStartPage();
    void lookAsSet();
    void layOut();
    void begin(const std::string& supportKind);
    void tellOpened(const Document::Opened& opened, const QString& path);
    void offerLeftovers();
    void changeSettings();
    void makeMenus();
    void refreshTitle();
    bool mayLeavePlan();
    bool save();
    bool saveAs();

    std::unique_ptr<EditorParts> parts_;
    Scene* scene_ = nullptr;
    QStackedWidget* steps_ = nullptr;
    QSplitter* across_ = nullptr;
    NoticeBar* notice_ = nullptr;
    QLabel* saying_ = nullptr;
};

}  // namespace hither
