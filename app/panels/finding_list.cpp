#include "app/panels/finding_list.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QMenu>
#include <QVBoxLayout>

#include "app/dialogs/cautions_dialog.h"
#include "app/panels/finding_link.h"
#include "app/panels/finding_remedy.h"
#include "app/panels/finding_view.h"
#include "app/panels/finding_words.h"
#include "app/widgets/theme.h"
#include "app/widgets/verdict_mark.h"
#include "core/remedy/remedy.h"

namespace hither {

FindingList::FindingList(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);

    auto* head = new QWidget(this);
    auto* headColumn = new QVBoxLayout(head);
    auto* overallRow = new QHBoxLayout;
    mark_ = new QLabel(head);
    mark_->setAlignment(Qt::AlignTop);
    overall_ = new QLabel(head);
    overall_->setWordWrap(true);
    overall_->setTextFormat(Qt::PlainText);
    QFont bold;  // its weight alone: the size follows the text size chosen
    bold.setBold(true);
    overall_->setFont(bold);
    overallRow->addWidget(mark_);
    overallRow->addWidget(overall_, 1);
    headColumn->addLayout(overallRow);
    auto* aid = new LinkLabel(head);
    aid->setText(tr("A planning aid only. <a href=\"cautions\">Read the cautions</a>"));
    aid->setAccessibleName(tr("A planning aid only. Read the cautions"));
    connect(aid, &QLabel::linkActivated, this, [this] { CautionsDialog(this).exec(); });
    auto* aidRow = new QHBoxLayout;
    aidRow->addWidget(aid, 1);
    headColumn->addLayout(aidRow);
    computing_ = new QLabel(tr("Computing …"), head);
    QSizePolicy keepsPlace = computing_->sizePolicy();
    keepsPlace.setRetainSizeWhenHidden(true);
    computing_->setSizePolicy(keepsPlace);
    computing_->hide();
    aidRow->addWidget(computing_, 0, Qt::AlignTop);
    column->addWidget(head);

    view_ = new FindingView(model_, this);
    view_->setFrameShape(QFrame::NoFrame);
    view_->setContextMenuPolicy(Qt::CustomContextMenu);
    column->addWidget(view_, 1);
    setMinimumHeight(fontMetrics().height() * 10);
    // Room for a row's head in one line at the usual size; with large letters rows wrap instead.
    setMinimumWidth(280);

    connect(view_, &FindingView::chosen, this, &FindingList::choose);
    connect(view_, &FindingView::entered, this, [this](const QString& id) {
        choose(id);
        context_.view.setStep(JobStep::check);
    });
    connect(view_, &QWidget::customContextMenuRequested, this, &FindingList::showMenu);
    connect(&context_.analysis, &Analysis::analysed, this, &FindingList::refresh);
    connect(&context_.document, &Document::changed, this, &FindingList::noteStale);
    connect(&context_.view, &ViewState::optionChanged, this, &FindingList::noteStale);
    connect(&context_.view, &ViewState::findingChanged, this, &FindingList::followFinding);
    stale_.setSingleShot(true);
    stale_.setInterval(300);
    connect(&stale_, &QTimer::timeout, this, [this] { computing_->setVisible(!context_.analysis.upToDate()); });
    addActions();
    refresh();
    noteStale();
}

void FindingList::addActions() {
    addAction(context_.actions.add({"check.next", "check", tr("Next missed finding"), tr("Goes to the next check that is missed and shows where"), QKeySequence(Qt::Key_F8),
                                    [this] { step(1); }, [this] { return anyMissed(); }, {}, {}}));
    addAction(context_.actions.add({"check.previous", "check", tr("Previous missed finding"), tr("Goes to the check before that is missed and shows where"), QKeySequence(Qt::SHIFT | Qt::Key_F8),
                                    [this] { step(-1); }, [this] { return anyMissed(); }, {}, {}}));
}

void FindingList::refresh() {
    view_->show(context_.analysis.latest());
    showOverall();
    followFinding();
    if (context_.analysis.upToDate()) {
        stale_.stop();
        computing_->hide();
    } else {
        stale_.start();
    }
    for (const char* id : {"check.next", "check.previous"}) context_.actions.action(id)->setEnabled(anyMissed());
}

void FindingList::noteStale() {
    if (!context_.analysis.upToDate() && !stale_.isActive()) stale_.start();
}

void FindingList::showOverall() {
    const auto latest = context_.analysis.latest();
    QString words;
    std::optional<Verdict> verdict;
    if (!latest) {
        words = tr("Not computed yet");
    } else if (!latest->problems.empty()) {
        words = tr("Cannot be checked yet");
        verdict = Verdict::unknown;
    } else if (latest->findings.empty()) {
        words = tr("Nothing to check yet: there is no mount");
    } else {
        words = FindingWords::overall(latest->findings, *latest->plan, latest->option);
        verdict = worst(latest->findings);
    }
    if (overall_->text() != words) overall_->setText(words);
    const int size = fontMetrics().height();
    if (verdict) mark_->setPixmap(verdictIcon(*verdict).pixmap(QSize(size, size), devicePixelRatioF()));
    mark_->setVisible(verdict.has_value());
}

void FindingList::followFinding() { view_->mark(context_.view.finding().toStdString()); }

void FindingList::choose(const QString& id) {
    const Finding* finding = model_.finding(id.toStdString());
    if (!finding) return;
    context_.view.showFinding(id);
    if (!finding->subjects.empty()) context_.view.pick(pickedOf(finding->subjects.front(), model_.analysed()->setup ? &model_.analysed()->setup->situation : nullptr));
}

bool FindingList::anyMissed() const {
    if (!model_.analysed()) return false;
    for (const Finding& f : model_.analysed()->findings) if (f.verdict == Verdict::misses) return true;
    return false;
}

void FindingList::step(int by) {
    if (!model_.analysed()) return;
    std::vector<std::string> missed;
    for (const Finding& f : model_.analysed()->findings) if (f.verdict == Verdict::misses) missed.push_back(f.id);
    if (missed.empty()) return;
    const int count = static_cast<int>(missed.size());
    int at = by > 0 ? -1 : count;
    for (int i = 0; i < count; ++i) if (missed[static_cast<std::size_t>(i)] == context_.view.finding().toStdString()) at = i;
    choose(QString::fromStdString(missed[static_cast<std::size_t>((at + by + count) % count)]));
}

void FindingList::showMenu(const QPoint& at) {
    QModelIndex index = view_->indexAt(at);
    if (!index.isValid()) index = view_->currentIndex();
    const Finding* finding = index.isValid() ? model_.finding(model_.row(index.row()).key) : nullptr;
    if (!finding) return;
    const QString id = QString::fromStdString(finding->id);
    QMenu menu(this);
    if (finding->remedy && changesPlan(finding->remedy->kind))
        menu.addAction(QString::fromStdString(remedySentence(*finding, context_.view.units())).replace('&', "&&"), this, [this, id] { mend(context_, id); });
    menu.addAction(tr("Show it in the Check step"), this, [this, id] {
        choose(id);
        context_.view.setStep(JobStep::check);
    });
    menu.exec(view_->viewport()->mapToGlobal(at));
}

void FindingList::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (view_ && (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange)) showOverall();
}

}  // namespace hither
