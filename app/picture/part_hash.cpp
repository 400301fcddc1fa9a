#include <cstring>

#include "app/picture/part_shapes.h"

namespace hither {

namespace {

constexpr std::uint64_t prime = 1099511628211ULL, offset = 14695981039346656037ULL;  // FNV-1a, 64 bit

/// Numbers and words mixed one after another.
struct Mixer {
    std::uint64_t value = offset;

    void add(double v) { value = mixed(value, v); }
    void add(int v) { add(static_cast<double>(v)); }
    void add(bool v) { add(v ? 1.0 : 0.0); }
    void add(std::size_t v) { add(static_cast<double>(v)); }
    void add(const std::string& text) {
        for (const char c : text) value = (value ^ static_cast<unsigned char>(c)) * prime;
        add(text.size());
    }
    void add(const Figure& f) { add(f.value.has_value()); add(f.value.value_or(0.0)); }
    void add(const std::optional<double>& v) { add(v.has_value()); add(v.value_or(0.0)); }
    void add(const Vec3& v) { add(v.x()); add(v.y()); add(v.z()); }
    void add(const Pose& X) {
        add(Vec3(X.translation()));
        for (int c = 0; c < 3; ++c) add(Vec3(X.linear().col(c)));
    }
    void add(const Solid& s) {
        add(static_cast<int>(s.kind)); add(s.X_FG); add(s.half); add(s.radius);
        if (s.hull) for (const Vec3& p : s.hull->points) add(p);
    }
    void add(const JointFigures& j) { add(j.hold); add(j.lockGroup); }
    void add(const Port& p) {
        add(static_cast<int>(p.interface)); add(static_cast<int>(p.gender)); add(p.length); add(p.lockRing);
        if (p.thread) { add(p.thread->majorDiameter_m); add(p.thread->pitch_m); }
        if (p.pattern) { add(p.pattern->count); add(p.pattern->circleMin_m); add(p.pattern->circleMax_m); add(p.pattern->screw); }
    }
    void operator()(const RigidElement& e) { add(e.X); for (const Solid& s : e.solids) add(s); }
    void operator()(const HingeElement& e) { add(e.axis); add(e.detent); add(e.joint); }
    void operator()(const SwivelElement& e) { add(e.detent); add(e.joint); }
    void operator()(const BallElement& e) { add(e.cone); add(e.joint); }
    void operator()(const SlideElement& e) { add(e.axis); add(e.min); add(e.max); add(e.step); add(e.joint); }
    void operator()(const BendElement& e) { add(e.length); add(e.radius); add(e.joint); }
    void operator()(const RailGrip& g) { add(g.width_m); add(g.wall_m); add(g.round); add(g.square); }
    void operator()(const EdgeGrip& g) { add(g.width_m); add(g.throat_m); add(g.wall_m); }
    void operator()(const FaceGrip& g) { add(g.sizeX_m); add(g.sizeY_m); add(static_cast<int>(g.fixing)); }
    void operator()(const ClothGrip&) {}
};

}  // namespace

std::uint64_t mixed(std::uint64_t hash, double value) {
    std::uint64_t bits = 0;
    std::memcpy(&bits, &value, sizeof bits);
    hash = (hash ^ bits) * prime;
    return hash ^ (hash >> 29);
}

std::uint64_t shapeHash(const Part& part) {
    Mixer m;
    m.add(static_cast<int>(part.kind));
    for (const std::string& word : part.words) m.add(word);
    for (const Grip& grip : part.grips) { m.add(grip.index()); std::visit(m, grip); }
    for (const Element& element : part.elements) { m.add(element.what.index()); std::visit(m, element.what); }
    if (part.outlet) m.add(*part.outlet);
    if (part.face) { m.add(static_cast<int>(part.face->action)); m.add(part.face->size); m.add(part.face->sensingRange_m); m.add(part.face->angleTolerance_rad); }
    for (const KeepFree& free : part.keepFree) { m.add(free.what); m.add(free.solid); }
    m.add(part.tools.size());
    m.add(part.releaseActions);
    return m.value;
}

}  // namespace hither
