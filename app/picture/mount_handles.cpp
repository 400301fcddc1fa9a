#include "app/picture/mount_handles.h"

#include <algorithm>
#include <cmath>

#include "app/picture/handle_shapes.h"
#include "core/geometry/distance.h"

namespace hither {

namespace {

constexpr double leastRadius_m = 0.016, mostRadius_m = 0.045, gap_m = 0.007;
constexpr double outletOff_m = 0.018;     // beyond a stud

/// What a handle is made of, and how large: the same words, the same mesh.
enum class Shape { turn, halo, slide, face };

class HandleAdder {
public:
    HandleAdder(std::vector<PictureItem>& items, const SetupMount& mount, const HeldOn& held, const ChainPoses& poses, const PictureWishes& wishes, MeshStore& store)
        : items_(items), mount_(mount), chain_(mount.chain), held_(held), poses_(poses), wishes_(wishes), store_(store) {}

    void addAll() {
        for (std::size_t k = 0; k < chain_.steps.size(); ++k) {
            const ChainStep& step = chain_.steps[k];
            if (step.q0 < 0 || !wanted(step.part) || !movable(step)) continue;
            addStep(k, step);
        }
        const int last = static_cast<int>(chain_.parts.size()) - 1;
        if (last >= 0 && !chain_.face && chain_.parts.back()->outlet) addOutlet(last);
    }

private:
    bool wanted(int part) const {
        const Picked& p = wishes_.picked;
        if (p.id != mount_.mount.id) return false;
        if (p.kind == Picked::Kind::mount) return true;
        return (p.kind == Picked::Kind::part || p.kind == Picked::Kind::joint || p.kind == Picked::Kind::outlet) && p.part == part;
    }
    bool movable(const ChainStep& step) const {
        const int count = step.kind == ChainStep::Kind::ball ? 3 : step.kind == ChainStep::Kind::bend ? 2 : 1;
        for (int i = 0; i < count; ++i)
            if (!chain_.freedoms[static_cast<std::size_t>(step.q0 + i)].kept) return true;
        return false;
    }
    /// How far the pieces round a point reach from it, of the part and (at a mate) of the one before.
    double reachAt(const Vec3& p_W, int part) const {
        double reach = 0;
        for (const ChainSolid& s : chain_.solids) {
            if (s.part != part && s.part != part - 1) continue;
            const Solid placed = s.solid.movedBy(poses_.X_WF[static_cast<std::size_t>(s.frame)]);
            if (distance(Solid::sphere(p_W, 1e-6), placed).distance > 0.003) continue;
            const bool round = s.solid.kind == SolidKind::cylinder || s.solid.kind == SolidKind::capsule || s.solid.kind == SolidKind::sphere;
            reach = std::max(reach, round ? s.solid.radius : s.solid.half.maxCoeff());
        }
        return reach;
    }
    double radiusAt(const Vec3& p_W, int part) const { return std::clamp(reachAt(p_W, part) + gap_m, leastRadius_m, mostRadius_m); }

    void addStep(std::size_t k, const ChainStep& step) {
        const Freedom& freedom = chain_.freedoms[static_cast<std::size_t>(step.q0)];
        const Pose& X = poses_.X_WF[k + 1];   // after the joint: the handle goes with what it moves
        const double radius = radiusAt(X.translation(), step.part);
        if (step.element < 0 && freedom.of != Freedom::Of::clocking) {
            addPlace(freedom);
        } else if (freedom.of == Freedom::Of::clocking) {
            add(k, clockingJoint, step.part, Shape::turn, radius, X);
        } else if (step.kind == ChainStep::Kind::turn) {
            // The ball a little aside of the direction in which the next piece goes on.
            const Vec3 z = Vec3::UnitZ(), side = step.axis.cross(z);
            const Vec3 hint = side.norm() > 0.1 ? Vec3(0.94 * side + 0.34 * z) : Vec3::UnitX();
            add(k, freedom.joint, step.part, Shape::turn, radius, X * frameFromZ(Vec3::Zero(), step.axis, hint));
        } else if (step.kind == ChainStep::Kind::slide) {
            const Vec3 away = std::abs(step.axis.y()) < 0.9 ? Vec3::UnitY() : Vec3::UnitX();
            add(k, freedom.joint, step.part, Shape::slide, radius, X * along(step.axis, away));
        } else {
            add(k, freedom.joint, step.part, Shape::halo, radius, X);
        }
    }
    /// x along a direction, z as near to another as it can.
    static Pose along(const Vec3& x, const Vec3& zHint) {
        const Vec3 z = (zHint - zHint.dot(x) * x).normalized();
        return frameFromZ(Vec3::Zero(), z, x);
    }
    void addPlace(const Freedom& freedom) {
        const Pose& X = poses_.X_WF[static_cast<std::size_t>(chain_.partFrame.front())];
        const auto number = static_cast<std::size_t>(freedom.of) + 10000;
        const double half = held_.attachment ? 0.5 * held_.attachment->outside_m.value.value_or(0.0) : 0.0;
        double wall = 0.008;
        if (chain_.grip) {
            if (const auto* rail = std::get_if<RailGrip>(&*chain_.grip)) wall = rail->wall_m;
            if (const auto* edge = std::get_if<EdgeGrip>(&*chain_.grip)) wall = edge->wall_m;
        }
        switch (freedom.of) {
            case Freedom::Of::along: {
                const bool rail = chain_.grip && std::holds_alternative<RailGrip>(*chain_.grip);
                // On the tube's far side; outside a plate's border; beside a clip.
                const Vec3 away = rail ? Vec3(-Vec3::UnitZ()) : Vec3(-Vec3::UnitY());
                const double aside = rail ? 2 * half + wall + 0.012 : wall + 0.016;
                add(number, placeJoint, 0, Shape::slide, aside, X * along(Vec3::UnitX(), away));
                break;
            }
            case Freedom::Of::around:
                add(number, aroundJoint, 0, Shape::turn, std::clamp(half + wall + 0.012, leastRadius_m, 0.09),
                    X * translation(Vec3(0, 0, -half)) * frameFromZ(Vec3::Zero(), Vec3::UnitX(), Vec3(0, -0.8, 0.6)));
                break;
            case Freedom::Of::x: {
                double size = 0.06;
                if (const auto* face = chain_.grip ? std::get_if<FaceGrip>(&*chain_.grip) : nullptr) size = std::max(face->sizeX_m, face->sizeY_m);
                add(number, placeJoint, 0, Shape::face, std::clamp(0.5 * size + 0.010, leastRadius_m, 0.075), X * translation(Vec3(0, 0, 0.004)));
                break;
            }
            default: break;  // y and yaw go with x: one handle for the face
        }
    }
    void add(std::size_t number, const std::string& joint, int part, Shape shape, double size, const Pose& X_W) {
        const double rounded = std::round(1000 * size) / 1000;
        PictureItem item;
        item.key = "mount/" + mount_.mount.id + "/handle/" + std::to_string(part) + "/" + joint + "/" + std::to_string(number);
        item.mesh = store_.get("handle/" + std::to_string(static_cast<int>(shape)) + "/" + std::to_string(std::lround(1000 * size)), [&] {
            switch (shape) {
                case Shape::turn: return turnHandle(rounded);
                case Shape::halo: return haloHandle(rounded);
                case Shape::slide: return slideHandle(rounded);
                case Shape::face: break;
            }
            return faceHandle(rounded);
        });
        item.X_W = X_W;
        item.look = Look::jointHandle;
        item.pick = Picked::jointOf(mount_.mount.id, part, joint);
        finish(item);
    }
    void addOutlet(int part) {
        PictureItem item;
        item.key = "mount/" + mount_.mount.id + "/outlet/" + std::to_string(part);
        item.mesh = store_.get("handle/outlet", [] { return outletHandle(); });
        item.X_W = poses_.last() * translation(Vec3(0, 0, outletOff_m));
        item.look = Look::outletHandle;
        item.pick = Picked::outletOf(mount_.mount.id, part);
        finish(item);
    }
    void finish(PictureItem& item) {
        item.outlined = wishes_.picked == item.pick || wishes_.hovered == item.pick;
        item.castsShadow = false;
        items_.push_back(std::move(item));
    }

    std::vector<PictureItem>& items_;
    const SetupMount& mount_;
    const Chain& chain_;
    const HeldOn& held_;
    const ChainPoses& poses_;
    const PictureWishes& wishes_;
    MeshStore& store_;
};

}  // namespace

void addMountHandles(std::vector<PictureItem>& items, const SetupMount& mount, const HeldOn& held, const ChainPoses& poses, const PictureWishes& wishes,
                     MeshStore& store) {
    HandleAdder(items, mount, held, poses, wishes, store).addAll();
}

}  // namespace hither
