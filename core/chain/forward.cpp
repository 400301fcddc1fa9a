#include "core/chain/chain.h"
#include "core/chain/swing.h"

namespace hither {

void forward(const Chain& chain, const Eigen::Ref<const Eigen::VectorXd>& q, ChainPoses& out) {
    out.X_WF.resize(chain.steps.size() + 1);
    out.X_WF[0] = Pose::Identity();
    for (std::size_t k = 0; k < chain.steps.size(); ++k) {
        const ChainStep& step = chain.steps[k];
        const Pose& X = out.X_WF[k];
        Pose& next = out.X_WF[k + 1];
        switch (step.kind) {
            case ChainStep::Kind::fixed: next = X * step.X; break;
            case ChainStep::Kind::slide: next = pose(X.linear(), X.translation() + X.linear() * (q[step.q0] * step.axis)); break;
            case ChainStep::Kind::turn:
                next = pose(X.linear() * Eigen::AngleAxisd(q[step.q0], step.axis).toRotationMatrix(), X.translation());
                break;
            case ChainStep::Kind::ball: {
                const Mat3 twist = Eigen::AngleAxisd(q[step.q0 + 2], Vec3::UnitZ()).toRotationMatrix();
                next = pose(X.linear() * Swing(q[step.q0], q[step.q0 + 1]).rotation() * twist, X.translation());
                break;
            }
            case ChainStep::Kind::bend: {
                const Swing swing(step.arc * q[step.q0], step.arc * q[step.q0 + 1]);
                next = pose(X.linear() * swing.rotation(), X * Vec3(step.arc * swing.arcEnd()));
                break;
            }
        }
    }
}

ChainPoses forward(const Chain& chain, const Eigen::Ref<const Eigen::VectorXd>& q) {
    ChainPoses poses;
    forward(chain, q, poses);
    return poses;
}

}  // namespace hither
