#include "app/editor/main_window.h"

#include <QApplication>
#include <QCloseEvent>
#include <QDragEnterEvent>
#include <QFileInfo>
#include <QLabel>
#include <QMessageBox>
#include <QMimeData>
#include <QSplitter>
#include <QStackedWidget>
#include <QStatusBar>
#include <QVBoxLayout>

#include "app/dialogs/locked_dialog.h"
#include "app/dialogs/own_part_store.h"
#include "app/dialogs/recovery_dialog.h"
#include "app/editor/editor_parts.h"
#include "app/editor/job_rail.h"
#include "app/editor/new_plan.h"
#include "app/editor/notice_bar.h"
#include "app/editor/option_bar.h"
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
MainWindow::MainWindow(std::shared_ptr<Shipped> shipped, const QString& dataFolder, QWidget* parent)
    : QMainWindow(parent), parts_(std::make_unique<EditorParts>(std::move(shipped), dataFolder)) {
    setAcceptDrops(true);
    setObjectName("main");
    addFileActions();
    addEditActions();
    addStepActions();
    addHelpActions();
    setCentralWidget(makeMiddle());
    addViewActions();

    saying_ = new QLabel(this);
    saying_->setAccessibleName(tr("What is under the pointer"));
    saying_->setTextFormat(Qt::PlainText);
    statusBar()->addWidget(saying_, 1);
    statusBar()->setSizeGripEnabled(false);
    connect(scene_, &Scene::saying, saying_, &QLabel::setText);
    connect(&parts_->document, &Document::refused, this, [this](const QString& why) { notice_->tell(tr("Not done: %1").arg(why)); });
    connect(&parts_->view, &ViewState::stepChanged, this, [this] { steps_->setCurrentIndex(static_cast<int>(parts_->view.step())); });
    const auto refresh = [this] {
        parts_->actions.refresh();
        refreshTitle();
    };
    connect(&parts_->document, &Document::historyChanged, this, refresh);
    connect(&parts_->document, &Document::fileChanged, this, refresh);
    connect(&parts_->view, &ViewState::pickedChanged, this, [this] { parts_->actions.refresh(); });
    connect(&parts_->view, &ViewState::optionChanged, this, [this] { parts_->actions.refresh(); });
    connect(&parts_->analysis, &Analysis::analysed, this, [this] { if (!parts_->document.inGesture()) parts_->actions.refresh(); });
    connect(&OwnPartsNotice::get(), &OwnPartsNotice::ownPartsChanged, this, [this] {
        const std::vector<std::string> leftOut = readPartsAgain(*parts_->shipped, parts_->retired);
        if (!leftOut.empty()) notice_->tell(tr("Left out: %1").arg(QString::fromStdString(leftOut.front())));
        parts_->analysis.catalogueChanged();
        emit parts_->view.offerForChanged();
    });
    makeMenus();
    resize(1280, 800);
    lookAsSet();
    refresh();
}

MainWindow::~MainWindow() {
    // Panels and scene refer to what `parts_` holds: they go first.
    delete takeCentralWidget();
}

QWidget* MainWindow::makeMiddle() {
    const EditorContext& context = parts_->context;
    auto* middle = new QWidget(this);
    auto* column = new QVBoxLayout(middle);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(new JobRail(context, middle));
    column->addWidget(new OptionBar(context, middle));
    notice_ = new NoticeBar(middle);
    column->addWidget(notice_);

    across_ = new QSplitter(Qt::Horizontal, middle);
    makeStepForms();
    scene_ = new Scene(context, across_);
    across_->addWidget(scene_);
    auto* right = new QSplitter(Qt::Vertical, across_);
    right->addWidget(new SetupTree(context, right));
    right->addWidget(new FindingList(context, right));
    right->setStretchFactor(0, 2);
    right->setStretchFactor(1, 3);
    right->setChildrenCollapsible(false);
    across_->addWidget(right);
    across_->setStretchFactor(0, 0);
    across_->setStretchFactor(1, 1);
    across_->setStretchFactor(2, 0);
    across_->setChildrenCollapsible(false);
    column->addWidget(across_, 1);
    return middle;
}

Document& MainWindow::document() { return parts_->document; }
ViewState& MainWindow::view() { return parts_->view; }
Analysis& MainWindow::analysis() { return parts_->analysis; }
ActionTable& MainWindow::actions() { return parts_->actions; }

void MainWindow::refreshTitle() {
    const Document& d = parts_->document;
    setWindowTitle(tr("%1[*] – Hither").arg(d.shownName()) + (d.readOnly() ? tr(" (read only)") : QString()));
    setWindowModified(d.modified());
    setWindowFilePath(d.path());
}

void MainWindow::startFresh() {
    if (!parts_->settings.started) {
        parts_->settings.started = true;
        parts_->settings.write(parts_->dataFolder);
    }
    const QString sample = QString::fromStdString((samplesFolder() / "elbow_switch_on_chair.json").string());
    if (const Document::Opened opened = parts_->document.openCopy(sample); opened.how != Document::Opened::How::opened)
        notice_->tell(tr("The sample plan could not be opened: %1").arg(opened.words));
    showStartPage();
    offerLeftovers();
}

void MainWindow::begin(const std::string& supportKind) {
    if (!mayLeavePlan()) return;
    parts_->document.startWith(newPlan(supportKind, parts_->settings.newPlanUnits, parts_->settings.currency.toStdString()), true);
    parts_->view.pick(Picked::support("support-1"));
    parts_->view.setStep(JobStep::support);
    steps_->setCurrentIndex(0);
    scene_->lookFrom(NamedView::whole);
}

bool MainWindow::openPlan(const QString& path) {
    if (!mayLeavePlan()) return false;
    Document::Opened opened = parts_->document.open(path);
    if (opened.how == Document::Opened::How::lockedByOther && opened.holder) {
        LockedDialog ask(*opened.holder, QFileInfo(path).fileName(), this);
        ask.exec();
        if (ask.choice() == LockedDialog::Choice::readOnly) opened = parts_->document.open(path, Document::Access::readOnly);
        else if (ask.choice() == LockedDialog::Choice::takeOver) opened = parts_->document.open(path, Document::Access::takeOver);
        else return false;
    }
    tellOpened(opened, path);
    return opened.how == Document::Opened::How::opened;
}

void MainWindow::tellOpened(const Document::Opened& opened, const QString& path) {
    if (opened.how != Document::Opened::How::opened) {
        notice_->tell(tr("Not opened: %1").arg(opened.words), {{tr("Open another plan …"), [this] { parts_->actions.action("file.open")->trigger(); }}});
        return;
    }
    parts_->recent.add(QFileInfo(path).absoluteFilePath(), parts_->document.shownName());
    if (!opened.words.isEmpty()) notice_->tell(opened.words);
    else notice_->putAway();
    steps_->setCurrentIndex(static_cast<int>(parts_->view.step()));
    scene_->lookFrom(NamedView::whole);
    offerLeftovers();
}

void MainWindow::offerLeftovers() {
    const std::vector<Leftover> left = parts_->document.leftovers();
    if (left.empty()) return;
    notice_->tell(tr("%n plan(s) were not saved when the program ended.", nullptr, static_cast<int>(left.size())), {{tr("Look at them …"), [this, left] {
        RecoveryDialog ask(left, this);
        ask.exec();
        for (const std::size_t i : ask.discarded()) parts_->document.discardLeftover(left[i]);
        if (!ask.continueWith() || !mayLeavePlan()) return;
        const Document::Opened opened = parts_->document.recover(left[*ask.continueWith()]);
        if (!opened.words.isEmpty()) notice_->tell(opened.words);
        steps_->setCurrentIndex(static_cast<int>(parts_->view.step()));
        scene_->lookFrom(NamedView::whole);
    }}});
}

bool MainWindow::mayLeavePlan() {
    if (!parts_->document.modified()) return true;
    QMessageBox ask(QMessageBox::Question, tr("Changes not saved"), tr("Save the changes to “%1” first?").arg(parts_->document.shownName()),
                    QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel, this);
    ask.setDefaultButton(QMessageBox::Save);
    const int answer = ask.exec();
    if (answer == QMessageBox::Discard) parts_->document.discardUnsaved();
    return answer == QMessageBox::Discard || (answer == QMessageBox::Save && save());
}

void MainWindow::showEvent(QShowEvent* event) {
    QMainWindow::showEvent(event);
    if (!event->spontaneous()) layOut();
}

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
