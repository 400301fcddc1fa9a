#pragma once
#include <string>

#include <QString>

#include "core/geometry/pose.h"

namespace hither {

/// A direction in W in words: "to the right and 10° up". W is as the person faces: x forward, y left, z up.
QString movementWords(const Vec3& direction_W);
/// Turned to the left of forward, and up; rad.
struct Bearing { double azimuth = 0, elevation = 0; };
Bearing bearingOf(const Vec3& direction);
Vec3 directionOf(const Bearing& bearing);

/// The body part that a control site is listed under ("Elbow and forearm").
QString controlSiteGroup(const std::string& id);

}  // namespace hither
