#include "core/checks/obstacles.h"

#include <algorithm>

#include "core/checks/subjects.h"

namespace hither {
namespace {

/// Segments joined at a joint: an elbow is operated by upper arm and forearm together.
bool neighbours(SegmentId a, SegmentId b) {
    if (a == b) return true;
    const auto step = [](Segment x, Segment y, Segment p, Segment q) { return (x == p && y == q) || (x == q && y == p); };
    const bool sameSide = a.side == b.side || a.side == Side::none || b.side == Side::none;
    if (!sameSide) return false;
    for (auto [p, q] : {std::pair{Segment::upperArm, Segment::forearm}, {Segment::forearm, Segment::hand}, {Segment::trunk, Segment::upperArm},
                        {Segment::head, Segment::neck}, {Segment::neck, Segment::trunk}, {Segment::trunk, Segment::pelvis},
                        {Segment::pelvis, Segment::thigh}, {Segment::thigh, Segment::shank}, {Segment::shank, Segment::foot}})
        if (step(a.segment, b.segment, p, q)) return true;
    return false;
}

}  // namespace

const char* word(Obstacle::Kind kind) {
    switch (kind) {
        case Obstacle::Kind::body: return "body";
        case Obstacle::Kind::support: return "support";
        case Obstacle::Kind::mount: return "mount";
        case Obstacle::Kind::keepOut: return "keep_out";
    }
    return "support";
}

std::vector<Obstacle> obstaclesOf(const Setup& setup, std::size_t index) {
    std::vector<Obstacle> out;
    const Situation& situation = setup.situation;
    if (situation.body) {
        for (const BodySolid& piece : situation.body->solids) {
            Obstacle o;
            o.kind = Obstacle::Kind::body;
            o.subject = bodySubject(piece.segment);
            o.solid_W = piece.solid.movedBy(situation.body->X_WSegment.at(piece.segment));
            o.support = situation.body->support;
            if (const auto found = situation.body->group.find(piece.segment); found != situation.body->group.end()) o.group = found->second;
            o.segment = piece.segment;
            out.push_back(std::move(o));
        }
    }
    for (const Support& support : situation.supports) {
        for (const SupportSolid& piece : support.solids) {
            Obstacle o;
            o.kind = Obstacle::Kind::support;
            o.subject = supportSubject(support, piece.name);
            o.solid_W = piece.solid.movedBy(groupPose_W(situation, support.id, piece.group));
            o.support = support.id;
            o.group = piece.group;
            o.solidName = piece.name;
            out.push_back(std::move(o));
        }
    }
    for (std::size_t j = index + 1; j < setup.mounts.size(); ++j) {
        const SetupMount& other = setup.mounts[j];
        for (const PlacedSolid& piece : placedSolids(other.chain, other.q, forward(other.chain, other.q))) {
            Obstacle o;
            o.kind = Obstacle::Kind::mount;
            o.subject = partSubject(other, piece.part);
            o.solid_W = piece.solid_W;
            o.support = other.chain.support;
            o.group = other.chain.group;
            out.push_back(std::move(o));
        }
    }
    for (const KeepOut& keepOut : setup.keepOuts) {
        Obstacle o;
        o.kind = Obstacle::Kind::keepOut;
        o.subject = keepOutSubject(keepOut);
        o.solid_W = keepOut.solid;
        o.support = keepOut.support;
        o.group = keepOut.group;
        o.keepOutMargin_m = keepOut.margin_m;
        out.push_back(std::move(o));
    }
    return out;
}

bool meetsOnPurpose(const Setup& setup, std::size_t mount, const PlacedSolid& piece, const Obstacle& obstacle) {
    if (obstacle.kind != Obstacle::Kind::body || !obstacle.segment) return false;
    const SetupMount& m = setup.mounts[mount];
    if (!m.chain.face || piece.part + 1 != static_cast<int>(m.chain.parts.size())) return false;
    const Site* site = setup.situation.site(m.mount.site);
    return site && site->segment && neighbours(*site->segment, *obstacle.segment);
}

std::optional<double> requiredMargin(const Setup& setup, std::size_t mount, const PlacedSolid& piece,
                                     const Obstacle& obstacle, const CheckLimits& limits) {
    const SetupMount& m = setup.mounts[mount];
    switch (obstacle.kind) {
        case Obstacle::Kind::body: {
            if (!meetsOnPurpose(setup, mount, piece, obstacle)) return limits.clearanceBody_m;
            return -setup.situation.site(m.mount.site)->tolerance_m;
        }
        case Obstacle::Kind::support: {
            if (piece.part == 0 && obstacle.support == m.chain.support) {
                const Support* support = setup.situation.support(obstacle.support);
                const Attachment* at = support ? support->attachment(m.chain.attachment) : nullptr;
                if (at && std::find(at->solids.begin(), at->solids.end(), obstacle.solidName) != at->solids.end()) return std::nullopt;
            }
            return piece.jaw ? 0.0 : limits.clearanceSupport_m;
        }
        case Obstacle::Kind::mount: return limits.clearanceMount_m;
        case Obstacle::Kind::keepOut: return obstacle.keepOutMargin_m;
    }
    return 0.0;
}

}  // namespace hither
