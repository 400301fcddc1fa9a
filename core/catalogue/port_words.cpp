#include <cmath>

#include "core/catalogue/port.h"
#include "core/units/quantity.h"

namespace hither {

namespace {

/// "8 mm", "4.5 mm": a tenth only where there is one.
std::string millimetres(double metres) {
    const double tenths = std::round(metres * 1e4);
    return printLength(metres, UnitSystem::metric, std::fmod(tenths, 10) == 0 ? 0 : 1);
}

/// The bench name of a thread: "1/4-20" for "UNC 1/4-20", "M5" as it is.
std::string benchName(const std::string& thread) {
    const auto space = thread.rfind(' ');
    return space == std::string::npos ? thread : thread.substr(space + 1);
}

std::string describePattern(const BoltPattern& pattern, bool screws) {
    const std::string what = (screws ? benchName(pattern.screw) + " screw" : "hole") + std::string(pattern.count == 1 ? "" : "s") +
                             (screws ? "" : " for " + benchName(pattern.screw));
    const std::string count = std::to_string(pattern.count) + " " + what;
    if (pattern.count == 1) return count + " in the middle";
    if (pattern.circleMin_m == pattern.circleMax_m) return count + " on a circle of " + millimetres(pattern.circleMin_m);
    return count + " on a circle of " + millimetres(pattern.circleMin_m) + " to " + millimetres(pattern.circleMax_m);
}

}  // namespace

std::string describe(const Port& port) {
    const bool male = port.gender == Gender::male;
    switch (port.interface) {
        case Interface::thread: {
            std::string text = (port.thread ? benchName(port.thread->name) + " " : std::string()) + (male ? "stud" : "socket");
            if (port.length.known()) text += ", " + millimetres(*port.length.value) + (male ? " long" : " deep");
            else text += male ? ", length not known" : ", depth not known";
            return port.lockRing ? text + ", with a lock ring" : text;
        }
        case Interface::dovetailPlate: return male ? "38 mm dovetail plate" : "clamp for a 38 mm dovetail plate";
        case Interface::accessoryShoe: return male ? "foot for an accessory shoe" : "accessory shoe";
        case Interface::hookAndLoop: return male ? "hook pad" : "loop pad";
        case Interface::adhesivePad: return male ? "adhesive pad" : "clean flat face for an adhesive pad";
        case Interface::boltPattern:
            return port.pattern ? describePattern(*port.pattern, male) : std::string(male ? "screws" : "holes");
    }
    return {};
}

}  // namespace hither
