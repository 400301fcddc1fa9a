#include "app/picture/mount_items.h"

#include <cstdio>
#include <functional>

#include "app/picture/grip_shapes.h"
#include "app/picture/mount_handles.h"
#include "app/picture/neck_shapes.h"
#include "app/picture/part_shapes.h"
#include "app/picture/switch_shapes.h"

namespace hither {

namespace {

constexpr double coneOpacity = 0.16;

std::string hex(std::uint64_t hash) {
    char text[17];
    std::snprintf(text, sizeof text, "%016llx", static_cast<unsigned long long>(hash));
    return text;
}

bool isSubject(const Finding* finding, const std::string& mount, int part) {
    if (!finding) return false;
    for (const Subject& s : finding->subjects) {
        if (s.id != mount) continue;
        if (s.kind == Subject::Kind::mount || (s.kind == Subject::Kind::part && s.part == part)) return true;
    }
    return false;
}

/// Draws the parts of one mount one after another.
class MountDrawer {
public:
    MountDrawer(const SetupMount& mount, const Situation& situation, const PictureWishes& wishes, MeshStore& store)
        : mount_(mount), chain_(mount.chain), wishes_(wishes), store_(store), poses_(forward(mount.chain, mount.q)) {
        if (const Support* support = situation.support(chain_.support)) held_.attachment = support->attachment(chain_.attachment);
        if (chain_.grip && held_.attachment) held_.grip = &*chain_.grip;
        firstStep_.resize(chain_.parts.size());
        for (std::size_t p = 0; p < chain_.parts.size(); ++p) firstStep_[p].assign(chain_.parts[p]->elements.size(), -1);
        for (std::size_t k = 0; k < chain_.steps.size(); ++k) {
            const ChainStep& step = chain_.steps[k];
            if (step.element < 0) continue;
            int& first = firstStep_[static_cast<std::size_t>(step.part)][static_cast<std::size_t>(step.element)];
            if (first < 0) first = static_cast<int>(k);
        }
    }

    std::vector<PictureItem> draw() {
        for (std::size_t p = 0; p < chain_.parts.size(); ++p) drawPart(p);
        if (wishes_.step == JobStep::build) addMountHandles(items_, mount_, held_, poses_, wishes_, store_);
        return std::move(items_);
    }

private:
    void drawPart(std::size_t p) {
        part_ = static_cast<int>(p);
        piece_ = 0;
        const Part& part = *chain_.parts[p];
        const HeldOn held = p == 0 ? held_ : HeldOn{};
        std::uint64_t hash = shapeHash(part);
        if (held.grip) {
            const Attachment& at = *held.attachment;
            for (const double d : {gripNumber(part), static_cast<double>(at.kind), static_cast<double>(at.section), at.outside_m.value.value_or(-1.0),
                                   at.thickness_m.value.value_or(-1.0)}) hash = mixed(hash, d);
        }
        const std::string from = part.id + "/" + hex(hash) + "/";
        const Pose& X_WBase = poses_.X_WF[static_cast<std::size_t>(chain_.partFrame[p])];
        if (held.grip) add("grip/" + from, X_WBase, [&] { return gripPieces(part, held); });
        for (std::size_t e = 0; e < part.elements.size(); ++e) {
            const int step = firstStep_[p][e];
            if (step < 0) continue;
            const Pose& X_WE = poses_.X_WF[static_cast<std::size_t>(step)];
            if (std::holds_alternative<RigidElement>(part.elements[e].what)) {
                add("rigid/" + from + std::to_string(e) + "/", X_WE, [&] { return rigidPieces(part, e, held); });
            } else if (const auto* neck = std::get_if<BendElement>(&part.elements[e].what)) {
                addNeck(*neck, step, X_WE);
            }
        }
        if (p + 1 == chain_.parts.size()) {
            if (part.face) {
                add("face/" + from, poses_.last(), [&] { return facePieces(part); });
                addCone("cone/" + from, part);
            } else {
                add("outlet/" + from, poses_.last(), [&] { return outletPieces(part); });
            }
        }
        if (part.face) add("cable/" + from, X_WBase, [&] { return cablePieces(part); });
    }
    /// Which of the part's grips the chain holds with.
    double gripNumber(const Part& part) const {
        for (std::size_t i = 0; i < part.grips.size(); ++i)
            if (part.grips[i] == *chain_.grip) return static_cast<double>(i);
        return -1;
    }
    void add(const std::string& from, const Pose& X_W, const std::function<DrawnPieces()>& make) {
        const Look main = mainLook(*chain_.parts[static_cast<std::size_t>(part_)]);
        for (const Look look : {main, Look::knob, Look::metal, Look::pad, Look::thread, Look::switchCap}) {
            addMesh(store_.get(from + std::to_string(static_cast<int>(look)), [&] { return make()[look]; }), X_W, look);
        }
    }
    void addNeck(const BendElement& neck, int step, const Pose& X_W) {
        NeckBend bend{};
        std::uint64_t hash = mixed(mixed(0, neck.length), neck.radius);
        for (int i = 0; i < 6; ++i) {
            const ChainStep& arc = chain_.steps[static_cast<std::size_t>(step + i / 2)];
            bend[static_cast<std::size_t>(i)] = mount_.q[arc.q0 + i % 2];
            hash = mixed(hash, bend[static_cast<std::size_t>(i)]);
        }
        addMesh(store_.get("neck/" + hex(hash), [&] { return neckMesh(neck, bend); }), X_W, Look::neckPart);
    }
    void addCone(const std::string& from, const Part& part) {
        const std::size_t before = items_.size();
        addMesh(store_.get(from, [&] { return sensingCone(part); }), poses_.last(), Look::switchCap);
        if (items_.size() == before) return;
        PictureItem& cone = items_.back();
        cone.opacity = coneOpacity;
        cone.castsShadow = cone.outlined = false;
        cone.pick = {};  // a click goes through it
    }
    void addMesh(const MeshRef& mesh, const Pose& X_W, Look look) {
        if (mesh->triangles.empty()) return;
        PictureItem item;
        item.key = "mount/" + mount_.mount.id + "/part/" + std::to_string(part_) + "/piece/" + std::to_string(piece_++);
        item.mesh = mesh;
        item.X_W = X_W;
        item.look = look;
        item.pick = Picked::partOf(mount_.mount.id, part_);
        item.outlined = wishes_.picked == item.pick || wishes_.picked == Picked::mount(mount_.mount.id) || isSubject(wishes_.finding, mount_.mount.id, part_);
        items_.push_back(std::move(item));
    }

    const SetupMount& mount_;
    const Chain& chain_;
    const PictureWishes& wishes_;
    MeshStore& store_;
    ChainPoses poses_;
    HeldOn held_;
    std::vector<std::vector<int>> firstStep_;   // by part and element, -1: none
    std::vector<PictureItem> items_;
    int part_ = 0, piece_ = 0;
};

}  // namespace

std::vector<PictureItem> mountItems(const SetupMount& mount, const Situation& situation, const PictureWishes& wishes, MeshStore& store) {
    return MountDrawer(mount, situation, wishes, store).draw();
}

}  // namespace hither
