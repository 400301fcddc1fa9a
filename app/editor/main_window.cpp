#include "app/editor/main_window.h"

#include <QApplication>
#include <QCloseEvent>
#include <QDragEnterEvent>
#include <QFileDialog>
#include <QFileInfo>
#include <QLabel>
#include <QMenuBar>
#include <QMessageBox>
#include <QMimeData>
#include <QScrollArea>
#include <QSplitter>
#include <QStackedWidget>
#include <QStatusBar>
#include <QVBoxLayout>

#include "app/editor/job_rail.h"
#include "app/panels/build_panel.h"
#include "app/panels/check_panel.h"
#include "app/panels/finding_list.h"
#include "app/panels/hand_over_panel.h"
#include "app/panels/person_panel.h"
#include "app/panels/setup_tree.h"
#include "app/panels/site_panel.h"
#include "app/panels/support_panel.h"
#include "app/scene/scene.h"

namespace hither {

struct MainWindow::Parts {
    std::shared_ptr<const Shipped> shipped;
    ActionTable actions;
    Document document;
    ViewState view;
    Analysis analysis;
    EditorContext context;

    Parts(std::shared_ptr<const Shipped> data, const QString& dataFolder)
        : shipped(std::move(data)), document(dataFolder.isEmpty() ? QString() : dataFolder + "/unsaved", std::shared_ptr<const Catalogue>(shipped, &shipped->catalogue)), view(document),
          analysis(document, view, shipped), context{document, view, analysis, actions, shipped} {}
};

namespace {

QWidget* scrolled(QWidget* inside) {
    auto* area = new QScrollArea;
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAsNeeded);
    area->setFocusPolicy(Qt::NoFocus);
    area->setWidget(inside);
    return area;
}

const char* const planFilter = QT_TRANSLATE_NOOP("hither::MainWindow", "Plans (*.hither *.json)");

}  // namespace

MainWindow::MainWindow(std::shared_ptr<const Shipped> shipped, const QString& dataFolder, QWidget* parent)
    : QMainWindow(parent), parts_(std::make_unique<Parts>(std::move(shipped), dataFolder)) {
    setAcceptDrops(true);
    setObjectName("main");
    const EditorContext& context = parts_->context;
    addFileActions();
    addEditActions();
    addViewActions();

    auto* middle = new QWidget(this);
    auto* column = new QVBoxLayout(middle);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(new JobRail(context, middle));

    auto* across = new QSplitter(Qt::Horizontal, middle);
    steps_ = new QStackedWidget(across);
    steps_->addWidget(scrolled(new SupportPanel(context)));
    steps_->addWidget(scrolled(new PersonPanel(context)));
    steps_->addWidget(scrolled(new SitePanel(context)));
    steps_->addWidget(scrolled(new BuildPanel(context)));
    steps_->addWidget(scrolled(new CheckPanel(context)));
    steps_->addWidget(scrolled(new HandOverPanel(context)));
    across->addWidget(steps_);
    scene_ = new Scene(context, across);
    across->addWidget(scene_);
    auto* right = new QSplitter(Qt::Vertical, across);
    right->addWidget(new SetupTree(context, right));
    right->addWidget(new FindingList(context, right));
    right->setStretchFactor(0, 2);
    right->setStretchFactor(1, 3);
    across->addWidget(right);
    across->setStretchFactor(0, 0);
    across->setStretchFactor(1, 1);
    across->setStretchFactor(2, 0);
    across->setSizes({340, 620, 320});
    across->setChildrenCollapsible(false);
    column->addWidget(across, 1);
    setCentralWidget(middle);

    saying_ = new QLabel(this);
    statusBar()->addWidget(saying_, 1);
    connect(scene_, &Scene::saying, saying_, &QLabel::setText);
    connect(&parts_->document, &Document::refused, saying_, &QLabel::setText);
    connect(&parts_->view, &ViewState::stepChanged, this, [this] { steps_->setCurrentIndex(static_cast<int>(parts_->view.step())); });
    connect(&parts_->document, &Document::historyChanged, this, [this] { parts_->actions.refresh(); refreshTitle(); });
    connect(&parts_->document, &Document::fileChanged, this, [this] { parts_->actions.refresh(); refreshTitle(); });
    makeMenus();
    parts_->actions.refresh();
    refreshTitle();
    resize(1280, 800);
}

MainWindow::~MainWindow() {
    // Panels and scene refer to what `parts_` holds: they go first.
    delete takeCentralWidget();
}

Document& MainWindow::document() { return parts_->document; }
ViewState& MainWindow::view() { return parts_->view; }
Analysis& MainWindow::analysis() { return parts_->analysis; }
ActionTable& MainWindow::actions() { return parts_->actions; }

void MainWindow::addFileActions() {
    ActionTable& table = parts_->actions;
    table.add({"file.open", "file", tr("Open a plan …"), tr("Opens a plan file or its JSON form"), QKeySequence::Open, [this] {
        const QString path = QFileDialog::getOpenFileName(this, tr("Open a plan"), {}, tr(planFilter));
        if (!path.isEmpty()) openPlan(path);
    }, {}, {}, {}});
    table.add({"file.save", "file", tr("Save"), tr("Saves the plan in its file"), QKeySequence::Save, [this] { save(); }, {}, {}, {}});
    table.add({"file.save_as", "file", tr("Save in another file …"), tr("Saves the plan under another name"), QKeySequence::SaveAs, [this] { saveAs(); }, {}, {}, {}});
    table.add({"file.leave", "file", tr("Leave"), tr("Closes the window"), QKeySequence::Quit, [this] { close(); }, {}, {}, {}});
}

void MainWindow::addEditActions() {
    Document& d = parts_->document;
    parts_->actions.add({"edit.undo", "edit", tr("Undo"), tr("Takes the last step back"), QKeySequence::Undo, [&d] { d.undo(); }, [&d] { return d.canUndo(); },
                         [&d] { return d.canUndo() ? tr("Undo: %1").arg(d.undoLabel()) : tr("Undo"); }, {}});
    parts_->actions.add({"edit.redo", "edit", tr("Redo"), tr("Makes the step again that was taken back"), QKeySequence("Ctrl+Shift+Z"), [&d] { d.redo(); }, [&d] { return d.canRedo(); },
                         [&d] { return d.canRedo() ? tr("Redo: %1").arg(d.redoLabel()) : tr("Redo"); }, {}});
}

void MainWindow::addViewActions() {
    ViewState& v = parts_->view;
    for (int i = 0; i < jobSteps; ++i) {
        const auto step = static_cast<JobStep>(i);
        parts_->actions.add({QString("step.%1").arg(i + 1), "step", tr("Go to step %1: %2").arg(i + 1).arg(stepName(step)), tr("Shows this step's form"),
                             QKeySequence(QString("Ctrl+%1").arg(i + 1)), [&v, step] { v.setStep(step); }, {}, {}, {}});
    }
}

void MainWindow::makeMenus() {
    const std::vector<std::pair<QString, QString>> groups = {{"file", tr("Plan")}, {"edit", tr("Change")}, {"step", tr("Step")}, {"build", tr("Mount")}, {"view", tr("View")}, {"help", tr("Help")}};
    for (const auto& [group, words] : groups) {
        QMenu* menu = nullptr;
        for (const ActionEntry& e : parts_->actions.entries()) {
            if (e.group != group) continue;
            if (!menu) menu = menuBar()->addMenu(words);
            menu->addAction(parts_->actions.action(e.id));
        }
    }
}

void MainWindow::refreshTitle() {
    const Document& d = parts_->document;
    setWindowTitle(tr("%1[*] – Hither").arg(d.shownName()) + (d.readOnly() ? tr(" (read only)") : QString()));
    setWindowModified(d.modified());
    setWindowFilePath(d.path());
}

bool MainWindow::mayLeavePlan() {
    if (!parts_->document.modified()) return true;
    const auto answer = QMessageBox::question(this, tr("Changes not saved"), tr("Save the changes to “%1” first?").arg(parts_->document.shownName()),
                                              QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel, QMessageBox::Save);
    return answer == QMessageBox::Discard || (answer == QMessageBox::Save && save());
}

bool MainWindow::save() {
    if (parts_->document.path().isEmpty()) return saveAs();
    const QString why = parts_->document.save();
    if (!why.isEmpty()) QMessageBox::warning(this, tr("Not saved"), why);
    return why.isEmpty();
}

bool MainWindow::saveAs() {
    QString path = QFileDialog::getSaveFileName(this, tr("Save the plan"), {}, tr("Plans (*.hither)"));
    if (path.isEmpty()) return false;
    if (QFileInfo(path).suffix().isEmpty()) path += ".hither";
    const QString why = parts_->document.saveAs(path);
    if (!why.isEmpty()) QMessageBox::warning(this, tr("Not saved"), why);
    return why.isEmpty();
}

bool MainWindow::openPlan(const QString& path) {
    if (!mayLeavePlan()) return false;
    const Document::Opened opened = parts_->document.open(path);
    if (opened.how == Document::Opened::How::opened) return true;
    QMessageBox::warning(this, tr("Not opened"), opened.words);
    return false;
}

void MainWindow::startFresh() {}

void MainWindow::closeEvent(QCloseEvent* event) {
    if (mayLeavePlan()) event->accept();
    else event->ignore();
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
    const auto urls = event->mimeData()->urls();
    if (urls.size() == 1 && urls.front().isLocalFile()) event->acceptProposedAction();
}

void MainWindow::dropEvent(QDropEvent* event) {
    event->acceptProposedAction();
    openPlan(event->mimeData()->urls().front().toLocalFile());
}

}  // namespace hither
