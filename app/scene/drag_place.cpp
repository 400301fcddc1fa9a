#include <algorithm>

#include "app/scene/drag.h"
#include "app/scene/placement_at.h"
#include "core/plan/edits/mounts.h"

namespace hither {
namespace {

class PlaceDrag : public Drag {
    Q_DECLARE_TR_FUNCTIONS(PlaceDrag)

public:
    PlaceDrag(DragStart start, const SetupMount& mount, const Attachment& attachment, bool around)
        : Drag(std::move(start)), mount_(mount), attachment_(attachment), X_W_(attachmentFrame_W(start_.setup->situation, mount.mount.support, attachment)),
          around_(around), place_(mount.mount.place), last_(start_.at) {}

    QString label() const override {
        switch (attachment_.kind) {
            case AttachmentKind::rail: return tr("Move the grip on the rail");
            case AttachmentKind::edge: return tr("Move the grip along the edge");
            case AttachmentKind::face: return tr("Move the grip on the face");
            case AttachmentKind::cloth: break;
        }
        return tr("Move the grip along the cloth");
    }

    Step to(const Plan& start, QPointF at, bool shift) override {
        const bool turn = shift || around_;
        if (attachment_.kind == AttachmentKind::face) turn ? yaw(at) : onFace(at);
        else if (attachment_.kind == AttachmentKind::rail && turn) round(at);
        else along(at);
        last_ = at;
        return {setPlacement(start, start_.setup->option, mount_.mount.id, mount_.mount.support, mount_.mount.attachment, place_), hint(turn)};
    }

private:
    const Freedom* freedom(Freedom::Of of) const {
        const auto& all = mount_.chain.freedoms;
        const auto found = std::find_if(all.begin(), all.end(), [of](const Freedom& f) { return f.of == of; });
        return found == all.end() ? nullptr : &*found;
    }
    double within(Freedom::Of of, double value) const {
        const Freedom* f = freedom(of);
        return f ? clicked(*f, value) : value;
    }

    void along(QPointF at) {
        const Vec3 x = X_W_.linear().col(0);
        const auto from = alongAxis(start_.sight(start_.at), X_W_.translation(), x), now = alongAxis(start_.sight(at), X_W_.translation(), x);
        if (from && now) place_.along_m = within(Freedom::Of::along, mount_.mount.place.along_m + *now - *from);
    }
    void round(QPointF at) {
        turn_ += turnStep(at, X_W_.translation(), X_W_.linear().col(0));
        place_.around_rad = within(Freedom::Of::around, mount_.mount.place.around_rad + turn_);
    }
    void onFace(QPointF at) {
        const Vec3 up = X_W_.linear().col(2);
        const auto from = onPlane(start_.sight(start_.at), start_.grabbed_W, up), now = onPlane(start_.sight(at), start_.grabbed_W, up);
        if (!from || !now) return;
        const Vec3 move = X_W_.linear().transpose() * (*now - *from);
        place_.x_m = within(Freedom::Of::x, mount_.mount.place.x_m + move.x());
        place_.y_m = within(Freedom::Of::y, mount_.mount.place.y_m + move.y());
    }
    void yaw(QPointF at) {
        turn_ += turnStep(at, forward(mount_.chain, mount_.q).X_WF[static_cast<std::size_t>(mount_.chain.partFrame.front())].translation(), X_W_.linear().col(2));
        place_.yaw_rad = within(Freedom::Of::yaw, mount_.mount.place.yaw_rad + turn_);
    }
    double turnStep(QPointF at, const Vec3& pivot, const Vec3& axis) const {
        return turnBetween(start_.sight(last_), start_.sight(at), pivot, axis, start_.grabbed_W).value_or((last_.y() - at.y()) * turnPerPixel);
    }

    QString hint(bool turn) const {
        const QString name = QString::fromStdString(attachment_.name);
        const auto length = [&](double v) { return QString::fromStdString(printLength(v, start_.units)); };
        if (attachment_.kind == AttachmentKind::face)
            return turn ? tr("%1: turned by %2").arg(name, QString::fromStdString(printAngle(place_.yaw_rad)))
                        : tr("%1: %2 and %3 from its middle (Shift turns it)").arg(name, length(place_.x_m), length(place_.y_m));
        if (attachment_.kind == AttachmentKind::rail)
            return turn ? tr("%1: %2 round it").arg(name, QString::fromStdString(printAngle(place_.around_rad)))
                        : tr("%1: %2 along it (Shift turns it round)").arg(name, length(place_.along_m));
        return tr("%1: %2 along it").arg(name, length(place_.along_m));
    }

    const SetupMount& mount_;
    const Attachment& attachment_;
    Pose X_W_;
    bool around_;
    Placement place_;
    QPointF last_;
    double turn_ = 0;
};

}  // namespace

std::unique_ptr<Drag> makePlaceDrag(const DragStart& start, const SetupMount& mount, bool around, QString& whyNot) {
    const Support* support = start.setup->situation.support(mount.mount.support);
    const Attachment* attachment = support ? support->attachment(mount.mount.attachment) : nullptr;
    if (!attachment) return nullptr;
    if (mount.mount.placeKept) {
        whyNot = Drag::tr("The grip's place is kept: release it to move it.");
        return nullptr;
    }
    return std::make_unique<PlaceDrag>(start, mount, *attachment, around);
}

}  // namespace hither
