#include "core/chain/placement.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "core/units/quantity.h"
#include "core/units/tolerances.h"

namespace hither {
namespace {

constexpr double facePlate_m = 0.004;                   // thickness of a pad or base plate on a face
constexpr double clothPlate_m = 0.003;                  // a cloth clip's two plates ...
constexpr double clothPlateX_m = 0.030, clothPlateY_m = 0.020;  // ... and their size; common practice, no source
constexpr double shortest_m = 1e-6;                     // lines and directions shorter than this have no direction

struct Range { double min = 0, max = 0; };

// Middle of a grip of `width` along a line of `length`: half the width from either end; only the
// middle is left when the grip is wider than the line.
Range alongRange(double length, double width) {
    if (width > length) return {length / 2, length / 2};
    return {width / 2, length - width / 2};
}
/// The stretch of a rail or edge that a grip may use without crossing one that is blocked all round:
/// the one it stands in, else the nearest. Without any, the whole range.
Range freeStretch(Range whole, double width, const Attachment& attachment, double along) {
    std::vector<Range> taken;
    for (const Blocked& b : attachment.blocked)
        if (b.wholeTurn || attachment.kind != AttachmentKind::rail) taken.push_back({b.from_m - width / 2, b.to_m + width / 2});
    std::sort(taken.begin(), taken.end(), [](const Range& a, const Range& b) { return a.min < b.min; });
    std::optional<Range> best;
    double bestGap = 0, from = whole.min;
    const auto offer = [&](double min, double max) {
        if (max < min) return;
        const double gap = std::max({0.0, min - along, along - max});
        if (!best || gap < bestGap) { best = Range{min, max}; bestGap = gap; }
    };
    for (const Range& t : taken) {
        offer(from, std::min(whole.max, t.min));
        from = std::max(from, t.max);
    }
    offer(from, whole.max);
    return best.value_or(whole);
}
Range acrossRange(double size, double footprint) {
    const double room = std::max(0.0, (size - footprint) / 2);
    return {-room, room};
}

void addFixed(Chain& chain, const Pose& X) {
    ChainStep step;
    step.kind = ChainStep::Kind::fixed;
    step.X = X;
    chain.steps.push_back(step);
}

void addFreedom(Chain& chain, std::vector<double>& values, ChainStep::Kind kind, const Vec3& axis, const Freedom& freedom, double value) {
    ChainStep step;
    step.kind = kind;
    step.axis = axis;
    step.q0 = chain.freedomCount();
    chain.steps.push_back(step);
    chain.freedoms.push_back(freedom);
    values.push_back(value);
}

Freedom slideFreedom(Freedom::Of of, Range range, bool kept) {
    Freedom f;
    f.of = of;
    f.isAngle = false;
    f.min = range.min;
    f.max = range.max;
    f.kept = kept;
    return f;
}
Freedom turnFreedom(Freedom::Of of, bool kept) {
    Freedom f;
    f.of = of;
    f.min = -pi;
    f.max = pi;
    f.fullTurn = true;
    f.kept = kept;
    return f;
}

double widthOf(const Grip& grip) {
    if (const auto* rail = std::get_if<RailGrip>(&grip)) return rail->width_m;
    if (const auto* edge = std::get_if<EdgeGrip>(&grip)) return edge->width_m;
    return 0;
}

}  // namespace

std::optional<std::string> addPlacement(Chain& chain, std::vector<double>& values, const Attachment& attachment,
                                        const Pose& X_WGroup, const Grip& grip, const Placement& place, bool kept) {
    using Kind = ChainStep::Kind;
    const Vec3 line = attachment.b - attachment.a;
    const double length = line.norm();
    const bool hasLine = attachment.kind != AttachmentKind::face;
    if (hasLine && !(length > shortest_m)) return "attachment \"" + attachment.id + "\" has no length";
    const Vec3 x = hasLine ? Vec3(line / length) : Vec3::UnitX();
    const Vec3& across = attachment.kind == AttachmentKind::rail ? attachment.reference : attachment.up;
    const Vec3 clear = hasLine && attachment.kind != AttachmentKind::cloth ? Vec3(across - across.dot(x) * x) : across;
    if (!(clear.norm() > shortest_m)) {
        return "attachment \"" + attachment.id + "\" has no direction away from it: " +
               (attachment.kind == AttachmentKind::rail ? "its reference" : "its up direction") + " is zero or along the line";
    }
    switch (attachment.kind) {
        case AttachmentKind::rail: {
            addFixed(chain, X_WGroup * frameFromZ(attachment.a, clear, x));
            addFreedom(chain, values, Kind::slide, Vec3::UnitX(),
                       slideFreedom(Freedom::Of::along, freeStretch(alongRange(length, widthOf(grip)), widthOf(grip), attachment, place.along_m), kept), place.along_m);
            Freedom around = turnFreedom(Freedom::Of::around, kept);
            if (attachment.section == Section::square) around.step = pi / 2;
            addFreedom(chain, values, Kind::turn, Vec3::UnitX(), around, place.around_rad);
            addFixed(chain, translation(Vec3(0, 0, 0.5 * attachment.outside_m.value.value_or(0.0))));
            break;
        }
        case AttachmentKind::edge: {
            const Vec3 up = clear.normalized();
            const Pose X_SAbove = frameFromZ(attachment.a, up, x);
            const Pose X_SBelow = frameFromZ(attachment.a - attachment.thickness_m.value.value_or(0.0) * up, -up, -x);
            addFixed(chain, X_WGroup * (place.fromBelow ? X_SBelow : X_SAbove));
            addFreedom(chain, values, Kind::slide, place.fromBelow ? Vec3(-Vec3::UnitX()) : Vec3(Vec3::UnitX()),
                       slideFreedom(Freedom::Of::along, freeStretch(alongRange(length, widthOf(grip)), widthOf(grip), attachment, place.along_m), kept), place.along_m);
            break;
        }
        case AttachmentKind::face: {
            const auto* face = std::get_if<FaceGrip>(&grip);
            assert(face);
            addFixed(chain, X_WGroup * frameFromZ(attachment.a, attachment.up, attachment.reference));
            addFreedom(chain, values, Kind::slide, Vec3::UnitX(),
                       slideFreedom(Freedom::Of::x, acrossRange(attachment.sizeX_m, face->sizeX_m), kept), place.x_m);
            addFreedom(chain, values, Kind::slide, Vec3::UnitY(),
                       slideFreedom(Freedom::Of::y, acrossRange(attachment.sizeY_m, face->sizeY_m), kept), place.y_m);
            addFreedom(chain, values, Kind::turn, Vec3::UnitZ(), turnFreedom(Freedom::Of::yaw, kept), place.yaw_rad);
            break;
        }
        case AttachmentKind::cloth: {
            const Pose X_SGrip = frameFromZ(attachment.a, attachment.up, x);
            addFixed(chain, X_WGroup * X_SGrip);
            // The line need not lie in the frame's xy plane exactly; the grip moves along the line.
            addFreedom(chain, values, Kind::slide, X_SGrip.linear().transpose() * x,
                       slideFreedom(Freedom::Of::along, {0, length}, kept), place.along_m);
            break;
        }
    }
    return std::nullopt;
}

std::vector<Solid> jawSolids(const Grip& grip, const Attachment& attachment) {
    std::vector<Solid> jaws;
    if (const auto* rail = std::get_if<RailGrip>(&grip)) {
        const double half = 0.5 * attachment.outside_m.value.value_or(0.0);
        const Vec3 reach(rail->width_m / 2, 0, 0), middle(0, 0, -half);
        if (attachment.section == Section::round) {
            jaws.push_back(Solid::cylinder(middle - reach, middle + reach, half + rail->wall_m));
        } else {
            jaws.push_back(Solid::box(translation(middle), Vec3(rail->width_m / 2, half + rail->wall_m, half + rail->wall_m)));
        }
    } else if (const auto* edge = std::get_if<EdgeGrip>(&grip)) {
        // The plate fills y > 0, z from -thickness to 0 of the grip's frame.
        const double board = attachment.thickness_m.value.value_or(0.0), wall = edge->wall_m, throat = edge->throat_m;
        const double halfX = edge->width_m / 2, halfY = (throat + wall) / 2, y = (throat - wall) / 2;
        jaws.push_back(Solid::box(translation(Vec3(0, y, wall / 2)), Vec3(halfX, halfY, wall / 2)));
        jaws.push_back(Solid::box(translation(Vec3(0, y, -board - wall / 2)), Vec3(halfX, halfY, wall / 2)));
        jaws.push_back(Solid::box(translation(Vec3(0, -wall / 2, -board / 2)), Vec3(halfX, wall / 2, board / 2 + wall)));
    } else if (const auto* face = std::get_if<FaceGrip>(&grip)) {
        jaws.push_back(Solid::box(translation(Vec3(0, 0, facePlate_m / 2)), Vec3(face->sizeX_m / 2, face->sizeY_m / 2, facePlate_m / 2)));
    } else {
        const double cloth = attachment.thickness_m.value.value_or(0.0);
        const Vec3 half(clothPlateX_m / 2, clothPlateY_m / 2, clothPlate_m / 2);
        jaws.push_back(Solid::box(translation(Vec3(0, 0, clothPlate_m / 2)), half));
        jaws.push_back(Solid::box(translation(Vec3(0, 0, -cloth - clothPlate_m / 2)), half));
    }
    return jaws;
}

const Grip* gripFor(const Part& part, const Attachment& attachment) {
    const Grip* first = nullptr;
    for (const Grip& grip : part.grips) {
        const bool fits = (attachment.kind == AttachmentKind::rail && std::holds_alternative<RailGrip>(grip)) ||
                          (attachment.kind == AttachmentKind::edge && std::holds_alternative<EdgeGrip>(grip)) ||
                          (attachment.kind == AttachmentKind::face && std::holds_alternative<FaceGrip>(grip)) ||
                          (attachment.kind == AttachmentKind::cloth && std::holds_alternative<ClothGrip>(grip));
        if (!fits) continue;
        const auto* rail = std::get_if<RailGrip>(&grip);
        if (!rail) return &grip;
        const bool section = attachment.section == Section::round ? rail->round : rail->square;
        if (section && attachment.outside_m.value && rail->min_m.value && rail->max_m.value &&
            *attachment.outside_m.value >= *rail->min_m.value - tolerance::limitSlack &&
            *attachment.outside_m.value <= *rail->max_m.value + tolerance::limitSlack) return &grip;
        if (!first) first = &grip;
    }
    return first;
}

}  // namespace hither
