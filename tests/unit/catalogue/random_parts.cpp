#include "random_parts.h"

#include <cmath>

namespace hither::test {

using nlohmann::json;

double RandomParts::typed(double low, double high) {
    const double value = between(low, high);
    const double digits = std::pow(10.0, whole(0, 3));
    if (chance(0.2)) return value;
    const double rounded = std::round(value * digits) / digits;
    return rounded < low || rounded > high ? value : rounded;
}

json RandomParts::point(double reach) { return json::array({typed(-reach, reach), typed(-reach, reach), typed(-reach, reach)}); }

json RandomParts::axis() {
    for (;;) {
        const double x = typed(-1, 1), y = typed(-1, 1), z = typed(-1, 1);
        if (x * x + y * y + z * z > 0.01) return json::array({x, y, z});
    }
}

json RandomParts::figure(double low, double high) {
    const double value = typed(low, high);
    switch (whole(0, 4)) {
        case 0: return {{"value", value}, {"basis", "measured"}, {"source", "KL, 2026-05-01"}};
        case 1: return {{"value", value}, {"basis", "published"}, {"source", "data sheet"}};
        case 2: return {{"value", nullptr}};
        default: return value;
    }
}

json RandomParts::solid() {
    const double radius = typed(1, 50);
    switch (whole(0, 5)) {
        case 0: return {{"sphere", {{"centre_mm", point(300)}, {"radius_mm", radius}}}};
        case 1: return {{"capsule", {{"from_mm", point(300)}, {"to_mm", point(300)}, {"radius_mm", radius}}}};
        case 2: return {{"cylinder", {{"from_mm", point(300)}, {"to_mm", point(300)}, {"radius_mm", radius}}}};
        case 3: {
            json box = {{"centre_mm", point(300)}, {"size_mm", json::array({typed(1, 200), typed(1, 200), typed(1, 200)})}};
            maybe(box, "turn_deg", json::array({typed(-180, 180), chance(0.2) ? 90.0 : typed(-180, 180), typed(-180, 180)}));
            return {{"box", box}};
        }
        case 4:
            return {{"rounded_box", {{"centre_mm", point(300)}, {"size_mm", json::array({typed(10, 200), typed(10, 200), typed(10, 200)})}, {"radius_mm", typed(0, 5)}}}};
        default: {
            json points = json::array();
            for (int i = whole(5, 12); i > 0; --i) points.push_back(point(100));
            return {{"hull", {{"points_mm", points}}}};
        }
    }
}

json RandomParts::element(const std::string& kind, const std::string& name) {
    json out = {{"kind", kind}};
    if (kind != "rigid" || chance(0.5)) out["name"] = name;
    const double low = typed(-170, 0), high = typed(0, 170);
    if (kind == "rigid") {
        out["to_mm"] = point(300);
        maybe(out, "turn_deg", json::array({typed(-180, 180), typed(-89, 89), typed(-180, 180)}));
        out["solids"] = json::array();
        for (int i = whole(0, 3); i > 0; --i) out["solids"].push_back(solid());
        maybe(out, "mass_g", figure(1, 500));
        maybe(out, "centre_of_mass_mm", point(100));
        maybe(out, "EI_Nm2", figure(0.1, 100));
        maybe(out, "GJ_Nm2", figure(0.1, 100));
        return out;
    }
    maybe(out, "lock_group", "knob");
    if (kind == "hinge" || kind == "slide") maybe(out, "axis", axis());
    if (kind == "hinge" || kind == "swivel") {
        out["min_deg"] = low;
        out["max_deg"] = high;
        maybe(out, "detent_deg", typed(1, 30));
    }
    if (kind == "ball") {
        out["cone_deg"] = typed(5, 175);
        maybe(out, "twist_min_deg", low);
        maybe(out, "twist_max_deg", high);
    }
    if (kind == "slide") {
        out["min_mm"] = typed(-50, 0);
        out["max_mm"] = typed(0, 400);
        maybe(out, "step_mm", typed(1, 20));
        maybe(out, "hold_N", figure(1, 200));
        maybe(out, "stiffness_N_per_m", figure(100, 1e5));
        maybe(out, "setting_error_mm", figure(0.1, 5));
        return out;
    }
    if (kind == "bend") {
        out["length_mm"] = typed(100, 600);
        out["min_radius_mm"] = typed(40, 100);
        maybe(out, "radius_mm", typed(3, 10));
        maybe(out, "mass_g", figure(20, 400));
        maybe(out, "EI_Nm2", figure(0.1, 5));
        maybe(out, "setting_error_per_m", figure(0.01, 1));
    } else {
        maybe(out, "setting_error_deg", figure(0.2, 5));
    }
    maybe(out, "hold_Nm", figure(0.1, 10));
    maybe(out, "stiffness_Nm_per_rad", figure(1, 500));
    return out;
}

json RandomParts::port(bool male) {
    const char* interfaces[] = {"UNC 1/4-20", "UNC 3/8-16", "UNS 5/8-27", "M5", "38 mm dovetail plate", "accessory shoe", "hook-and-loop", "adhesive pad", "bolt pattern"};
    const int which = whole(0, 8);
    json out = {{"interface", interfaces[which]}, {"gender", male ? "male" : "female"}};
    if (which <= 3) {
        maybe(out, "length_mm", figure(3, 20));
        maybe(out, "material", "aluminium-6061");
        maybe(out, "lock_ring", chance(0.5));
    }
    if (which == 8) {
        const int count = whole(1, 4);
        out["count"] = count;
        out["screw"] = "UNC 4-40";
        const double least = typed(10, 30);
        if (count > 1) out["circle_mm"] = chance(0.5) ? json(least) : json::array({least, least + typed(0, 20)});
    }
    return out;
}

json RandomParts::grip() {
    json out;
    switch (whole(0, 3)) {
        case 0:
            out = {{"on", "rail"}};
            maybe(out, "min_mm", figure(10, 20));
            maybe(out, "max_mm", figure(20, 40));
            maybe(out, "width_mm", typed(10, 60));
            maybe(out, "wall_mm", typed(2, 12));
            maybe(out, "sections", chance(0.5) ? json::array({"square"}) : json::array({"round", "square"}));
            maybe(out, "hold_torque_Nm", figure(0.1, 10));
            maybe(out, "hold_axial_N", figure(5, 300));
            break;
        case 1:
            out = {{"on", "edge"}};
            maybe(out, "min_mm", figure(0, 10));
            maybe(out, "max_mm", figure(10, 50));
            maybe(out, "throat_mm", typed(10, 80));
            maybe(out, "hold_moment_Nm", figure(0.5, 20));
            break;
        case 2:
            out = {{"on", "face"}, {"fixing", chance(0.5) ? "standing" : "hook_and_loop"}};
            maybe(out, "size_mm", json::array({typed(20, 200), typed(20, 200)}));
            maybe(out, "hold_force_N", figure(1, 100));
            break;
        default:
            out = {{"on", "cloth"}};
            maybe(out, "max_mm", figure(1, 10));
            maybe(out, "hold_force_N", figure(0.1, 5));
            maybe(out, "drift_mm", figure(1, 20));
    }
    return out;
}

json RandomParts::part(bool reversible) {
    const char* kinds[] = {"arm", "neck", "post", "joint", "adapter", "back", "grip", "switch"};
    const int kind = reversible ? whole(0, 4) : whole(0, 7);
    json out = {{"id", "part-" + std::to_string(whole(0, 99999))}, {"name", "Invented part"}, {"kind", kinds[kind]}};
    maybe(out, "basis", chance(0.5) ? json("assumed") : json{{"kind", "measured"}, {"source", "KL, 2026-05-01"}});
    maybe(out, "words", json::array({"invented", "test"}));
    const std::string elementKinds[] = {"rigid", "hinge", "swivel", "ball", "slide", "bend"};
    out["elements"] = json::array();
    for (int i = 0, n = whole(1, 7); i < n; ++i) out["elements"].push_back(element(elementKinds[whole(0, 5)], "joint " + std::to_string(i)));
    if (kind == 6) {
        for (int i = whole(1, 3); i > 0; --i) out["grips"].push_back(grip());
    } else {
        for (int i = reversible ? 1 : whole(1, 3); i > 0; --i) out["bases"].push_back(port(chance(0.5)));
    }
    if (kind == 7) {
        out["face"] = {{"size_mm", json::array({typed(20, 130), typed(20, 130), typed(5, 60)})}};
        maybe(out["face"], "action", "pull");
        maybe(out["face"], "operating_axis", axis());
        maybe(out["face"], "travel_mm", figure(0, 10));
        maybe(out["face"], "force_N", figure(0, 5));
        maybe(out["face"], "angle_tolerance_deg", figure(5, 60));
    } else {
        out["outlet"] = port(chance(0.5));
    }
    if (reversible) out["reversible"] = true;
    else if (chance(0.5)) out["keep_free"].push_back({{"what", "cable exit"}, {"solid", solid()}});
    maybe(out, "rated_load_g", figure(100, 3000));
    if (chance(0.7)) {
        out["price"] = {{"amount", std::to_string(whole(0, 99)) + "." + std::to_string(whole(10, 99))}};
        maybe(out["price"], "basis", "published");
        maybe(out["price"], "source", "price list, 2026");
    }
    maybe(out, "tools", json::array({"4 mm hex key"}));
    maybe(out, "release_actions", whole(0, 4));
    maybe(out, "notes", "invented; \"quoted\", with a line\nbreak");
    return out;
}

}  // namespace hither::test
