#include "app/cli/measured_json.h"

#include <cmath>

namespace hither::cli {

double rounded(double value) {
    const double r = std::round(value * 1e6) / 1e6;
    return r == 0.0 ? 0.0 : r;  // no negative zero
}

const char* suffix(Measure measure) {
    switch (measure) {
        case Measure::length: return "_mm";
        case Measure::angle: return "_deg";
        case Measure::mass: return "_g";
        case Measure::force: return "_N";
        case Measure::moment: return "_Nm";
        case Measure::none:
        case Measure::ratio:
        case Measure::count: return "";
    }
    return "";
}

void put(Json& into, const std::string& key, double si, Measure measure) {
    double value = si;
    if (measure == Measure::length || measure == Measure::mass) value *= 1000.0;
    if (measure == Measure::angle) value = degrees(si);
    into[key + suffix(measure)] = rounded(value);
}

Json millimetres(const Vec3& p) { return Json::array({rounded(p.x() * 1000), rounded(p.y() * 1000), rounded(p.z() * 1000)}); }
Json plain(const Vec3& v) { return Json::array({rounded(v.x()), rounded(v.y()), rounded(v.z())}); }
Json rotation(const Mat3& R) {
    Json rows = Json::array();
    for (int i = 0; i < 3; ++i) rows.push_back(plain(R.row(i).transpose()));
    return rows;
}

}  // namespace hither::cli
