#pragma once
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/catalogue/part.h"
#include "core/chain/mount.h"
#include "core/chain/limits.h"
#include "core/chain/setup.h"
#include "core/situation/situation.h"

namespace hither {

struct PlanOption {
    std::string id, name, notes;
    std::vector<Mount> mounts;
    std::vector<KeepOut> keepOuts;
    bool operator==(const PlanOption&) const = default;
};
/// A row of the parts list that is no part of a mount: batteries, tape, a strap.
struct ExtraItem {
    std::string id, name;
    int count = 1;
    std::optional<Money> price;
    std::string notes;
    bool operator==(const ExtraItem&) const = default;
};
/// A finding that somebody accepts: by its identity, with who, when and why.
struct AcceptedFinding {
    std::string option, finding, note, who, when_utc;
    bool operator==(const AcceptedFinding&) const = default;
};
struct HistoryEntry {
    int revision = 0;
    std::string when_utc, who, what;
    bool operator==(const HistoryEntry&) const = default;
};

/// Everything that is saved, and nothing else. A value: an edit is a function Plan -> Plan.
struct Plan {
    std::string id;            ///< stable, made once
    std::string title;
    std::string shows;         ///< one line: what this plan shows or is for
    std::string notes;
    int revision = 0;          ///< counts saves
    std::string made_utc, changed_utc;   ///< ISO 8601, "2026-11-25T09:00:00Z"
    UnitSystem display = UnitSystem::metric;
    std::string currency = "EUR";
    CheckLimits limits;
    std::vector<SupportSpec> supports;
    std::optional<PersonSpec> person;
    std::vector<SiteSpec> sites;
    std::vector<std::shared_ptr<const Part>> parts;  ///< copies of every part its options use, by id
    std::vector<PlanOption> options;
    std::vector<ExtraItem> extraItems;
    std::vector<AcceptedFinding> accepted;
    std::vector<HistoryEntry> history;

    const Part* part(const std::string& id) const;
    const PlanOption* option(const std::string& id) const;
};
/// Whole values are equal, parts compared by content.
bool operator==(const Plan& a, const Plan& b);

/// One thing that is wrong with a plan's content: where ("options/1/mounts/0/parts/2") and what.
struct PlanProblem { std::string where, what; };

/// Makes one option ready to be judged. Problems name the place in the plan.
struct SetupMade { std::optional<Setup> setup; std::vector<PlanProblem> problems; };
SetupMade makeSetup(const Plan& plan, std::size_t option, const BodyData& data);

}  // namespace hither
