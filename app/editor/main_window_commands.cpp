#include <QActionGroup>
#include <QApplication>
#include <QFileDialog>
#include <QFileInfo>
#include <QMenu>
#include <QMenuBar>
#include <QMessageBox>
#include <QPushButton>
#include <QScrollArea>
#include <QSplitter>
#include <QStackedWidget>

#include "app/dialogs/cautions_dialog.h"
#include "app/dialogs/command_search.h"
#include "app/dialogs/keys_page.h"
#include "app/dialogs/own_part_list.h"
#include "app/dialogs/part_figures_dialog.h"
#include "app/dialogs/start_page.h"
#include "app/analysis/job_status.h"
#include "app/editor/editor_parts.h"
#include "app/editor/main_window.h"
#include "app/editor/notice_bar.h"
#include "app/panels/build_panel.h"
#include "app/panels/check_panel.h"
#include "app/panels/hand_over_panel.h"
#include "app/panels/person_panel.h"
#include "app/panels/site_panel.h"
#include "app/panels/support_panel.h"
#include "app/picture/picture_colours.h"
#include "app/scene/scene.h"
#include "core/plan/edits/about.h"

namespace hither {
namespace {

QWidget* scrolled(QWidget* inside, const QString& name) {
    auto* area = new QScrollArea;
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAsNeeded);
    area->setFocusPolicy(Qt::NoFocus);
    area->setAccessibleName(name);
    area->setWidget(inside);
    area->setFocusProxy(inside);
    return area;
}

/// Hands the keyboard to the first thing in a form that takes it.
void focusFirst(QWidget* form) {
    for (QWidget* w = form->nextInFocusChain(); w != form; w = w->nextInFocusChain()) {
        if (!form->isAncestorOf(w) || !w->isVisibleTo(form) || !w->isEnabled() || !(w->focusPolicy() & Qt::TabFocus)) continue;
        w->setFocus(Qt::TabFocusReason);
        return;
    }
    form->setFocus();
}

}  // namespace

void MainWindow::makeStepForms() {
    const EditorContext& context = parts_->context;
    steps_ = new QStackedWidget(across_);
    auto* build = new BuildPanel(context);
    connect(build, &BuildPanel::partFiguresWanted, this, [this](const QString& part) { PartFiguresDialog(parts_->context, part.toStdString(), {}, this).exec(); });
    const std::vector<QWidget*> forms = {new SupportPanel(context), new PersonPanel(context), new SitePanel(context), build, new CheckPanel(context), new HandOverPanel(context)};
    for (int i = 0; i < jobSteps; ++i) steps_->addWidget(scrolled(forms[static_cast<std::size_t>(i)], stepName(static_cast<JobStep>(i))));
    across_->addWidget(steps_);
}

void MainWindow::showStartPage() {
    while (steps_->count() > jobSteps) {
        QWidget* old = steps_->widget(jobSteps);
        steps_->removeWidget(old);
        old->deleteLater();
    }
    auto* start = new StartPage(parts_->recent.read(), samplePlans(QString::fromStdString(samplesFolder().string())));
    connect(start, &StartPage::newPlan, this, [this](const QString& kind) { begin(kind.toStdString()); });
    connect(start, &StartPage::openPath, this, [this](const QString& path) { openPlan(path); });
    connect(start, &StartPage::browse, parts_->actions.action("file.open"), &QAction::trigger);
    connect(start, &StartPage::openSample, this, [this](const QString& path) {
        if (!mayLeavePlan()) return;
        // A sample is a plan to start from: saving it asks for a file of one's own.
        const Document::Opened opened = parts_->document.openCopy(path);
        if (opened.how != Document::Opened::How::opened) notice_->tell(tr("Not opened: %1").arg(opened.words));
        steps_->setCurrentIndex(static_cast<int>(parts_->view.step()));
        scene_->lookFrom(NamedView::whole);
    });
    steps_->addWidget(start);
    steps_->setCurrentIndex(jobSteps);
    start->setFocus();
}

void MainWindow::addFileActions() {
    ActionTable& table = parts_->actions;
    table.add({"file.new", "file", tr("Start page: new plan, samples, recent plans"), tr("Shows how to begin"), QKeySequence::New, [this] {
        showStartPage();
    }, {}, {}, {}});
    table.add({"file.open", "file", tr("Open a plan …"), tr("Opens a plan file or its JSON form"), QKeySequence::Open, [this] {
        const QString path = QFileDialog::getOpenFileName(this, tr("Open a plan"), {}, tr("Plans (*.hither *.json)"));
        if (!path.isEmpty()) openPlan(path);
    }, {}, {}, {}});
    table.add({"file.save", "file", tr("Save"), tr("Saves the plan in its file"), QKeySequence::Save, [this] { save(); }, [this] { return !parts_->document.readOnly(); }, {}, {}});
    table.add({"file.save_as", "file", tr("Save in another file …"), tr("Saves the plan under another name"), QKeySequence("Ctrl+Shift+S"), [this] { saveAs(); }, {}, {}, {}});
    table.add({"file.own_parts", "file", tr("My own parts …"), tr("Parts that you have added or measured, for every plan"), {}, [this] { OwnPartList(parts_->context, this).exec(); }, {}, {}, {}});
    table.add({"file.leave", "file", tr("Leave"), tr("Closes the window"), QKeySequence("Ctrl+Q"), [this] { close(); }, {}, {}, {}});
}

void MainWindow::addEditActions() {
    Document& d = parts_->document;
    parts_->actions.add({"edit.undo", "edit", tr("Undo"), tr("Takes the last step back"), QKeySequence("Ctrl+Z"), [&d] { d.undo(); }, [&d] { return d.canUndo(); },
                         [&d] { return d.canUndo() ? tr("Undo: %1").arg(d.undoLabel()) : tr("Undo"); }, {}});
    parts_->actions.add({"edit.redo", "edit", tr("Redo"), tr("Makes the step again that was taken back"), QKeySequence("Ctrl+Shift+Z"), [&d] { d.redo(); }, [&d] { return d.canRedo(); },
                         [&d] { return d.canRedo() ? tr("Redo: %1").arg(d.redoLabel()) : tr("Redo"); }, {}});
}

void MainWindow::addStepActions() {
    for (int i = 0; i < jobSteps; ++i) {
        const auto step = static_cast<JobStep>(i);
        parts_->actions.add({QString("step.%1").arg(i + 1), "step", tr("Step %1: %2").arg(i + 1).arg(stepName(step)), tr("Shows this step's form"),
                             QKeySequence(QString("Ctrl+%1").arg(i + 1)), [this, step] {
            parts_->view.setStep(step);
            steps_->setCurrentIndex(static_cast<int>(step));
            focusFirst(steps_->currentWidget());
        }, {}, {}, {}});
    }
}

void MainWindow::addViewActions() {
    ActionTable& table = parts_->actions;
    const auto units = [&](const QString& id, const QString& words, UnitSystem system) {
        table.add({id, "view", words, tr("How this plan's lengths are shown; a typed unit is always understood"), {}, [this, system] {
            parts_->document.apply(tr("Change the units shown"), setDisplay(parts_->document.plan(), system));
            parts_->settings.newPlanUnits = system;
            changeSettings();
        }, {}, {}, [this, system] { return parts_->document.plan().display == system; }});
    };
    units("view.metric", tr("Lengths in millimetres"), UnitSystem::metric);
    units("view.inch", tr("Lengths in inches"), UnitSystem::inch);
    const auto brightness = [&](const QString& id, const QString& words, Brightness wished) {
        table.add({id, "view", words, tr("Colours of the window and the scene"), {}, [this, wished] {
            parts_->settings.brightness = wished;
            changeSettings();
        }, {}, {}, [this, wished] { return parts_->settings.brightness == wished; }});
    };
    brightness("view.as_system", tr("Light or dark as the system"), Brightness::asSystem);
    brightness("view.light", tr("Light"), Brightness::light);
    brightness("view.dark", tr("Dark"), Brightness::dark);
    const auto text = [&](const QString& id, const QString& words, const QKeySequence& keys, int by) {
        table.add({id, "view", words, tr("Size of all text"), keys, [this, by] {
            parts_->settings.textPercent = by == 0 ? 100 : std::clamp(parts_->settings.textPercent + by, 75, 300);
            changeSettings();
        }, {}, {}, {}});
    };
    text("view.larger_text", tr("Larger text"), QKeySequence("Ctrl++"), 25);
    text("view.smaller_text", tr("Smaller text"), QKeySequence("Ctrl+-"), -25);
    text("view.usual_text", tr("Usual text size"), QKeySequence("Ctrl+0"), 0);
}

void MainWindow::addHelpActions() {
    ActionTable& table = parts_->actions;
    table.add({"help.find_command", "help", tr("Find a command …"), tr("Type what you want to do"), QKeySequence("Ctrl+K"), [this] { CommandSearch(parts_->actions, this).exec(); }, {}, {}, {}});
    table.add({"help.keys", "help", tr("Keys"), tr("Every command with its keys"), QKeySequence("F1"), [this] { KeysPage(parts_->actions, this).exec(); }, {}, {}, {}});
    table.add({"help.cautions", "help", tr("Cautions"), tr("What always has to be minded"), {}, [this] { CautionsDialog(this).exec(); }, {}, {}, {}});
}

void MainWindow::makeMenus() {
    const std::vector<std::pair<QString, QString>> groups = {{"file", tr("&Plan")}, {"edit", tr("&Change")}, {"step", tr("&Step")}, {"option", tr("&Option")},
                                                             {"build", tr("&Mount")}, {"check", tr("F&indings")}, {"view", tr("&View")}, {"help", tr("&Help")}};
    for (const auto& [group, words] : groups) {
        QMenu* menu = nullptr;
        for (const ActionEntry& e : parts_->actions.entries()) {
            if (e.group != group) continue;
            if (!menu) menu = menuBar()->addMenu(words);
            menu->addAction(parts_->actions.action(e.id));
        }
    }
}

void MainWindow::changeSettings() {
    const QString why = parts_->settings.write(parts_->dataFolder);
    if (!why.isEmpty()) notice_->tell(tr("The setting could not be kept: %1").arg(why));
    lookAsWished(parts_->settings);
    lookAsSet();
    layOut();
}

void MainWindow::lookAsSet() {
    scene_->setColours(Theme::current().dark ? PictureColours::darkOnes() : PictureColours::light());
}

void MainWindow::layOut() {
    const int em = fontMetrics().averageCharWidth();
    const int left = std::clamp(em * 48, 300, width() * 29 / 100), right = std::clamp(em * 42, 280, width() * 25 / 100);
    across_->setSizes({left, width() - left - right, right});
}

bool MainWindow::save() {
    Document& d = parts_->document;
    if (d.path().isEmpty()) return saveAs();
    const Document::Conflict conflict = d.conflict();
    if (conflict != Document::Conflict::none) {
        QMessageBox ask(QMessageBox::Warning, tr("Somebody else has this plan"),
                        conflict == Document::Conflict::takenOver ? tr("Somebody else has taken over “%1” since you opened it.").arg(QFileInfo(d.path()).fileName())
                                                                  : tr("“%1” has been changed by somebody else since you opened it.").arg(QFileInfo(d.path()).fileName()),
                        QMessageBox::Cancel, this);
        ask.setInformativeText(tr("Saving over it loses what they did, but for the .bak file beside it."));
        const QPushButton* elsewhere = ask.addButton(tr("Save a copy elsewhere …"), QMessageBox::AcceptRole);
        const QPushButton* over = ask.addButton(tr("Save over it"), QMessageBox::DestructiveRole);
        ask.exec();
        if (ask.clickedButton() == elsewhere) return saveAs();
        if (ask.clickedButton() != over) return false;
    }
    const QString why = d.save(conflict == Document::Conflict::none ? Document::Over::ownFileOnly : Document::Over::whateverIsThere);
    if (why.isEmpty()) parts_->recent.add(d.path(), d.shownName());
    else notice_->tell(tr("Not saved: %1").arg(why), {{tr("Save a copy elsewhere …"), [this] { saveAs(); }}});
    return why.isEmpty();
}

bool MainWindow::saveAs() {
    QFileDialog ask(this, tr("Save the plan"));
    ask.setAcceptMode(QFileDialog::AcceptSave);
    ask.setNameFilter(tr("Plans (*.hither)"));
    ask.setDefaultSuffix("hither");
    const QString present = parts_->document.path();
    if (!present.isEmpty()) ask.selectFile(present);
    if (ask.exec() != QDialog::Accepted || ask.selectedFiles().isEmpty()) return false;
    const QString path = ask.selectedFiles().front();
    const QString why = parts_->document.saveAs(path);
    if (why.isEmpty()) parts_->recent.add(path, parts_->document.shownName());
    else notice_->tell(tr("Not saved: %1").arg(why), {{tr("Save a copy elsewhere …"), [this] { saveAs(); }}});
    return why.isEmpty();
}

}  // namespace hither
