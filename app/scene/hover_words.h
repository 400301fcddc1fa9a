#pragma once
#include <QString>

#include "app/document/view_state.h"
#include "core/chain/setup.h"

namespace hither {

/// One line about a thing in the scene and what a click on it does in this step: "Armrest tube, right:
/// 22 mm round tube – click to see the grips that fit". Empty for nothing.
QString hoverWords(const Picked& pick, JobStep step, UnitSystem units, const Situation* situation, const Setup* setup);

/// "right forearm": a body part as it is called on screen.
QString segmentWords(const std::string& segment);

}  // namespace hither
