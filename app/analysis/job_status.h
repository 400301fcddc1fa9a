#pragma once
#include <array>

#include <QString>

#include "app/analysis/analysis.h"
#include "app/document/view_state.h"

namespace hither {

/// How far one step of the job is, in a few words: what there is, or what is still missing.
struct StepStatus {
    enum class State { missing, attention, done } state = State::missing;
    QString words;     ///< "Manual wheelchair", "No switch yet"
};
constexpr int jobSteps = 6;
QString stepName(JobStep step);
std::array<StepStatus, jobSteps> jobStatus(const Document& document, const ViewState& view, const Analysis& analysis);

}  // namespace hither
