#pragma once
#include <memory>
#include <string>
#include <vector>

#include "app/picture/mount_items.h"
#include "app/shipped/shipped.h"

/// Parts of the shipped catalogue put up for the tests of their drawings.
namespace hither::stand {

inline const Shipped& shipped() {
    static const Shipped all = *readShipped().shipped;
    return all;
}
inline std::shared_ptr<const Part> find(const std::string& id) {
    for (const auto& part : shipped().catalogue.parts())
        if (part->id == id) return part;
    return nullptr;
}

/// What grips hold on to here: a level rail along x, an edge, a face and cloth, of the sizes given.
inline Situation situation(double tube_m, Section section, double board_m) {
    Support support;
    support.id = "stand";
    const Figure tube{tube_m, {BasisKind::measured, "test"}}, board{board_m, {BasisKind::measured, "test"}};
    Attachment rail;
    rail.id = "rail";
    rail.a = Vec3(-0.5, 0, 0.8);
    rail.b = Vec3(0.5, 0, 0.8);
    rail.section = section;
    rail.outside_m = tube;
    Attachment edge;
    edge.id = "edge";
    edge.kind = AttachmentKind::edge;
    edge.a = Vec3(-0.5, 0, 0.8);
    edge.b = Vec3(0.5, 0, 0.8);
    edge.thickness_m = board;
    edge.depth_m = 0.3;
    Attachment face;
    face.id = "face";
    face.kind = AttachmentKind::face;
    face.a = Vec3(0, 0, 0.8);
    face.reference = Vec3::UnitX();
    face.sizeX_m = face.sizeY_m = 0.6;
    Attachment cloth;
    cloth.id = "cloth";
    cloth.kind = AttachmentKind::cloth;
    cloth.a = Vec3(-0.5, 0, 0.8);
    cloth.b = Vec3(0.5, 0, 0.8);
    cloth.thickness_m = Figure{0.002, {BasisKind::measured, "test"}};
    support.attachments = {rail, edge, face, cloth};
    Situation made;
    made.supports = {support};
    return made;
}

struct Stand {
    Situation given;
    SetupMount mount;
    int part = 0;           ///< the one that is looked at
    std::string words;      ///< "spring-clamp-13-25 on rail"
};

inline Stand put(const Situation& given, const std::string& attachment, const std::vector<std::string>& ids) {
    Stand made;
    made.given = given;
    Mount& mount = made.mount.mount;
    mount.id = "m";
    mount.support = "stand";
    mount.attachment = attachment;
    mount.place.along_m = 0.5;
    for (const std::string& id : ids) {
        MountPart part;
        part.part = id;
        mount.parts.push_back(part);
    }
    const ChainMade chain = makeChain(mount, given, find);
    if (chain.chain) {
        made.mount.chain = *chain.chain;
        made.mount.q = chain.q;
    }
    made.part = static_cast<int>(ids.size()) - 1;
    made.words = ids.back() + " on " + attachment;
    return made;
}

/// A part on everything that it can hold (rails of both sections; the middle of its range, or its ends
/// too), or, when it is no grip, after the catalogue's first clamp.
inline std::vector<Stand> stands(const Part& part, bool extremes = false) {
    std::vector<Stand> all;
    const auto within = [](const Figure& a, const Figure& b, double share) { return a.value.value_or(0.02) + share * (b.value.value_or(0.02) - a.value.value_or(0.02)); };
    const std::vector<double> shares = extremes ? std::vector<double>{0, 0.5, 1} : std::vector<double>{0.5};
    for (const Grip& grip : part.grips) {
        if (const auto* rail = std::get_if<RailGrip>(&grip)) {
            for (const double share : shares) {
                const double size = within(rail->min_m, rail->max_m, share);
                if (rail->round) all.push_back(put(situation(size, Section::round, 0.02), "rail", {part.id}));
                if (rail->square) all.push_back(put(situation(size, Section::square, 0.02), "rail", {part.id}));
            }
        } else if (const auto* edge = std::get_if<EdgeGrip>(&grip)) {
            for (const double share : shares) all.push_back(put(situation(0.02, Section::round, within(edge->min_m, edge->max_m, share)), "edge", {part.id}));
        } else {
            all.push_back(put(situation(0.02, Section::round, 0.02), std::holds_alternative<FaceGrip>(grip) ? "face" : "cloth", {part.id}));
        }
    }
    if (!all.empty()) return all;
    for (const auto& carrier : shipped().catalogue.parts()) {
        if (carrier->grips.empty() || !std::holds_alternative<RailGrip>(carrier->grips.front())) continue;
        all.push_back(put(situation(0.02, Section::round, 0.02), "rail", {carrier->id, part.id}));
        break;
    }
    return all;
}

inline PictureWishes wishes(JobStep step = JobStep::check, Picked picked = {}) {
    PictureWishes w;
    w.step = step;
    w.picked = picked;
    return w;
}

}  // namespace hither::stand
