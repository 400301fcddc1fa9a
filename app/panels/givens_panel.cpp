#include "app/panels/givens_panel.h"

#include <QApplication>
#include <QCoreApplication>
#include <QEvent>
#include <QPushButton>
#include <QStyle>
#include <QTimer>
#include <QVBoxLayout>

#include "app/analysis/job_status.h"
#include "app/widgets/choice_box.h"
#include "app/widgets/slider_field.h"
#include "app/widgets/text_field.h"
#include "app/widgets/words_label.h"

namespace hither {

QString fromCore(const std::string& text) { return QCoreApplication::translate("core", text.c_str()); }

QString nameFromCore(const std::string& text) {
    QString words = fromCore(text);
    if (!words.isEmpty()) words[0] = words[0].toUpper();
    return words;
}

GivensPanel::GivensPanel(const EditorContext& context, JobStep step, const QString& lead, QWidget* parent)
    : QWidget(parent), context_(context), step_(step), column_(new QVBoxLayout(this)) {
    column_->setContentsMargins(12, 10, 12, 12);
    column_->setSpacing(8);
    column_->addWidget(wordsLabel(lead, false, this));
    toDo_ = wordsLabel({}, false, this);
    toDo_->setObjectName("to_do");
    refusal_ = wordsLabel({}, false, this);
    refusal_->setObjectName("refusal");
    refusal_->hide();
    column_->addWidget(toDo_);
    column_->addWidget(refusal_);
    // A place in the order of tabs that nothing stops at: the form's fields are put behind it.
    tabsBegin_ = new QWidget(this);
    tabsBegin_->setFocusPolicy(Qt::TabFocus);
    tabsBegin_->hide();
    next_ = new QPushButton(this);
    const auto after = static_cast<JobStep>(static_cast<int>(step) + 1);
    next_->setText(tr("Next: %1").arg(stepName(after)));
    next_->setObjectName("next");
    connect(next_, &QPushButton::clicked, this, [this, after] { context_.view.setStep(after); });
    column_->addSpacing(4);
    column_->addWidget(next_);
    column_->addStretch(1);
    const auto later = [this] {
        stale_ = true;
        refusal_->hide();
        if (isVisible()) refresh(form_ == nullptr);
    };
    connect(&context_.document, &Document::changed, this, later);
    connect(&context_.document, &Document::fileChanged, this, later);
    connect(&context_.document, &Document::historyChanged, this, [this] { if (stale_ && isVisible()) refresh(false); });
    connect(&context_.document, &Document::refused, this, [this](const QString& why) {
        refusal_->setText(why);
        refusal_->show();
    });
}

void GivensPanel::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    refusal_->hide();
    if (stale_) refresh(true);
}

void GivensPanel::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() != QEvent::FontChange || !form_) return;
    built_ = QString();   // what was sized by the letters is made anew
    refreshSoon();
}

void GivensPanel::refreshSoon() {
    stale_ = true;
    if (due_ || !isVisible()) return;
    due_ = true;
    QTimer::singleShot(0, this, [this] {
        due_ = false;
        if (isVisible()) refresh(true);
    });
}

void GivensPanel::refresh(bool mayRebuild) {
    if (structure() != built_ || !form_) {
        if (form_ && document().inGesture()) {   // somebody types or drags: their widget stays until they are done
            for (const auto& each : refreshers_) each();
            return;
        }
        // A widget of the old form may be the one that asked for the change: it is let go afterwards.
        if (!mayRebuild) { refreshSoon(); return; }
        rebuild();
    }
    stale_ = false;
    for (QWidget* widget : changing_) widget->setEnabled(!document().readOnly());
    for (const auto& each : refreshers_) each();
    showStatus();
}

void GivensPanel::rebuild() {
    QString focus;
    if (QWidget* has = QApplication::focusWidget(); has && form_ && form_->isAncestorOf(has)) focus = has->objectName();
    refreshers_.clear();
    changing_.clear();
    QWidget* old = form_;
    if (old) {
        for (QObject* child : old->findChildren<QObject*>()) child->blockSignals(true);
        old->hide();
        old->deleteLater();
    }
    form_ = new QWidget(this);
    auto* inside = new QVBoxLayout(form_);
    inside->setContentsMargins(0, 0, 0, 0);
    inside->setSpacing(8);
    build(inside);
    built_ = structure();   // building settles what is shown
    column_->insertWidget(3, form_);
    form_->show();
    QWidget* before = tabsBegin_;
    std::vector<QWidget*> stops;
    for (QWidget* widget = form_->nextInFocusChain(); widget != form_; widget = widget->nextInFocusChain())
        if (form_->isAncestorOf(widget) && widget->focusPolicy() != Qt::NoFocus) stops.push_back(widget);
    for (QWidget* widget : stops) {
        setTabOrder(before, widget);
        before = widget;
    }
    if (!focus.isEmpty())
        if (auto* again = form_->findChild<QWidget*>(focus)) again->setFocus(Qt::OtherFocusReason);
}

void GivensPanel::showStatus() {
    const StepStatus status = jobStatus(document(), context_.view, context_.analysis)[static_cast<std::size_t>(step_)];
    const bool done = status.state == StepStatus::State::done;
    toDo_->setText(tr("To do: %1").arg(status.words));
    toDo_->setVisible(!done);
    if (next_->property("primary").isValid() && next_->property("primary").toBool() == done) return;
    next_->setProperty("primary", done);
    next_->style()->unpolish(next_);
    next_->style()->polish(next_);
}

void GivensPanel::keep(std::function<void()> refresh) {
    refresh();
    refreshers_.push_back(std::move(refresh));
}

template <class Field>
void GivensPanel::tieNumber(Field* field, const NumberOfPlan& number) {
    changes(field);
    const auto mine = std::make_shared<bool>(false);
    const auto going = [this, mine, label = number.label] { return *mine && document().inGesture() && document().gestureLabel() == label; };
    const auto show = [this, field, number] {
        field->setUnits(plan().display);
        field->setValue(number.read(plan()));
    };
    connect(field, &Field::tried, this, [this, mine, going, number](double value) {
        if (!going()) document().beginGesture(number.label);
        *mine = true;
        document().preview(number.edit(document().gestureStart(), value));
    });
    connect(field, &Field::committed, this, [this, mine, going, number, show](std::optional<double> value) {
        const bool previewed = going() && value && document().preview(number.edit(document().gestureStart(), value));
        if (previewed) {
            document().endGesture();
        } else {
            if (going()) document().cancelGesture();
            document().apply(number.label, number.edit(plan(), value));
        }
        *mine = false;
        show();
    });
    connect(field, &Field::abandoned, this, [this, mine, going] {
        if (going()) document().cancelGesture();
        *mine = false;
    });
    keep(show);
}

void GivensPanel::tie(NumberField* field, const NumberOfPlan& number) { tieNumber(field, number); }
void GivensPanel::tie(SliderField* field, const NumberOfPlan& number) { tieNumber(field, number); }

void GivensPanel::tie(TextField* field, const QString& label, std::function<std::string(const Plan&)> read, std::function<Edited(const Plan&, const std::string&)> edit) {
    changes(field);
    const auto show = [this, field, read] { field->setWords(QString::fromStdString(read(plan()))); };
    connect(field, &TextField::committed, this, [this, label, edit, show](const QString& words) {
        document().apply(label, edit(plan(), words.toStdString()));
        show();
    });
    keep(show);
}

void GivensPanel::tie(ChoiceBox* box, const QString& label, std::function<std::string(const Plan&)> read, std::function<Edited(const Plan&, const std::string&)> edit) {
    changes(box);
    const auto show = [this, box, read] { box->setChoice(QString::fromStdString(read(plan()))); };
    connect(box, &ChoiceBox::activated, this, [this, box, label, edit, show](int) {
        document().apply(label, edit(plan(), box->currentData().toString().toStdString()));
        show();
    });
    keep(show);
}

}  // namespace hither
