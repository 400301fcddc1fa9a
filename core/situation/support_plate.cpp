#include "core/situation/support_plate.h"

namespace hither {

void makeLevelPlate(SupportMaker& m, const LevelPlate& p) {
    const double half = 0.5 * p.width, x = p.depth, z = p.top;
    const std::string& words = p.solid;
    const auto edge = [&](const std::string& id, const std::string& name, const Vec3& a, const Vec3& b) {
        m.edge(id, name, "", a, b, Vec3::UnitZ(), p.thickness, p.thicknessBasis, p.edgeDepth, {p.solid});
    };
    m.box(p.solid, "", Vec3(0.5 * x, 0, z - 0.5 * p.thickness), Vec3(x, p.width, p.thickness));
    // up x unit(b - a) points into the plate: clockwise seen from above.
    edge("edge_near", "Edge nearest the person", Vec3(0, half, z), Vec3(0, -half, z));
    edge("edge_far", "Edge away from the person", Vec3(x, -half, z), Vec3(x, half, z));
    edge("edge_left", "Edge, left", Vec3(x, half, z), Vec3(0, half, z));
    edge("edge_right", "Edge, right", Vec3(0, -half, z), Vec3(x, -half, z));
    m.face("upper_face", "Upper face", "", Vec3(0.5 * x, 0, z), Vec3::UnitX(), Vec3::UnitZ(), x, p.width, {p.solid});
    m.face("under_face", "Under face", "", Vec3(0.5 * x, 0, z - p.thickness), Vec3::UnitX(), -Vec3::UnitZ(), p.underX, p.underY, {p.solid});
    m.landmark("near_middle", "Middle of the edge nearest the person, top of the " + words, "", Vec3(0, 0, z));
    for (int side : {1, -1}) {
        m.landmark(sideId("corner_near", side), sideName("Corner nearest the person, top of the " + words, side), "", Vec3(0, side * half, z));
        m.landmark(sideId("corner_far", side), sideName("Corner away from the person, top of the " + words, side), "", Vec3(x, side * half, z));
    }
}

}  // namespace hither
