#include "app/editor/option_bar.h"

#include <algorithm>

#include <QHBoxLayout>
#include <QInputDialog>
#include <QMenu>
#include <QTabBar>
#include <QToolButton>

#include "app/widgets/verdict_mark.h"
#include "core/plan/edits/mirror.h"
#include "core/plan/edits/options.h"

namespace hither {
namespace {

QString shown(const PlanOption& option) { return QString::fromStdString(option.name.empty() ? option.id : option.name); }

}  // namespace

OptionBar::OptionBar(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    addActions();
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(8, 0, 8, 2);
    for (const char* id : {"edit.undo", "edit.redo"}) {
        auto* button = new QToolButton(this);
        QAction* action = context_.actions.action(id);
        button->setText(QString(id) == "edit.undo" ? tr("Undo") : tr("Redo"));
        button->setAccessibleName(button->text());
        button->setMinimumHeight(24);
        button->setFocusPolicy(Qt::TabFocus);
        const auto follow = [button, action] {
            button->setEnabled(action->isEnabled());
            button->setToolTip(action->text());
            button->setAccessibleDescription(action->text());
        };
        connect(action, &QAction::changed, button, follow);
        connect(button, &QToolButton::clicked, action, &QAction::trigger);
        follow();
        row->addWidget(button);
    }
    tabs_ = new QTabBar(this);
    tabs_->setAccessibleName(tr("Placement options"));
    tabs_->setExpanding(false);
    tabs_->setDrawBase(false);
    tabs_->setElideMode(Qt::ElideRight);
    tabs_->setUsesScrollButtons(true);
    row->addWidget(tabs_, 1);
    auto* more = new QToolButton(this);
    more->setText(tr("Options"));
    more->setAccessibleName(tr("New, copy, rename, mirror or remove an option"));
    more->setPopupMode(QToolButton::InstantPopup);
    more->setFocusPolicy(Qt::TabFocus);
    more->setMinimumHeight(24);
    auto* menu = new QMenu(more);
    for (const char* id : {"option.new", "option.copy", "option.rename", "option.mirror", "option.remove"}) menu->addAction(context_.actions.action(id));
    more->setMenu(menu);
    row->addWidget(more);
    verdict_ = new VerdictMark(this);
    row->addWidget(verdict_);
    auto* search = new QToolButton(this);
    search->setDefaultAction(context_.actions.action("help.find_command"));
    search->setFocusPolicy(Qt::TabFocus);
    search->setMinimumHeight(24);
    row->addWidget(search);

    connect(tabs_, &QTabBar::currentChanged, this, [this](int index) {
        const auto& options = context_.document.plan().options;
        if (!filling_ && index >= 0 && static_cast<std::size_t>(index) < options.size()) context_.view.setOption(options[static_cast<std::size_t>(index)].id);
    });
    connect(tabs_, &QTabBar::tabBarDoubleClicked, this, [this](int index) { if (index >= 0) context_.actions.action("option.rename")->trigger(); });
    connect(&context_.document, &Document::changed, this, &OptionBar::refreshTabs);
    connect(&context_.view, &ViewState::optionChanged, this, &OptionBar::refreshTabs);
    connect(&context_.view, &ViewState::optionChanged, this, &OptionBar::refreshVerdict);
    connect(&context_.analysis, &Analysis::analysed, this, &OptionBar::refreshVerdict);
    refreshTabs();
    refreshVerdict();
}

void OptionBar::addActions() {
    ActionTable& table = context_.actions;
    const auto any = [this] { return context_.view.planOption() != nullptr && !context_.document.readOnly(); };
    table.add({"option.new", "option", tr("New option"), tr("Begins another proposal, empty"), QKeySequence("Ctrl+Alt+N"), [this] {
        const std::string id = freeOptionId();
        if (context_.document.apply(tr("New option"), addOption(context_.document.plan(), id, freeName().toStdString()))) context_.view.setOption(id);
    }, [this] { return !context_.document.readOnly(); }, {}, {}});
    table.add({"option.copy", "option", tr("Copy this option"), tr("A copy to change, so that both can be compared"), QKeySequence("Ctrl+Alt+C"), [this] {
        const std::string id = freeOptionId();
        if (context_.document.apply(tr("Copy the option"), copyOption(context_.document.plan(), context_.view.option(), id, freeName().toStdString()))) context_.view.setOption(id);
    }, any, {}, {}});
    table.add({"option.rename", "option", tr("Rename this option …"), tr("Gives the option in view another name"), {}, [this] {
        const PlanOption* option = context_.view.planOption();
        if (!option) return;
        const QString name = QInputDialog::getText(window(), tr("Rename the option"), tr("Name:"), QLineEdit::Normal, shown(*option)).trimmed();
        if (!name.isEmpty()) context_.document.apply(tr("Rename the option"), renameOption(context_.document.plan(), context_.view.option(), name.toStdString()));
    }, any, {}, {}});
    table.add({"option.mirror", "option", tr("Mirrored copy, left to right"), tr("The same parts on the other side of the person"), {}, [this] {
        const std::string id = freeOptionId();
        if (context_.document.apply(tr("Mirror the option"), mirrorOption(context_.document.plan(), context_.view.option(), id, tr("%1, mirrored").arg(shown(*context_.view.planOption())).toStdString())))
            context_.view.setOption(id);
    }, any, {}, {}});
    table.add({"option.remove", "option", tr("Remove this option"), tr("With its mounts and keep-free volumes"), {}, [this] {
        context_.document.apply(tr("Remove the option"), removeOption(context_.document.plan(), context_.view.option()));
    }, any, {}, {}});
    const auto turn = [this](int by) {
        const auto& options = context_.document.plan().options;
        const int n = static_cast<int>(options.size());
        if (n > 0) context_.view.setOption(options[static_cast<std::size_t>((context_.view.optionIndex() + by + n) % n)].id);
    };
    const auto several = [this] { return context_.document.plan().options.size() > 1; };
    table.add({"option.next", "option", tr("Next option"), tr("Shows the next option in the same view"), QKeySequence("Ctrl+PgDown"), [turn] { turn(1); }, several, {}, {}});
    table.add({"option.previous", "option", tr("Option before"), tr("Shows the option before in the same view"), QKeySequence("Ctrl+PgUp"), [turn] { turn(-1); }, several, {}, {}});
}

std::string OptionBar::freeOptionId() const {
    const Plan& plan = context_.document.plan();
    for (std::size_t n = plan.options.size() + 1;; ++n)
        if (const std::string id = "option-" + std::to_string(n); !plan.option(id)) return id;
}

QString OptionBar::freeName() const {
    const auto& options = context_.document.plan().options;
    for (int n = 0;; ++n) {
        const QString name = n < 26 ? tr("Option %1").arg(QChar('A' + n)) : tr("Option %1").arg(n + 1);
        if (std::none_of(options.begin(), options.end(), [&](const PlanOption& o) { return shown(o) == name; })) return name;
    }
}

void OptionBar::refreshTabs() {
    filling_ = true;
    const auto& options = context_.document.plan().options;
    const int n = static_cast<int>(options.size());
    while (tabs_->count() > n) tabs_->removeTab(tabs_->count() - 1);
    while (tabs_->count() < n) tabs_->addTab(QString());
    for (int i = 0; i < n; ++i) {
        const QString name = shown(options[static_cast<std::size_t>(i)]);
        if (tabs_->tabText(i) != name) {
            tabs_->setTabText(i, name);
            tabs_->setTabToolTip(i, name);
        }
    }
    if (const int index = context_.view.optionIndex(); index >= 0 && index != tabs_->currentIndex()) tabs_->setCurrentIndex(index);
    filling_ = false;
}

void OptionBar::refreshVerdict() {
    const auto latest = context_.analysis.latest();
    const PlanOption* option = context_.view.planOption();
    const bool there = latest && option && latest->option == option->id && latest->setup && !option->mounts.empty();
    verdict_->setVerdict(there ? std::optional(worst(latest->findings)) : std::nullopt);
}

}  // namespace hither
