#pragma once
#include <optional>

#include <Eigen/Core>

#include "core/chain/chain.h"

namespace hither {

/// A line of sight in W: the pixel that the pointer is on.
struct Sight { Vec3 eye_W, direction_W; };

/// Where a sight meets the plane through `point` square to `normal`; nothing when it runs along the
/// plane (within about 10 degrees) or the plane is behind the eye.
std::optional<Vec3> onPlane(const Sight& sight, const Vec3& point, const Vec3& normal);

/// By how much (rad, right hand about `axis`, from -pi to pi) a turn about the line through `pivot` carries the
/// point seen at `from` to the one seen at `to`, both taken in the plane square to the axis through `grabbed`.
/// Nothing when that plane is seen edge-on or a sight meets the axis itself.
std::optional<double> turnBetween(const Sight& from, const Sight& to, const Vec3& pivot, const Vec3& axis, const Vec3& grabbed);

/// How far along unit `axis` from `point` the line comes nearest to the sight; nothing when they run side by side.
std::optional<double> alongAxis(const Sight& sight, const Vec3& point, const Vec3& axis);

/// The nearest value on a step, within the freedom's limits; the value itself, within its limits, when it has no
/// steps. Full turns are wrapped to (-pi, pi].
double clicked(const Freedom& freedom, double value);

/// How a point P fixed in the frame `frame` of a chain moves: metres in W per unit of each of the freedoms
/// [first, first + count). Freedoms that come after the frame do not move it.
Eigen::Matrix3Xd pointJacobian(const Chain& chain, const Eigen::VectorXd& q, const ChainPoses& poses, int frame, const Vec3& p_W, int first, int count);

/// Moves the freedoms [first, first + count) of one joint so that the point p_F of frame `frame` comes as near
/// as their limits let it to `goal_W`, as seen along unit `sight_W` (what is along the sight does not count). Others stay.
Eigen::VectorXd pulled(const Chain& chain, Eigen::VectorXd q, int frame, const Vec3& p_F, int first, int count, const Vec3& goal_W, const Vec3& sight_W);

}  // namespace hither
