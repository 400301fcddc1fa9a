#pragma once
#include <memory>
#include <string>
#include <vector>

#include <QtGlobal>

#include "core/checks/finding.h"
#include "core/plan/plan.h"

namespace hither {

/// What the checks say of one option at one revision of the document.
struct Analysed {
    quint64 revision = 0;
    std::string option;
    std::shared_ptr<const Plan> plan;      ///< the copy that was judged
    std::shared_ptr<const Setup> setup;    ///< null: the option cannot be set up, see `problems`
    std::vector<PlanProblem> problems;
    std::vector<Finding> findings;         ///< worst first
};

}  // namespace hither
