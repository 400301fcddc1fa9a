#include "app/editor/job_rail.h"

#include <QAbstractButton>
#include <QHBoxLayout>

#include "app/editor/step_button.h"

namespace hither {

JobRail::JobRail(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(6, 4, 6, 4);
    row->setSpacing(4);
    for (int i = 0; i < jobSteps; ++i) {
        const auto step = static_cast<JobStep>(i);
        auto* button = new StepButton(i + 1, stepName(step), this);
        connect(button, &QAbstractButton::clicked, this, [this, step] { context_.view.setStep(step); });
        row->addWidget(button, 1);
        buttons_[static_cast<std::size_t>(i)] = button;
    }
    connect(&context_.document, &Document::historyChanged, this, &JobRail::refresh);
    connect(&context_.document, &Document::fileChanged, this, &JobRail::refresh);
    connect(&context_.view, &ViewState::stepChanged, this, &JobRail::refresh);
    connect(&context_.view, &ViewState::optionChanged, this, &JobRail::refresh);
    connect(&context_.analysis, &Analysis::analysed, this, &JobRail::refresh);
    refresh();
}

void JobRail::refresh() {
    const auto status = jobStatus(context_.document, context_.view, context_.analysis);
    for (std::size_t i = 0; i < buttons_.size(); ++i) {
        static_cast<StepButton*>(buttons_[i])->setStatus(status[i]);
        buttons_[i]->setChecked(static_cast<int>(context_.view.step()) == static_cast<int>(i));
    }
}

}  // namespace hither
