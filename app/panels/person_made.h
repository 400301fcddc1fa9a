#pragma once
#include <memory>
#include <string>
#include <vector>

#include "core/plan/plan.h"
#include "core/situation/person.h"

namespace hither {

/// What follows from the plan's person, for showing beside what was typed.
struct PersonMade {
    std::shared_ptr<const Support> support;   ///< what the person rests on; null when it cannot be made
    BodySize size;                            ///< empty when no body can be made of what was typed
    Posture rest;                             ///< every joint as the person rests there, rad; empty without a body
    std::vector<std::string> problems;        ///< as `makeBody` says them
};
PersonMade personMade(const Plan& plan, const BodyData& data);

/// A person can sit or lie on it.
bool canRestOn(const SupportSpec& support);
/// The support that the person named or, when none is named, would take; null when there is none.
const SupportSpec* supportToRestOn(const Plan& plan);

/// The joint angles of a body on its support, read back from the poses of its segments. Three-axis joints are
/// read with the middle angle (abduction, bend, wrist flexion) within a quarter turn.
Posture postureOf(const Body& body, const Support& support);

/// Least and greatest value that a body dimension of this table can have, m or kg.
struct BodyLimits { double min = 0, max = 0; };
BodyLimits bodyLimits(const std::string& dimension, const BodySpec& body, const BodyData& data);

}  // namespace hither
