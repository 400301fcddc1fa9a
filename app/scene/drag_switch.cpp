#include <algorithm>

#include <QStringList>

#include "app/scene/drag.h"
#include "core/plan/edits/joints.h"
#include "core/solve/solve.h"
#include "core/units/quantity.h"

namespace hither {
namespace {

constexpr double counts_m = 0.001;    // shorter than that is there
constexpr double counts_rad = 0.0175;
constexpr int fewStarts = 6;

class SwitchDrag : public Drag {
    Q_DECLARE_TR_FUNCTIONS(SwitchDrag)

public:
    SwitchDrag(DragStart start, const SetupMount& mount) : Drag(std::move(start)), mount_(mount), q_(mount.q) {
        const Pose X_WF = forward(mount.chain, mount.q).last();
        face_W_ = X_WF.translation();
        direction_W_ = (X_WF.linear() * mount.chain.operatingAxis).normalized();
    }

    QString label() const override { return tr("Drag the switch"); }

    Step to(const Plan& start, QPointF at, bool shift) override {
        const Vec3 sight = start_.forward_W();
        const auto from = onPlane(start_.sight(start_.at), face_W_, sight), now = onPlane(start_.sight(at), face_W_, sight);
        if (!from || !now) return {};
        Vec3 move = *now - *from;
        if (shift) move = start_.up_W() * start_.up_W().dot(move);
        const Target target{face_W_ + move, direction_W_, std::nullopt};
        SolveOptions options;
        options.most = 1;
        options.restarts = 0;
        SolveReport report = solve(mount_.chain, q_, target, options);
        if (report.solutions.empty()) {
            // Perhaps another way of standing reaches it.
            options.restarts = fewStarts;
            SolveReport wider = solve(mount_.chain, q_, target, options);
            if (!wider.solutions.empty()) report = std::move(wider);
        }
        const Solution* found = !report.solutions.empty() ? &report.solutions.front() : report.nearest ? &*report.nearest : nullptr;
        if (!found) return {};
        q_ = found->q;
        return {applySolved(start, start_.setup->option, mount_.mount.id, mount_.chain, q_), hint(report, *found)};
    }

private:
    QString hint(const SolveReport& report, const Solution& found) const {
        QStringList missing;
        if (found.position_m > counts_m) missing << tr("%1 short").arg(QString::fromStdString(printLength(found.position_m, start_.units)));
        if (found.angle_rad > counts_rad) missing << tr("%1 off its direction").arg(QString::fromStdString(printAngle(found.angle_rad)));
        if (missing.isEmpty()) return tr("The switch follows (Shift: only up and down)");
        QString out = tr("It does not get there: %1").arg(missing.join(tr(", ")));
        QStringList stops;
        for (const Stopped& s : report.stopped) {
            const QString name = freedomWords(mount_.chain, mount_.chain.freedoms[static_cast<std::size_t>(s.freedom)]);
            if (!stops.contains(name)) stops << name;
        }
        if (!stops.isEmpty()) out += tr("; at its stop: %1").arg(stops.mid(0, 2).join(tr(", ")));
        else if (report.reachShort_m > counts_m) out += tr("; the mount is too short");
        return out;
    }

    const SetupMount& mount_;
    Eigen::VectorXd q_;
    Vec3 face_W_, direction_W_;
};

}  // namespace

std::unique_ptr<Drag> makeSwitchDrag(const DragStart& start, const SetupMount& mount, QString& whyNot) {
    const auto& freedoms = mount.chain.freedoms;
    if (std::all_of(freedoms.begin(), freedoms.end(), [](const Freedom& f) { return f.kept; })) {
        whyNot = freedoms.empty() ? Drag::tr("Nothing in this mount can move.") : Drag::tr("Everything in this mount is kept: release a joint to move the switch.");
        return nullptr;
    }
    return std::make_unique<SwitchDrag>(start, mount);
}

}  // namespace hither
