#pragma once
#include <QCoreApplication>
#include <QString>
#include <vector>

#include "app/document/picked.h"
#include "core/checks/finding.h"
#include "core/plan/plan.h"

namespace hither {

/// What the list and the check panel say of findings beyond the core's sentences.
class FindingWords {
    Q_DECLARE_TR_FUNCTIONS(hither::FindingWords)

public:
    /// "Missed", "Not known", "Close", "Met": heading of a group.
    static QString heading(Verdict verdict);
    /// "measured", "published", "assumed", "unknown".
    static QString basis(BasisKind kind);
    /// "3.1 mm, at least 10 mm asked", as far as the finding says whether it is a most or a least.
    static QString valueAgainstLimit(const Finding& finding, UnitSystem units);
    /// The verdict of all in words: "2 missed, 1 not known – not ready"; "Passes these checks".
    static QString overall(const std::vector<Finding>& findings, const Plan& plan, const std::string& option);
    /// "Accepted by KL on 2026-11-25: wears a cushion there".
    static QString accepted(const AcceptedFinding& accepted);
    /// A problem of setting up an option: what and, when it is a known place in the plan, where.
    static QString problem(const PlanProblem& problem, const Plan& plan);
    /// Everything that a row shows, for a screen reader.
    static QString spoken(const Finding& finding, const AcceptedFinding* accepted, UnitSystem units);
};

const AcceptedFinding* acceptanceOf(const Plan& plan, const std::string& option, const std::string& finding);
/// What a subject is in the scene and the setup tree.
Picked pickedOf(const Subject& subject, const Situation* situation);

/// Which side of its limit a value must be on, as far as value and verdict tell.
enum class LimitIs { unclear, most, least };
LimitIs limitOf(const Finding& finding);

}  // namespace hither
