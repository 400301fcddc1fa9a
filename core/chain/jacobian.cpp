#include "core/chain/chain.h"
#include "core/chain/swing.h"

namespace hither {

Eigen::Matrix<double, 6, Eigen::Dynamic> jacobian(const Chain& chain, const Eigen::Ref<const Eigen::VectorXd>& q, const ChainPoses& poses) {
    Eigen::Matrix<double, 6, Eigen::Dynamic> J = Eigen::Matrix<double, 6, Eigen::Dynamic>::Zero(6, chain.freedomCount());
    const Vec3 end = poses.last().translation();
    // A turn by w_W about the point p_W moves the far end by w x (end - p).
    const auto turnColumn = [&J, &end](int column, const Vec3& w_W, const Vec3& p_W) {
        J.col(column) << w_W.cross(end - p_W), w_W;
    };
    for (std::size_t k = 0; k < chain.steps.size(); ++k) {
        const ChainStep& step = chain.steps[k];
        const Mat3 R = poses.X_WF[k].linear();
        const Vec3 p = poses.X_WF[k].translation();
        switch (step.kind) {
            case ChainStep::Kind::fixed: break;
            case ChainStep::Kind::slide: J.col(step.q0).head<3>() = R * step.axis; break;
            case ChainStep::Kind::turn: turnColumn(step.q0, R * step.axis, p); break;
            case ChainStep::Kind::ball: {
                const Swing swing(q[step.q0], q[step.q0 + 1]);
                turnColumn(step.q0, R * swing.turnByA(), p);
                turnColumn(step.q0 + 1, R * swing.turnByB(), p);
                turnColumn(step.q0 + 2, poses.X_WF[k + 1].linear().col(2), p);
                break;
            }
            case ChainStep::Kind::bend: {
                // The arc's end moves by itself, and all beyond it turns about that end.
                const double s = step.arc;
                const Swing swing(s * q[step.q0], s * q[step.q0 + 1]);
                const Vec3 arcEnd = poses.X_WF[k + 1].translation();
                turnColumn(step.q0, R * (s * swing.turnByA()), arcEnd);
                turnColumn(step.q0 + 1, R * (s * swing.turnByB()), arcEnd);
                J.col(step.q0).head<3>() += R * (s * s * swing.arcEndByA());
                J.col(step.q0 + 1).head<3>() += R * (s * s * swing.arcEndByB());
                break;
            }
        }
    }
    return J;
}

}  // namespace hither
