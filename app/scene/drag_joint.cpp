#include <algorithm>
#include <charconv>
#include <cmath>

#include "app/picture/mount_handles.h"
#include "app/scene/drag.h"
#include "core/plan/edits/joints.h"

namespace hither {
namespace {

/// The freedoms of one joint (or one clocking) of a mount and the steps of the chain that they belong to.
struct JointPlace {
    int first = -1, count = 0, step = -1, lastStep = -1;
    int arcStep = -1, arcFirst = -1;   ///< the one arc of a neck that is bent; -1: the whole joint
};

JointPlace placeOf(const Chain& chain, int part, const std::string& joint) {
    JointPlace place;
    for (int i = 0; i < chain.freedomCount(); ++i) {
        const Freedom& f = chain.freedoms[static_cast<std::size_t>(i)];
        const bool is = f.part == part && (f.of == Freedom::Of::joint ? f.joint == joint : f.of == Freedom::Of::clocking && joint == clockingJoint);
        if (!is) continue;
        if (place.first < 0) place.first = i;
        ++place.count;
    }
    for (int k = 0; place.first >= 0 && k < static_cast<int>(chain.steps.size()); ++k) {
        const int q0 = chain.steps[static_cast<std::size_t>(k)].q0;
        if (q0 < place.first || q0 >= place.first + place.count) continue;
        if (place.step < 0) place.step = k;
        place.lastStep = k;
    }
    return place;
}

class JointDrag : public Drag {
    Q_DECLARE_TR_FUNCTIONS(JointDrag)

public:
    JointDrag(DragStart start, const SetupMount& mount, JointPlace place)
        : Drag(std::move(start)), mount_(mount), place_(place), kind_(mount.chain.steps[static_cast<std::size_t>(place.step)].kind),
          poses_(forward(mount.chain, mount.q)), last_(start_.at) {
        const Pose& X_W = poses_.X_WF[static_cast<std::size_t>(place.step)];
        pivot_W_ = X_W.translation();
        axis_W_ = X_W.linear() * mount.chain.steps[static_cast<std::size_t>(place.step)].axis;
        value_ = mount.q[place.first];
        // What a ball or neck carries: the base of the next part, or the end of the mount when that is nearer than a hand's grip.
        const Chain& chain = mount.chain;
        farFrame_ = static_cast<std::size_t>(first().part) + 1 < chain.partFrame.size() ? chain.partFrame[static_cast<std::size_t>(first().part) + 1] : static_cast<int>(chain.steps.size());
        farFrame_ = std::max(farFrame_, place.lastStep + 1);
        if ((poses_.X_WF[static_cast<std::size_t>(farFrame_)].translation() - pivot_W_).norm() < 0.01) farFrame_ = static_cast<int>(chain.steps.size());
        if (place.arcStep >= 0) farFrame_ = place.arcStep + 1;   // the arc's handle itself follows the pointer
        far_W_ = poses_.X_WF[static_cast<std::size_t>(farFrame_)].translation();
        q_ = mount.q;
    }

    QString label() const override {
        const QString name = QString::fromStdString(first().joint);
        if (first().of == Freedom::Of::clocking) return tr("Turn %1 on its thread").arg(QString::fromStdString(part().name));
        switch (kind_) {
            case ChainStep::Kind::slide: return tr("Slide “%1”").arg(name);
            case ChainStep::Kind::ball: return tr("Swing “%1”").arg(name);
            case ChainStep::Kind::bend: return tr("Bend “%1”").arg(name);
            default: return tr("Turn “%1”").arg(name);
        }
    }

    Step to(const Plan& start, QPointF at, bool shift) override {
        if (kind_ == ChainStep::Kind::ball && shift) return twist(start, at);
        if (kind_ == ChainStep::Kind::ball || kind_ == ChainStep::Kind::bend) return pull(start, at);
        if (kind_ == ChainStep::Kind::slide) {
            const auto from = alongAxis(start_.sight(start_.at), pivot_W_, axis_W_), now = alongAxis(start_.sight(at), pivot_W_, axis_W_);
            if (from && now) q_[place_.first] = clicked(first(), value_ + *now - *from);
        } else {
            q_[place_.first] = clicked(first(), value_ + turned(at, pivot_W_, axis_W_));
        }
        return {edit(start), hint(first().isAngle ? printAngle(q_[place_.first]) : printLength(q_[place_.first], start_.units))};
    }

private:
    const Freedom& first() const { return mount_.chain.freedoms[static_cast<std::size_t>(place_.first)]; }
    const Part& part() const { return *mount_.chain.parts[static_cast<std::size_t>(first().part)]; }

    /// Angle by which the pointer has gone round an axis since the start; whole turns are kept apart by adding small steps.
    double turned(QPointF at, const Vec3& pivot, const Vec3& axis) {
        if (const auto step = turnBetween(start_.sight(last_), start_.sight(at), pivot, axis, start_.grabbed_W)) turn_ += *step;
        else turn_ += (last_.y() - at.y()) * turnPerPixel;
        last_ = at;
        return turn_;
    }

    Step twist(const Plan& start, QPointF at) {
        const Pose& X_W = poses_.X_WF[static_cast<std::size_t>(place_.step) + 1];
        q_[place_.first + 2] = clicked(mount_.chain.freedoms[static_cast<std::size_t>(place_.first) + 2],
                                       mount_.q[place_.first + 2] + turned(at, pivot_W_, X_W.linear().col(2)));
        return {edit(start), hint(printAngle(q_[place_.first + 2]))};
    }

    Step pull(const Plan& start, QPointF at) {
        const Vec3 sight = start_.forward_W();
        const auto from = onPlane(start_.sight(start_.at), start_.grabbed_W, sight), now = onPlane(start_.sight(at), start_.grabbed_W, sight);
        if (!from || !now) return {};
        q_ = pulled(mount_.chain, q_, farFrame_, Vec3::Zero(), place_.arcStep >= 0 ? place_.arcFirst : place_.first, place_.arcStep >= 0 ? 2 : place_.count, far_W_ + (*now - *from), sight);
        last_ = at;
        if (kind_ == ChainStep::Kind::bend) return {edit(start), hint({})};
        return {edit(start), hint(printAngle(std::hypot(q_[place_.first], q_[place_.first + 1])))};
    }

    Edited edit(const Plan& start) const {
        const auto at = static_cast<std::size_t>(first().part);
        if (first().of == Freedom::Of::clocking) return setClocking(start, start_.setup->option, mount_.mount.id, at, q_[place_.first]);
        const Eigen::VectorXd values = q_.segment(place_.first, place_.count);
        return setJoint(start, start_.setup->option, mount_.mount.id, at, first().joint, {values.data(), values.data() + values.size()});
    }

    QString hint(const std::string& value) const {
        QString out = freedomWords(mount_.chain, first());
        if (!value.empty()) out += QStringLiteral(" ") + QString::fromStdString(value);
        if (atStop()) out += tr(" – at its stop");
        if (kind_ == ChainStep::Kind::ball) out += tr(" (Shift turns it about itself)");
        return out;
    }

    bool atStop() const {
        constexpr double near = 1e-9;
        for (const DiscLimit& d : mount_.chain.discs)
            if (d.first >= place_.first && d.first < place_.first + place_.count && q_.segment<2>(d.first).norm() > d.radius - near) return true;
        const Freedom& f = first();
        return place_.count == 1 && !f.fullTurn && (q_[place_.first] <= f.min + near || q_[place_.first] >= f.max - near);
    }

    const SetupMount& mount_;  // held by the setup that the start shares
    JointPlace place_;
    ChainStep::Kind kind_;
    ChainPoses poses_;
    Vec3 pivot_W_, axis_W_, far_W_;
    int farFrame_ = 0;
    double value_ = 0, turn_ = 0;
    QPointF last_;
    Eigen::VectorXd q_;
};

}  // namespace

namespace {

/// The arc of a neck that a handle stands for, by the number that its key ends in.
void chooseArc(JointPlace& place, const Chain& chain, const std::string& handle) {
    const std::size_t bar = handle.rfind('/');
    if (bar == std::string::npos) return;
    int step = -1;
    const char* end = handle.data() + handle.size();
    const auto read = std::from_chars(handle.data() + bar + 1, end, step);
    if (read.ec != std::errc() || read.ptr != end || step < place.step || step > place.lastStep) return;
    const ChainStep& arc = chain.steps[static_cast<std::size_t>(step)];
    if (arc.kind != ChainStep::Kind::bend || arc.q0 < 0) return;
    place.arcStep = step;
    place.arcFirst = arc.q0;
}

}  // namespace

std::unique_ptr<Drag> makeJointDrag(const DragStart& start, const SetupMount& mount, QString& whyNot) {
    JointPlace place = placeOf(mount.chain, start.pick.part, start.pick.piece);
    if (place.first < 0 || place.step < 0) return nullptr;
    chooseArc(place, mount.chain, start.handle);
    const Freedom& f = mount.chain.freedoms[static_cast<std::size_t>(place.first)];
    if (f.kept) {
        whyNot = Drag::tr("%1 is kept: release it to move it.").arg(freedomWords(mount.chain, f));
        return nullptr;
    }
    return std::make_unique<JointDrag>(start, mount, place);
}

}  // namespace hither
