#pragma once
#include <QString>

#include "app/document/document.h"
#include "core/plan/edits/about.h"
#include "core/plan/edits/joints.h"
#include "core/plan/edits/options.h"
#include "tests/unit/plan/fixture.h"

namespace hither::test {

/// The edits that are made before a crash, the same in the program that ends and in the one that looks.
inline Plan crashStart() {
    Plan plan = smallPlan();
    plan.made_utc = plan.changed_utc = "2026-05-01T08:00:00Z";
    return plan;
}
inline void makeCrashEdits(Document& document) {
    document.apply("Name the plan", setTitle(document.plan(), "Edited before the crash"));
    document.apply("Turn the elbow", setJoint(document.plan(), "first", "main", 1, "elbow", {0.9}));
    document.apply("Copy the option", copyOption(document.plan(), "first", "second", "Second"));
}

}  // namespace hither::test
