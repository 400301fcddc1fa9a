#include "app/panels/finding_at.h"

#include <QKeyEvent>
#include <QLabel>
#include <QVBoxLayout>

#include "app/panels/finding_button.h"
#include "core/plan/edits/supports.h"

namespace hither {
namespace {

QString lookLabel() { return FindingAt::tr("Look at a setting"); }

QString settingWords(const GroupAt& at, const Situation* situation, UnitSystem units) {
    QString group = QString::fromStdString(at.group);
    if (const Support* support = situation ? situation->support(at.support) : nullptr)
        if (const MovingGroup* g = support->group(at.group); g && !g->name.empty()) group = QString::fromStdString(g->name);
    const std::string value = at.slides ? printLength(at.value, units) : printAngle(at.value);
    return FindingAt::tr("%1 at %2").arg(group, QString::fromStdString(value));
}

}  // namespace

FindingAt::FindingAt(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    words_ = new QLabel(this);
    words_->setWordWrap(true);
    words_->setTextFormat(Qt::PlainText);
    button_ = new WrappedButton(this);
    column->addWidget(words_);
    column->addWidget(button_);
    connect(button_, &QPushButton::clicked, this, [this] { looking() ? back() : look(); });
    connect(&context_.view, &ViewState::stepChanged, this, &FindingAt::back);
    connect(&context_.view, &ViewState::optionChanged, this, &FindingAt::back);
    connect(&context_.document, &Document::changed, this, &FindingAt::refresh);
    connect(&context_.document, &Document::historyChanged, this, &FindingAt::refresh);
}

bool FindingAt::looking() const { return context_.document.inGesture() && context_.document.gestureLabel() == lookLabel(); }

void FindingAt::showFor(const Finding* f) {
    if (!f || f->id != finding_) back();
    // While it is being looked at the finding may say other settings, or be gone: those looked at stand.
    if (!looking()) {
        finding_ = f ? f->id : std::string();
        at_ = f ? f->at : std::vector<GroupAt>();
    }
    refresh();
}

void FindingAt::refresh() {
    setVisible(!at_.empty());
    if (at_.empty()) return;
    QStringList settings;
    for (const GroupAt& at : at_) settings << settingWords(at, context_.analysis.situation().get(), context_.view.units());
    const QString list = settings.join(tr(", "));
    words_->setText(looking() ? tr("Shown with %1.").arg(list) : tr("It occurs with %1.").arg(list));
    button_->setText(looking() ? tr("Back to the present setting") : tr("Show at this setting"));
}

void FindingAt::look() {
    context_.document.beginGesture(lookLabel());
    Edited now{context_.document.gestureStart(), {}};
    for (const GroupAt& at : at_) {
        if (!now) break;
        for (const SupportSpec& spec : now.plan->supports)
            if (spec.id == at.support) {
                SupportSpec changed = spec;
                changed.settings[at.group] = at.value;
                now = replaceSupport(*now.plan, at.support, changed);
                break;
            }
    }
    if (!now || !context_.document.preview(now)) context_.document.cancelGesture();
    refresh();
}

void FindingAt::back() {
    if (looking()) context_.document.cancelGesture();
}

void FindingAt::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape && looking()) return back();
    QWidget::keyPressEvent(event);
}

void FindingAt::hideEvent(QHideEvent* event) {
    back();
    QWidget::hideEvent(event);
}

}  // namespace hither
