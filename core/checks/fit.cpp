#include <algorithm>
#include <cmath>

#include "core/checks/checks.h"
#include "core/checks/subjects.h"
#include "core/units/tolerances.h"

namespace hither {
namespace {

/// Zones and parts are drawn to about this: a shallower overlap is a drawing's, not a part in the way.
constexpr double zoneTouch_m = 0.0005;

/// A size that a grip takes, against the range it takes. Sizes are met or missed: the last fifth of
/// a clamp's range holds as well as its middle.
Finding judgeSize(Finding f, const Figure& size, const Figure& least, const Figure& most) {
    f.measure = Measure::length;
    f.basis = weakest(size.basis.kind, weakest(least.basis.kind, most.basis.kind));
    if (!size.known() || !most.known()) {
        f.verdict = Verdict::unknown;
        f.basis = BasisKind::unknown;
        f.key += size.known() ? ".range_unknown" : ".size_unknown";
        return f;
    }
    const double low = least.value.value_or(0.0);
    f.value = *size.value;
    f.facts["min"] = {low, Measure::length};
    f.facts["max"] = {*most.value, Measure::length};
    if (*size.value < low - tolerance::limitSlack) {
        f.limit = low;
        f.verdict = Verdict::misses;
        f.key += ".too_small";
    } else if (*size.value > *most.value + tolerance::limitSlack) {
        f.limit = *most.value;
        f.verdict = Verdict::misses;
        f.key += ".too_large";
    } else {
        f.limit = *most.value;
        f.verdict = Verdict::meets;
        f.key += ".fits";
    }
    return f;
}

double gripWidth(const Grip& grip) {
    if (const auto* g = std::get_if<RailGrip>(&grip)) return g->width_m;
    if (const auto* g = std::get_if<EdgeGrip>(&grip)) return g->width_m;
    return 0.0;
}

void checkGripSize(const SetupMount& m, const Support& support, const Attachment& at, std::vector<Finding>& out) {
    const std::vector<Subject> about{partSubject(m, 0), attachmentSubject(support, at)};
    const Grip& grip = *m.chain.grip;
    if (const auto* rail = std::get_if<RailGrip>(&grip)) {
        const bool takes = at.section == Section::round ? rail->round : rail->square;
        if (!takes) {
            Finding f = makeFinding(CheckKind::fit, "fit.section", about);
            f.verdict = Verdict::misses;
            f.basis = m.chain.parts[0]->dimensionsBasis.kind;
            f.words["section"] = at.section == Section::round ? "round" : "square";
            out.push_back(f);
        }
        out.push_back(judgeSize(makeFinding(CheckKind::fit, "fit.tube", about), at.outside_m, rail->min_m, rail->max_m));
    } else if (const auto* edge = std::get_if<EdgeGrip>(&grip)) {
        out.push_back(judgeSize(makeFinding(CheckKind::fit, "fit.plate", about), at.thickness_m, edge->min_m, edge->max_m));
        if (at.depth_m > 0) {
            Finding f = makeFinding(CheckKind::fit, "fit.throat", about);
            f.measure = Measure::length;
            f.value = edge->throat_m;
            f.limit = at.depth_m;
            f.basis = weakest(m.chain.parts[0]->dimensionsBasis.kind, support.basis);
            f.verdict = *f.value <= *f.limit + tolerance::limitSlack ? Verdict::meets : Verdict::misses;
            f.key += f.verdict == Verdict::meets ? ".fits" : ".too_deep";
            out.push_back(f);
        }
    } else if (const auto* face = std::get_if<FaceGrip>(&grip)) {
        // The footprint turned by yaw must lie inside the rectangle: half extents along its axes.
        const double c = std::abs(std::cos(m.mount.place.yaw_rad)), s = std::abs(std::sin(m.mount.place.yaw_rad));
        const double halfX = 0.5 * (face->sizeX_m * c + face->sizeY_m * s), halfY = 0.5 * (face->sizeX_m * s + face->sizeY_m * c);
        const double over = std::max(std::abs(m.mount.place.x_m) + halfX - 0.5 * at.sizeX_m,
                                     std::abs(m.mount.place.y_m) + halfY - 0.5 * at.sizeY_m);
        Finding f = makeFinding(CheckKind::fit, "fit.footprint", about);
        f.measure = Measure::length;
        f.value = std::max(0.0, over);
        f.limit = 0.0;
        f.basis = weakest(m.chain.parts[0]->dimensionsBasis.kind, support.basis);
        f.verdict = over <= tolerance::limitSlack ? Verdict::meets : Verdict::misses;
        f.key += f.verdict == Verdict::meets ? ".fits" : ".overhangs";
        out.push_back(f);
    } else if (const auto* cloth = std::get_if<ClothGrip>(&grip)) {
        out.push_back(judgeSize(makeFinding(CheckKind::fit, "fit.cloth", about), at.thickness_m, Figure{0.0, {BasisKind::measured, {}}}, cloth->max_m));
    }
}

bool angleWithin(double angle, double from, double to) {
    const double span = std::remainder(to - from, 2 * pi), turn = std::remainder(angle - from, 2 * pi);
    const double positiveSpan = span < 0 ? span + 2 * pi : span, positiveTurn = turn < 0 ? turn + 2 * pi : turn;
    return positiveTurn <= positiveSpan;
}

void checkSpan(const SetupMount& m, const Support& support, const Attachment& at, std::vector<Finding>& out) {
    if (at.kind == AttachmentKind::face) return;
    const double half = 0.5 * gripWidth(*m.chain.grip), along = m.mount.place.along_m;
    Finding f = makeFinding(CheckKind::fit, "fit.span", {partSubject(m, 0), attachmentSubject(support, at)});
    f.measure = Measure::length;
    f.basis = weakest(m.chain.parts[0]->dimensionsBasis.kind, support.basis);
    f.limit = 0.0;
    const double over = std::max({0.0, half - along, along + half - at.length_m()});
    f.value = over;
    f.verdict = over <= tolerance::limitSlack ? Verdict::meets : Verdict::misses;
    f.key += f.verdict == Verdict::meets ? ".inside" : ".over_end";
    out.push_back(f);
    for (const Blocked& blocked : at.blocked) {
        const double overlap = std::min(along + half, blocked.to_m) - std::max(along - half, blocked.from_m);
        const bool turned = blocked.wholeTurn || at.kind != AttachmentKind::rail ||
                            angleWithin(m.mount.place.around_rad, blocked.sectorFrom_rad, blocked.sectorTo_rad);
        if (overlap <= tolerance::limitSlack || !turned) continue;
        Finding b = makeFinding(CheckKind::fit, "fit.blocked", {partSubject(m, 0), attachmentSubject(support, at)});
        b.id += "/" + std::to_string(&blocked - at.blocked.data());
        b.measure = Measure::length;
        b.value = overlap;
        b.limit = 0.0;
        b.basis = f.basis;
        b.verdict = Verdict::misses;
        b.words["why"] = blocked.why.empty() ? "it is not free there" : blocked.why;
        out.push_back(b);
    }
}

void checkNeighbours(const Setup& setup, std::size_t index, const Support& support, const Attachment& at, std::vector<Finding>& out) {
    const SetupMount& m = setup.mounts[index];
    if (at.kind == AttachmentKind::face) return;  // footprints on a face are judged as solids by Clearance
    for (std::size_t j = index + 1; j < setup.mounts.size(); ++j) {
        const SetupMount& other = setup.mounts[j];
        if (other.chain.support != m.chain.support || other.chain.attachment != m.chain.attachment || !other.chain.grip) continue;
        const double need = 0.5 * (gripWidth(*m.chain.grip) + gripWidth(*other.chain.grip));
        const double apart = std::abs(m.mount.place.along_m - other.mount.place.along_m);
        Finding f = makeFinding(CheckKind::fit, "fit.neighbour", {partSubject(m, 0), partSubject(other, 0), attachmentSubject(support, at)});
        f.measure = Measure::length;
        f.value = apart;
        f.limit = need;
        f.basis = weakest(m.chain.parts[0]->dimensionsBasis.kind, other.chain.parts[0]->dimensionsBasis.kind);
        f.verdict = apart >= need - tolerance::limitSlack ? Verdict::meets : Verdict::misses;
        f.key += f.verdict == Verdict::meets ? ".apart" : ".overlap";
        out.push_back(f);
    }
}

const char* faultKey(MateFault fault) {
    switch (fault) {
        case MateFault::none: return "fit.mate.fits";
        case MateFault::interfaceDiffers: return "fit.mate.interface";
        case MateFault::genderSame: return "fit.mate.gender";
        case MateFault::threadDiffers: return "fit.mate.thread";
        case MateFault::patternDiffers: return "fit.mate.pattern";
        case MateFault::bottoms: return "fit.mate.bottoms";
        case MateFault::tooFewTurns: return "fit.mate.turns";
        case MateFault::lengthUnknown: return "fit.mate.length_unknown";
    }
    return "fit.mate.interface";
}

void offerAdapters(Finding& f, const SetupMount& m, int part, const Port& outlet, const CheckContext& context) {
    if (!context.catalogue) return;
    const Part& next = *m.chain.parts[static_cast<std::size_t>(part)];
    const std::vector<AdapterStep> steps = cheapestAdapters(outlet, next, *context.catalogue);
    if (steps.empty()) return;
    Remedy remedy;
    remedy.kind = Remedy::Kind::insertParts;
    remedy.mount = m.mount.id;
    remedy.part = part;
    remedy.key = "remedy.insert";
    std::string names;
    Money sum;
    bool priced = true;
    for (const AdapterStep& step : steps) {
        MountPart insert;
        insert.part = step.part->id;
        insert.reversed = step.reversed;
        remedy.insert.push_back(insert);
        remedy.partData.push_back(*step.part);
        names += (names.empty() ? "" : ", then ") + step.part->name;
        if (!step.part->price || (sum.minor > 0 && step.part->price->currency != sum.currency)) priced = false;
        else { sum.minor += step.part->price->minor; sum.currency = step.part->price->currency; }
    }
    if (priced) remedy.price = sum;
    f.words["insert"] = names;
    if (remedy.price) f.words["price"] = printMoney(*remedy.price);
    else remedy.key = "remedy.insert_unpriced";
    f.remedy = std::move(remedy);
}

/// Mass of the parts from `from` to the switch; unknown as soon as one is.
Figure massBeyond(const SetupMount& m, std::size_t from) {
    Figure sum{0.0, {BasisKind::measured, {}}};
    for (std::size_t i = from; i < m.chain.parts.size(); ++i) {
        const Figure mass = m.chain.parts[i]->totalMass_kg();
        if (!mass.known()) return Figure{};
        sum.value = *sum.value + *mass.value;
        sum.basis.kind = weakest(sum.basis.kind, mass.basis.kind);
    }
    return sum;
}

/// Largest pull along a thread: the weight beyond it along its axis, plus the larger of the press
/// (its direction unknown here, so the whole of it) and a knock in the worst direction.
Figure axialLoad_N(const SetupMount& m, std::size_t part, const Vec3& axis_W, const CheckLimits& limits) {
    Figure load = massBeyond(m, part);
    if (!load.known()) return Figure{};
    double press = 0.0;
    if (m.chain.face) {
        const Figure& force = m.chain.face->force_N;
        if (force.known()) { press = limits.pressFactor * *force.value; load.basis.kind = weakest(load.basis.kind, force.basis.kind); }
        else load.basis.kind = BasisKind::assumed;  // the knock still bounds it
    }
    load.value = *load.value * standardGravity * std::abs(axis_W.z()) + std::max(press, limits.knock_N);
    return load;
}

void checkThreadStrength(const SetupMount& m, const ChainMate& mate, const Port& outlet, const Port& base,
                         const ChainPoses& poses, const CheckContext& context, std::vector<Finding>& out) {
    if (!outlet.thread || !mate.mate.threaded || mate.mate.engaged_m <= 0) return;
    const auto index = static_cast<std::size_t>(mate.part);
    Finding f = makeFinding(CheckKind::fit, "fit.thread_strength", {partSubject(m, mate.part - 1), partSubject(m, mate.part)});
    f.measure = Measure::force;
    const Port& stud = outlet.gender == Gender::male ? outlet : base;
    const Port& socket = outlet.gender == Gender::male ? base : outlet;
    const Material* studIs = context.materials ? context.materials->find(stud.material) : nullptr;
    const Material* socketIs = context.materials ? context.materials->find(socket.material) : nullptr;
    const Vec3 axis_W = poses.X_WF[static_cast<std::size_t>(m.chain.partFrame[index])].linear().col(2);
    const Figure load = axialLoad_N(m, index, axis_W, context.limits);
    if (!studIs || !socketIs || !load.known()) {
        f.verdict = Verdict::unknown;
        f.basis = BasisKind::unknown;
        f.key += load.known() ? ".material_unknown" : ".load_unknown";
        out.push_back(f);
        return;
    }
    // Shear yield = tensile yield / sqrt(3) (distortion energy); the weaker thread lets go first.
    const double studHolds = stud.thread->externalShearArea_m2(mate.mate.engaged_m) * studIs->yield_Pa / std::sqrt(3.0);
    const double socketHolds = socket.thread->internalShearArea_m2(mate.mate.engaged_m) * socketIs->yield_Pa / std::sqrt(3.0);
    f.value = std::min(studHolds, socketHolds);
    f.limit = context.limits.threadFactor * *load.value;
    f.facts["load"] = {*load.value, Measure::force};
    f.facts["factor"] = {context.limits.threadFactor, Measure::count};
    f.words["material"] = studHolds < socketHolds ? studIs->name : socketIs->name;
    f.basis = weakest(mate.mate.basis, weakest(load.basis.kind, BasisKind::published));
    f.verdict = judgeAtLeast(*f.value, *f.limit);
    f.key += f.verdict == Verdict::misses ? ".strips" : ".holds";
    out.push_back(f);
}

void checkMates(const SetupMount& m, const ChainPoses& poses, const CheckContext& context, std::vector<Finding>& out) {
    for (const ChainMate& mate : m.chain.mates) {
        const auto index = static_cast<std::size_t>(mate.part);
        const Part& before = *m.chain.parts[index - 1];
        const Part& next = *m.chain.parts[index];
        if (!before.outlet) continue;
        Finding f = makeFinding(CheckKind::fit, "fit.mate", {partSubject(m, mate.part - 1), partSubject(m, mate.part)});
        f.key = faultKey(mate.mate.fault);
        f.basis = mate.mate.basis;
        // A pattern or plate has no figure of its own with a basis: it is as good as its part's dimensions.
        if (!mate.mate.threaded) f.basis = weakest(f.basis, weakest(before.dimensionsBasis.kind, next.dimensionsBasis.kind));
        f.words["outlet"] = describe(*before.outlet);
        const Port* base = mate.base >= 0 && mate.base < static_cast<int>(next.bases.size()) ? &next.bases[static_cast<std::size_t>(mate.base)]
                           : next.bases.empty() ? nullptr : &next.bases.front();
        f.words["base"] = base ? describe(*base) : "nothing to screw on to";
        switch (mate.mate.fault) {
            case MateFault::none: f.verdict = Verdict::meets; break;
            case MateFault::lengthUnknown: f.verdict = Verdict::unknown; f.basis = BasisKind::unknown; break;
            default: f.verdict = Verdict::misses;
        }
        if (mate.mate.threaded && mate.mate.engaged_m > 0) {
            // Turns are met or missed: a screw made to ISO 1222 has 3.5 and is not 'close' to failing.
            f.measure = Measure::count;
            f.value = mate.mate.turns;
            f.limit = context.limits.threadTurns;
            f.facts["engaged"] = {mate.mate.engaged_m, Measure::length};
            if (f.verdict == Verdict::meets && *f.value < *f.limit - tolerance::limitSlack) {
                f.verdict = Verdict::misses;
                f.key = faultKey(MateFault::tooFewTurns);
            }
            if (f.verdict == Verdict::meets) f.key = "fit.mate.screws";
        }
        if (mate.mate.fault == MateFault::bottoms && base) {
            const Port& stud = before.outlet->gender == Gender::male ? *before.outlet : *base;
            const Port& socket = before.outlet->gender == Gender::male ? *base : *before.outlet;
            f.measure = Measure::length;
            f.value = stud.length.value;
            f.limit = socket.length.value;
        }
        if (f.verdict == Verdict::misses) offerAdapters(f, m, mate.part, *before.outlet, context);
        out.push_back(f);
        if (base && mate.mate.goesTogether()) checkThreadStrength(m, mate, *before.outlet, *base, poses, context, out);
    }
}

void checkRatedLoads(const SetupMount& m, std::vector<Finding>& out) {
    for (std::size_t i = 0; i + 1 < m.chain.parts.size(); ++i) {
        const Part& part = *m.chain.parts[i];
        // An adapter or back without a rated load is as strong as its threads, which are judged above.
        const bool carries = part.kind != PartKind::adapter && part.kind != PartKind::back;
        if (!part.ratedLoad_kg.known() && !carries) continue;
        Finding f = makeFinding(CheckKind::fit, "fit.rated_load", {partSubject(m, static_cast<int>(i))});
        f.measure = Measure::mass;
        const Figure beyond = massBeyond(m, i + 1);
        f.basis = weakest(beyond.basis.kind, part.ratedLoad_kg.basis.kind);
        f.value = beyond.value;
        f.limit = part.ratedLoad_kg.value;
        if (!f.value || !f.limit) {
            f.verdict = Verdict::unknown;
            f.basis = BasisKind::unknown;
            f.key += f.value ? ".limit_unknown" : ".mass_unknown";
        } else {
            f.verdict = judgeAtMost(*f.value, *f.limit);
            f.key += f.verdict == Verdict::misses ? ".too_heavy" : ".carries";
        }
        out.push_back(f);
    }
}

/// Battery doors, sensor windows and cable exits stay free of the mount's other parts. Touching is
/// allowed: a zone often begins at the part's own surface.
void checkKeepFree(const SetupMount& m, const ChainPoses& poses, std::vector<Finding>& out) {
    const std::vector<PlacedSolid> pieces = placedSolids(m.chain, m.q, poses);
    for (std::size_t i = 0; i < m.chain.parts.size(); ++i) {
        const Part& part = *m.chain.parts[i];
        const Pose& X_WBase = poses.X_WF[static_cast<std::size_t>(m.chain.partFrame[i])];
        bool free = true;
        for (const KeepFree& zone : part.keepFree) {
            const Solid zone_W = zone.solid.movedBy(X_WBase);
            double deepest = 0.0;
            int by = -1;
            Distance where;
            for (const PlacedSolid& piece : pieces) {
                if (piece.part == static_cast<int>(i)) continue;
                const Distance d = distance(piece.solid_W, zone_W);
                if (-d.distance > deepest + zoneTouch_m) { deepest = -d.distance; by = piece.part; where = d; }
            }
            if (by < 0) continue;
            free = false;
            Finding f = makeFinding(CheckKind::fit, "fit.keep_free.covered", {partSubject(m, by), partSubject(m, static_cast<int>(i))});
            f.id = findingId("fit.keep_free", {partSubject(m, static_cast<int>(i)), partSubject(m, by)}) + "/" + zone.what;
            f.verdict = Verdict::misses;
            f.measure = Measure::length;
            f.value = deepest;
            f.limit = 0.0;
            f.basis = weakest(part.dimensionsBasis.kind, m.chain.parts[static_cast<std::size_t>(by)]->dimensionsBasis.kind);
            f.words["zone"] = zone.what;
            f.witness = Witness{where.p_WA, where.p_WB};
            out.push_back(f);
        }
        if (part.keepFree.empty() || !free) continue;
        Finding f = makeFinding(CheckKind::fit, "fit.keep_free.free", {partSubject(m, static_cast<int>(i))});
        f.id = findingId("fit.keep_free", {partSubject(m, static_cast<int>(i))});
        f.verdict = Verdict::meets;
        f.basis = part.dimensionsBasis.kind;
        std::string zones;
        for (const KeepFree& zone : part.keepFree) zones += (zones.empty() ? "" : ", ") + zone.what;
        f.words["zone"] = zones;
        out.push_back(f);
    }
}

}  // namespace

std::vector<Finding> checkFit(const Setup& setup, const CheckContext& context) {
    std::vector<Finding> out;
    for (std::size_t i = 0; i < setup.mounts.size(); ++i) {
        const SetupMount& m = setup.mounts[i];
        const ChainPoses poses = forward(m.chain, m.q);
        const Support* support = setup.situation.support(m.chain.support);
        const Attachment* at = support ? support->attachment(m.chain.attachment) : nullptr;
        if (at && m.chain.grip) {
            checkGripSize(m, *support, *at, out);
            checkSpan(m, *support, *at, out);
            checkNeighbours(setup, i, *support, *at, out);
        }
        checkMates(m, poses, context, out);
        checkRatedLoads(m, out);
        checkKeepFree(m, poses, out);
        if (!m.chain.face) {
            Finding f = makeFinding(CheckKind::fit, "fit.no_switch", {mountSubject(m)});
            f.verdict = Verdict::unknown;
            f.basis = BasisKind::unknown;
            out.push_back(f);
        }
    }
    return out;
}

}  // namespace hither
