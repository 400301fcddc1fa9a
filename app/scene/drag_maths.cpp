#include "app/scene/drag_maths.h"

#include <algorithm>
#include <cmath>

#include <Eigen/Cholesky>

#include "core/units/quantity.h"

namespace hither {
namespace {

constexpr double edgeOn = 0.17;        // sine of the least angle between sight and plane
constexpr double onAxis_m = 1e-6;
constexpr double sideBySide = 1e-3;    // 1 - cos^2 between axis and sight
constexpr int pulls = 40;
constexpr double settled_m = 1e-7;

double wrapped(double angle) {
    const double a = std::remainder(angle, 2 * pi);
    return a <= -pi ? a + 2 * pi : a;
}

}  // namespace

std::optional<Vec3> onPlane(const Sight& sight, const Vec3& point, const Vec3& normal) {
    const double down = sight.direction_W.dot(normal) / sight.direction_W.norm();
    if (std::abs(down) < edgeOn * normal.norm()) return std::nullopt;
    const double along = (point - sight.eye_W).dot(normal) / sight.direction_W.dot(normal);
    if (along <= 0) return std::nullopt;
    return sight.eye_W + along * sight.direction_W;
}

std::optional<double> turnBetween(const Sight& from, const Sight& to, const Vec3& pivot, const Vec3& axis, const Vec3& grabbed) {
    const Vec3 a = axis.normalized(), middle = pivot + a * a.dot(grabbed - pivot);
    const std::optional<Vec3> p = onPlane(from, middle, a), q = onPlane(to, middle, a);
    if (!p || !q) return std::nullopt;
    const Vec3 u = *p - middle, v = *q - middle;
    if (u.norm() < onAxis_m || v.norm() < onAxis_m) return std::nullopt;
    return std::atan2(a.dot(u.cross(v)), u.dot(v));
}

std::optional<double> alongAxis(const Sight& sight, const Vec3& point, const Vec3& axis) {
    const Vec3 D = sight.direction_W.normalized(), A = axis.normalized(), W = point - sight.eye_W;
    const double b = A.dot(D), apart = 1 - b * b;
    if (apart < sideBySide) return std::nullopt;
    return (b * D.dot(W) - A.dot(W)) / apart;
}

double clicked(const Freedom& freedom, double value) {
    if (freedom.fullTurn) value = wrapped(value);
    else value = std::clamp(value, freedom.min, std::max(freedom.min, freedom.max));
    if (!freedom.step) return value;
    const double onStep = detentValue(freedom, nearestDetent(freedom, value));
    return freedom.fullTurn ? wrapped(onStep) : onStep;
}

Eigen::Matrix3Xd pointJacobian(const Chain& chain, const Eigen::VectorXd& q, const ChainPoses& poses, int frame, const Vec3& p_W, int first, int count) {
    const auto J = jacobian(chain, q, poses);
    const Vec3 last_W = poses.last().translation();
    Eigen::Matrix3Xd out = Eigen::Matrix3Xd::Zero(3, count);
    for (int i = 0; i < count; ++i) {
        const bool before = std::any_of(chain.steps.begin(), chain.steps.begin() + frame, [&](const ChainStep& s) {
            if (s.q0 < 0) return false;
            const int has = s.kind == ChainStep::Kind::ball ? 3 : s.kind == ChainStep::Kind::bend ? 2 : 1;
            return first + i >= s.q0 && first + i < s.q0 + has;
        });
        if (!before) continue;
        const Vec3 v = J.block<3, 1>(0, first + i), w = J.block<3, 1>(3, first + i);
        out.col(i) = v + w.cross(p_W - last_W);
    }
    return out;
}

Eigen::VectorXd pulled(const Chain& chain, Eigen::VectorXd q, int frame, const Vec3& p_F, int first, int count, const Vec3& goal_W, const Vec3& sight_W) {
    const Mat3 across = Mat3::Identity() - sight_W * sight_W.transpose();
    const auto at = [&](const Eigen::VectorXd& values) { return forward(chain, values); };
    const auto missing = [&](const ChainPoses& poses) { return Vec3(across * (goal_W - poses.X_WF[static_cast<std::size_t>(frame)] * p_F)); };
    q = clamped(chain, std::move(q));
    ChainPoses poses = at(q);
    Vec3 e = missing(poses);
    double damping = 1e-4;
    Eigen::VectorXd weight(count);
    for (int i = 0; i < count; ++i) weight[i] = std::max(1e-3, chain.freedoms[static_cast<std::size_t>(first + i)].weight);
    for (int n = 0; n < pulls && e.norm() > settled_m; ++n) {
        const Vec3 p_W = poses.X_WF[static_cast<std::size_t>(frame)] * p_F;
        const Eigen::Matrix3Xd J = across * pointJacobian(chain, q, poses, frame, p_W, first, count) * weight.cwiseInverse().asDiagonal();
        const Mat3 A = J * J.transpose() + damping * Mat3::Identity();
        const Eigen::VectorXd step = weight.cwiseInverse().asDiagonal() * (J.transpose() * A.ldlt().solve(e));
        Eigen::VectorXd next = q;
        next.segment(first, count) += step;
        next = clamped(chain, std::move(next));
        const ChainPoses nextPoses = at(next);
        const Vec3 left = missing(nextPoses);
        if (left.norm() < e.norm()) {
            q = std::move(next);
            poses = nextPoses;
            e = left;
            damping = std::max(1e-9, damping * 0.3);
        } else {
            damping *= 8;
            if (damping > 1e6) break;
        }
    }
    return q;
}

}  // namespace hither
