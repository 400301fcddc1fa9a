#include "app/panels/build_ways_bar.h"

#include <QKeyEvent>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QStringList>
#include <QVBoxLayout>

#include "app/panels/build_flow.h"
#include "app/panels/build_words.h"
#include "app/widgets/theme.h"
#include "core/offers/offer_words.h"
#include "core/plan/edits/joints.h"

namespace hither {

BuildWaysBar::BuildWaysBar(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context), finder_(context.shipped) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    words_ = new QLabel(this);
    words_->setWordWrap(true);
    busy_ = new QProgressBar(this);
    busy_->setRange(0, 0);
    busy_->setTextVisible(false);
    busy_->setAccessibleName(tr("Looking for ways"));
    auto* flow = new BuildFlow;
    const auto button = [&](const QString& words, const QString& help) {
        auto* b = new QPushButton(words, this);
        b->setToolTip(help);
        b->setAccessibleDescription(help);
        b->setMinimumHeight(24);
        b->installEventFilter(this);
        flow->addWidget(b);
        return b;
    };
    start_ = button(tr("Bring to site"), tr("Looks for joint settings that put the switch on its site, facing the movement"));
    previous_ = button(tr("Previous"), tr("Shows the way before this one"));
    next_ = button(tr("Next"), tr("Shows the next way"));
    keep_ = button(tr("Keep"), tr("Keeps the way shown"));
    nearest_ = button(tr("Set it as near as it gets"), tr("Sets the joints as near to the site as this mount can go"));
    leave_ = button(tr("Cancel"), tr("Leaves everything as it was"));
    for (QPushButton* b : {start_, keep_}) b->setProperty("primary", true);
    column->addWidget(words_);
    column->addWidget(busy_);
    column->addLayout(flow);
    connect(start_, &QPushButton::clicked, this, &BuildWaysBar::start);
    connect(previous_, &QPushButton::clicked, this, [this] { step(-1); });
    connect(next_, &QPushButton::clicked, this, [this] { step(1); });
    connect(keep_, &QPushButton::clicked, this, &BuildWaysBar::keep);
    connect(nearest_, &QPushButton::clicked, this, &BuildWaysBar::setNearest);
    connect(leave_, &QPushButton::clicked, this, &BuildWaysBar::leave);
    connect(&finder_, &WaysFinder::found, this, &BuildWaysBar::found);
    connect(&finder_, &WaysFinder::failed, this, [this](const std::string&, const QString& why) {
        failed_ = why;
        show(State::idle);
    });
    connect(&context_.document, &Document::changed, this, &BuildWaysBar::follow);
    connect(&context_.document, &Document::historyChanged, this, &BuildWaysBar::follow);
    connect(&context_.view, &ViewState::optionChanged, this, &BuildWaysBar::follow);
    show(State::idle);
}

QString BuildWaysBar::whyNotIdle() const {
    const Mount* mount = context_.view.mount();
    if (!mount) return tr("There is no mount yet.");
    const Part* last = mount->parts.empty() ? nullptr : context_.document.plan().part(mount->parts.back().part);
    if (!last || !last->face) return tr("Next: go on from the free end until the switch is there.");
    if (mount->site.empty()) return context_.document.plan().sites.empty() ? tr("Next: say where the person can press, in the step “site”.") : tr("Next: choose the site that its switch serves.");
    if (!context_.analysis.setup()) return tr("The setup cannot be made: %1").arg(context_.analysis.problems().empty() ? QString() : QString::fromStdString(context_.analysis.problems().front().what));
    return {};
}

bool BuildWaysBar::canStart() const { return state_ != State::searching && state_ != State::stepping && whyNotIdle().isEmpty(); }

void BuildWaysBar::refresh() {
    if (state_ == State::idle) show(State::idle);
}

void BuildWaysBar::start() {
    if (!canStart()) return;
    const Mount* mount = context_.view.mount();
    mount_ = mount->id;
    option_ = context_.view.option();
    setup_ = context_.analysis.setup();
    failed_.clear();
    finder_.find(setup_, mount_, context_.document.plan().limits);
    show(finder_.running() ? State::searching : State::idle);
}

void BuildWaysBar::found(const std::string& mount, std::shared_ptr<const Ways> ways) {
    if (state_ != State::searching || mount != mount_) return;
    ways_ = std::move(ways);
    way_ = 0;
    if (ways_->report.status == SolveReport::Status::cancelled) return show(State::idle);
    if (ways_->report.solutions.empty()) return show(State::none);
    const Mount* m = mountIn(context_.document.plan(), option_, mount_);
    gesture_ = tr("Bring %1 to its site").arg(m ? QString::fromStdString(m->name) : QString());
    mine_ = true;
    context_.document.beginGesture(gesture_);
    mine_ = false;
    show(State::stepping);
    showWay();
    takeFocus();
}

void BuildWaysBar::showWay() {
    const SetupMount* m = mountIn(setup_.get(), mount_);
    const Solution& s = ways_->report.solutions[static_cast<std::size_t>(way_)];
    mine_ = true;
    context_.document.preview(applySolved(context_.document.gestureStart(), option_, mount_, m->chain, s.q));
    mine_ = false;
    show(State::stepping);
}

void BuildWaysBar::step(int by) {
    if (state_ != State::stepping) return;
    const int count = static_cast<int>(ways_->report.solutions.size());
    way_ = (way_ + by % count + count) % count;
    showWay();
}

void BuildWaysBar::keep() {
    if (state_ != State::stepping) return;
    mine_ = true;
    context_.document.endGesture();
    mine_ = false;
    show(State::idle);
}

void BuildWaysBar::leave() {
    const State was = state_;
    finder_.cancel();
    mine_ = true;
    if (was == State::stepping) context_.document.cancelGesture();
    mine_ = false;
    show(State::idle);
}

void BuildWaysBar::setNearest() {
    const SetupMount* m = mountIn(setup_.get(), mount_);
    if (state_ != State::none || !m || !ways_->report.nearest) return;
    const Eigen::VectorXd q = ways_->report.nearest->q;
    show(State::idle);
    context_.document.apply(tr("Set %1 as near as it gets").arg(QString::fromStdString(m->mount.name)), applySolved(context_.document.plan(), option_, mount_, m->chain, q));
}

/// What somebody else does to the plan ends what this bar shows.
void BuildWaysBar::follow() {
    if (mine_) return;
    Document& d = context_.document;
    if (state_ == State::stepping && (!d.inGesture() || d.gestureLabel() != gesture_)) show(State::idle);
    else if (state_ == State::stepping && context_.view.option() != option_) leave();
    else if (state_ == State::searching || state_ == State::none) {
        const SetupMount* was = mountIn(setup_.get(), mount_);
        const Mount* now = context_.view.option() == option_ ? mountIn(d.plan(), option_, mount_) : nullptr;
        if (!was || !now || !(was->mount == *now)) leave();
    } else refresh();
}

QString BuildWaysBar::wayWords() const {
    const WayLeft& left = ways_->left[static_cast<std::size_t>(way_)];
    QStringList judged;
    judged << (left.missed == 0 ? tr("no check missed") : left.missed == 1 ? tr("1 check missed") : tr("%n checks missed", nullptr, left.missed));
    if (left.close > 0) judged << tr("%n close", nullptr, left.close);
    if (left.unknown > 0) judged << tr("%n unknown", nullptr, left.unknown);
    return tr("Way %1 of %2: %3").arg(way_ + 1).arg(ways_->report.solutions.size()).arg(judged.join(tr(", ")));
}

QString BuildWaysBar::nearestWords() const {
    const UnitSystem units = context_.view.units();
    const SolveReport& r = ways_->report;
    const SetupMount* m = mountIn(setup_.get(), mount_);
    QStringList out;
    out << tr("No way brings this switch to its site.");
    if (r.nearest)
        out << tr("The nearest is %1 away and turned %2 from the movement.").arg(QString::fromStdString(lengthWords(r.nearest->position_m, units)), QString::fromStdString(printAngle(r.nearest->angle_rad, 1)));
    if (r.reachShort_m > 0) out << tr("Stretched out it is %1 too short.").arg(QString::fromStdString(printLength(r.reachShort_m, units)));
    QStringList stops;
    for (const Stopped& s : r.stopped)
        if (m && s.freedom >= 0 && s.freedom < m->chain.freedomCount()) {
            const Freedom& f = m->chain.freedoms[static_cast<std::size_t>(s.freedom)];
            const QString name = numbered(f.part, m->chain.parts[static_cast<std::size_t>(f.part)]->name);
            stops << (s.atMax ? tr("%1 of %2 is at its upper end") : tr("%1 of %2 is at its lower end")).arg(QString::fromStdString(freedomName(m->chain, f)), name);
        }
    if (!stops.isEmpty()) out << tr("What stops it: %1.").arg(stops.join(tr("; ")));
    return out.join(' ');
}

void BuildWaysBar::show(State state) {
    const bool other = state != state_;
    const bool hadFocus = isAncestorOf(focusWidget() && focusWidget()->hasFocus() ? focusWidget() : nullptr);
    state_ = state;
    const QString why = whyNotIdle();
    QString words;
    switch (state) {
        case State::idle: words = failed_.isEmpty() ? why : failed_; break;
        case State::searching: words = tr("Looking for ways to the site …"); break;
        case State::stepping: words = wayWords(); break;
        case State::none: words = nearestWords(); break;
    }
    if (words_->text() != words) words_->setText(words);
    words_->setVisible(!words.isEmpty());
    busy_->setVisible(state == State::searching);
    start_->setVisible(state == State::idle || state == State::none);
    start_->setEnabled(canStart());
    start_->setText(state == State::none ? tr("Look again") : tr("Bring to site"));
    const int count = state == State::stepping ? static_cast<int>(ways_->report.solutions.size()) : 0;
    for (QPushButton* b : {previous_, next_}) {
        b->setVisible(state == State::stepping);
        b->setEnabled(count > 1);
    }
    keep_->setVisible(state == State::stepping);
    nearest_->setVisible(state == State::none && ways_ && ways_->report.nearest);
    leave_->setVisible(state != State::idle);
    leave_->setText(state == State::none ? tr("Close") : tr("Cancel"));
    if (!other) return;
    if (state == State::idle) {
        ways_.reset();
        setup_.reset();
    }
    if (hadFocus) takeFocus();
    emit stateChanged();
}

void BuildWaysBar::takeFocus() {
    QPushButton* to = state_ == State::idle ? start_ : state_ == State::searching ? leave_ : state_ == State::stepping ? keep_ : nearest_->isVisible() ? nearest_ : leave_;
    if (to->isEnabled()) to->setFocus(Qt::OtherFocusReason);
}

bool BuildWaysBar::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && state_ != State::idle && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        event->accept();
        return true;
    }
    return QWidget::event(event);
}

void BuildWaysBar::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape && state_ != State::idle) return leave();
    if (!arrow(event->key())) QWidget::keyPressEvent(event);
}

/// Goes to the next way or the one before by the arrow keys.
bool BuildWaysBar::arrow(int key) {
    if (state_ != State::stepping) return false;
    if (key == Qt::Key_Right || key == Qt::Key_Down) step(1);
    else if (key == Qt::Key_Left || key == Qt::Key_Up) step(-1);
    else return false;
    return true;
}

bool BuildWaysBar::eventFilter(QObject* watched, QEvent* event) {
    // A button would move the keyboard to its neighbour.
    if (event->type() == QEvent::KeyPress && arrow(static_cast<QKeyEvent*>(event)->key())) return true;
    return QWidget::eventFilter(watched, event);
}

}  // namespace hither
