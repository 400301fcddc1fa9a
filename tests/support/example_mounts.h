#pragma once
#include <map>
#include <memory>
#include <string>

#include "core/chain/chain.h"
#include "core/units/quantity.h"

namespace hither::test {

/// A small situation and a handful of parts for tests of chains: one support with a rail, a square rail,
/// an edge, a face and cloth, and parts that use every kind of element and mate. Invented figures.
struct ExampleMounts {
    Situation situation;
    std::map<std::string, std::shared_ptr<const Part>> parts;

    std::shared_ptr<const Part> find(const std::string& id) const {
        const auto found = parts.find(id);
        return found == parts.end() ? nullptr : found->second;
    }
    ChainMade make(const Mount& mount) const {
        return makeChain(mount, situation, [this](const std::string& id) { return find(id); });
    }
    Attachment& attachment(const std::string& id) {
        for (Attachment& a : situation.supports.front().attachments) if (a.id == id) return a;
        return situation.supports.front().attachments.front();
    }

    ExampleMounts() {
        addSupport();
        addParts();
    }

    static Figure figure(double value) { return {value, {BasisKind::assumed, {}}}; }
    static Mount mount(const std::string& attachment, std::initializer_list<const char*> ids) {
        Mount m;
        m.id = "m1";
        m.support = "chair";
        m.attachment = attachment;
        for (const char* id : ids) {
            MountPart p;
            p.part = id;
            m.parts.push_back(p);
        }
        return m;
    }

private:
    void addSupport() {
        Support s;
        s.id = "chair";
        s.X_WS = pose(rotationFromRollPitchYaw(0, 0, 0.3), Vec3(0.1, -0.2, 0));
        MovingGroup back;
        back.id = "back";
        back.pivot = Vec3(0, 0, 0.5);
        back.axis = Vec3(0, -1, 0);
        back.max = 1;
        back.value = 0.25;
        s.groups.push_back(back);
        const auto add = [&s](const char* id, AttachmentKind kind, Vec3 a, Vec3 b) -> Attachment& {
            Attachment at;
            at.id = id;
            at.name = id;
            at.kind = kind;
            at.a = a;
            at.b = b;
            at.outside_m = figure(0.0222);
            at.thickness_m = figure(0.018);
            return s.attachments.emplace_back(at);
        };
        Attachment& rail = add("rail", AttachmentKind::rail, Vec3(0.05, 0.25, 0.7), Vec3(0.35, 0.25, 0.72));
        rail.reference = Vec3(0.3, 1, 0.2);
        Attachment& square = add("square", AttachmentKind::rail, Vec3(0.05, -0.25, 0.7), Vec3(0.35, -0.25, 0.7));
        square.section = Section::square;
        Attachment& backRail = add("back rail", AttachmentKind::rail, Vec3(0, -0.2, 0.9), Vec3(0, 0.2, 0.9));
        backRail.group = "back";
        Attachment& edge = add("edge", AttachmentKind::edge, Vec3(0.4, 0.3, 0.75), Vec3(0.4, -0.3, 0.75));
        edge.up = Vec3(0.1, 0, 1);
        edge.depth_m = 0.3;
        Attachment& face = add("face", AttachmentKind::face, Vec3(0.5, 0, 0.75), Vec3(0.5, 0, 0.75));
        face.reference = Vec3(1, 0.2, 0);
        face.up = Vec3(0, 0.1, 1);
        face.sizeX_m = 0.3;
        face.sizeY_m = 0.2;
        Attachment& cloth = add("cloth", AttachmentKind::cloth, Vec3(0.1, 0.2, 0.6), Vec3(0.3, 0.2, 0.65));
        cloth.up = Vec3(0.1, 0, 1);
        cloth.thickness_m = figure(0.002);
        situation.supports.push_back(s);
    }

    static Port thread(Gender gender) {
        Port p;
        p.interface = Interface::thread;
        p.gender = gender;
        p.thread = parseThread("1/4-20 UNC").value;
        p.length = figure(gender == Gender::male ? 0.0055 : 0.008);
        return p;
    }
    static Port plain(Interface interface, Gender gender) {
        Port p;
        p.interface = interface;
        p.gender = gender;
        return p;
    }
    static Port pattern(Gender gender, int count) {
        Port p = plain(Interface::boltPattern, gender);
        p.pattern = BoltPattern{count, 0.03, 0.03, "UNC 4-40"};
        return p;
    }
    static Element rigid(double length, double mass = 0.1) {
        RigidElement r;
        r.X = translation(Vec3(0, 0, length));
        r.solids.push_back(Solid::cylinder(Vec3::Zero(), Vec3(0, 0, length), 0.01));
        r.mass_kg = figure(mass);
        r.centreOfMass = Vec3(0, 0, length / 2);
        return {"", r};
    }
    void add(const Part& part) { parts[part.id] = std::make_shared<const Part>(part); }
    static Part base(const char* id, PartKind kind) {
        Part p;
        p.id = id;
        p.name = id;
        p.kind = kind;
        return p;
    }
    void addParts() {
        Part clamp = base("clamp", PartKind::grip);
        RailGrip small, large;
        small.min_m = figure(0.010);
        small.max_m = figure(0.020);
        small.width_m = 0.02;
        large.min_m = figure(0.019);
        large.max_m = figure(0.030);
        large.width_m = 0.04;
        large.square = true;
        EdgeGrip edge;
        FaceGrip face;
        ClothGrip cloth;
        clamp.grips = {small, large, edge, face, cloth};
        clamp.elements = {rigid(0.03)};
        clamp.outlet = thread(Gender::male);
        add(clamp);

        Part arm = base("arm", PartKind::arm);
        arm.bases = {plain(Interface::accessoryShoe, Gender::male), thread(Gender::female)};
        BallElement ball;
        ball.cone = radians(80);
        HingeElement elbow;
        elbow.axis = Vec3(0, 2, 0);
        elbow.min = radians(10);
        elbow.max = radians(150);
        arm.elements = {{"shoulder", ball}, rigid(0.15), {"elbow", elbow}, rigid(0.15), {"wrist", ball}};
        arm.outlet = thread(Gender::male);
        add(arm);

        Part neck = base("neck", PartKind::neck);
        neck.bases = {thread(Gender::female)};
        BendElement bend;
        bend.length = 0.3;
        bend.minRadius = 0.05;
        bend.radius = 0.007;
        bend.mass_kg = figure(0.2);
        neck.elements = {{"neck", bend}};
        neck.outlet = thread(Gender::male);
        neck.reversible = true;
        add(neck);

        Part post = base("post", PartKind::post);
        post.bases = {thread(Gender::female)};
        SlideElement tube;
        tube.min = 0.05;
        tube.max = 0.15;
        tube.step = 0.02;
        SwivelElement swivel;
        HingeElement rosette;
        rosette.min = radians(-90);
        rosette.max = radians(90);
        rosette.detent = radians(15);
        post.elements = {rigid(0.1), {"tube", tube}, {"swivel", swivel}, {"rosette", rosette}};
        post.outlet = thread(Gender::male);
        add(post);

        Part back = base("back", PartKind::back);
        back.bases = {thread(Gender::female)};
        back.elements = {rigid(0.006)};
        back.outlet = pattern(Gender::female, 4);
        add(back);

        Part shoe = base("shoe", PartKind::adapter);
        shoe.bases = {thread(Gender::female)};
        shoe.elements = {rigid(0.01)};
        shoe.outlet = plain(Interface::accessoryShoe, Gender::female);
        add(shoe);

        Part wrong = base("wrong", PartKind::adapter);
        Port metric = thread(Gender::female);
        metric.thread = parseThread("M5").value;
        wrong.bases = {metric};
        wrong.elements = {rigid(0.01)};
        wrong.outlet = plain(Interface::adhesivePad, Gender::male);
        add(wrong);

        Part button = base("button", PartKind::switchDevice);
        button.bases = {pattern(Gender::male, 2), plain(Interface::adhesivePad, Gender::female)};
        button.elements = {rigid(0.02, 0.05)};
        SwitchFace pressed;
        pressed.operatingAxis = Vec3(0, 0.6, -0.8);
        button.face = pressed;
        add(button);
    }
};

}  // namespace hither::test
