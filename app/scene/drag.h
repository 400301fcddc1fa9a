#pragma once
#include <memory>

#include <QCoreApplication>
#include <QPointF>
#include <QSize>
#include <QString>

#include "app/document/picked.h"
#include "app/picture/camera.h"
#include "app/scene/drag_maths.h"
#include "core/chain/setup.h"
#include "core/plan/edits/edited.h"

namespace hither {

/// How far a turn goes with the pointer's way up, rad a pixel, where its plane is seen edge-on.
constexpr double turnPerPixel = 0.008;

/// What a drag begins with: the setup and the camera as they are, what was taken hold of and where.
struct DragStart {
    std::shared_ptr<const Setup> setup;
    Camera camera;
    QSize size;
    UnitSystem units = UnitSystem::metric;
    Picked pick;
    Vec3 grabbed_W = Vec3::Zero();
    QPointF at;
    std::string handle;          ///< key of the picture's item; a neck's handle ends in the number of its arc's step in the chain

    Sight sight(QPointF pixel) const;
    Vec3 forward_W() const;      ///< unit, into the picture
    Vec3 up_W() const;           ///< unit, upward in the picture
};

/// One drag, from taking hold to letting go.
class Drag {
    Q_DECLARE_TR_FUNCTIONS(Drag)

public:
    explicit Drag(DragStart start) : start_(std::move(start)) {}
    virtual ~Drag() = default;
    Drag(const Drag&) = delete;
    Drag& operator=(const Drag&) = delete;

    /// Words for undoing it.
    virtual QString label() const = 0;
    /// The edit of the plan as it was at the start that has the thing follow the pointer, and one line about it.
    struct Step { Edited edit; QString hint; };
    virtual Step to(const Plan& start, QPointF at, bool shift) = 0;

protected:
    const DragStart start_;
};

/// The drag of what was picked: a joint's handle, the switch, a grip. Nothing when it cannot be dragged; then
/// `whyNot` says why, unless it is simply nothing that moves.
std::unique_ptr<Drag> makeDrag(const DragStart& start, QString& whyNot);

std::unique_ptr<Drag> makeJointDrag(const DragStart& start, const SetupMount& mount, QString& whyNot);
std::unique_ptr<Drag> makeSwitchDrag(const DragStart& start, const SetupMount& mount, QString& whyNot);
std::unique_ptr<Drag> makePlaceDrag(const DragStart& start, const SetupMount& mount, bool around, QString& whyNot);

/// "Single-lock arm, 130 mm halves: elbow": how a freedom is called on screen.
QString freedomWords(const Chain& chain, const Freedom& freedom);

}  // namespace hither
