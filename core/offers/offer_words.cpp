#include "core/offers/offer_words.h"

#include <cmath>
#include <cstdio>

namespace hither {
namespace {

/// The bench name of a thread: "1/4-20" for "UNC 1/4-20", "M5" as it is.
std::string benchName(const std::string& thread) {
    const auto space = thread.rfind(' ');
    return space == std::string::npos ? thread : thread.substr(space + 1);
}

std::string patternWords(const Port& port, UnitSystem units) {
    const bool screws = port.gender == Gender::male;
    if (!port.pattern) return screws ? "screws" : "holes";
    const BoltPattern& p = *port.pattern;
    std::string text = std::to_string(p.count) + (screws ? " screw" : " hole") + (p.count == 1 ? "" : "s") + (screws ? " " : " for ") + benchName(p.screw);
    if (p.count == 1) return text;
    text += ",";
    text += p.count == 2 ? " " : " on a circle ";
    text += lengthWords(p.circleMin_m, units);
    if (p.circleMax_m != p.circleMin_m) text += " to " + lengthWords(p.circleMax_m, units);
    return text + (p.count == 2 ? " apart" : " across");
}

/// With its article: "a 1/4-20 socket", "an accessory shoe", "2 holes for M3, 30 mm apart".
std::string aPort(const Port& port, UnitSystem units) {
    const std::string words = portWords(port, units);
    if (port.interface == Interface::boltPattern) return words;
    return (words.front() == 'a' ? "an " : "a ") + words;
}

std::string oneDecimal(double value) {
    char text[32];
    // Rounded down: 2.96 turns must not read as the 3 that are needed.
    std::snprintf(text, sizeof text, "%.1f", std::floor(value * 10 + 1e-6) / 10);
    return text;
}

}  // namespace

std::string lengthWords(double metres, UnitSystem units) {
    const double tenths = std::round(metres * 1e4);
    return printLength(metres, units, std::fmod(tenths, 10) == 0 ? 0 : 1);
}

std::string portWords(const Port& port, UnitSystem units) {
    const bool male = port.gender == Gender::male;
    switch (port.interface) {
        case Interface::thread: return (port.thread ? benchName(port.thread->name) + " " : std::string()) + (male ? "stud" : "socket");
        case Interface::dovetailPlate: return male ? "38 mm dovetail plate" : "clamp for a 38 mm dovetail plate";
        case Interface::accessoryShoe: return male ? "foot for an accessory shoe" : "accessory shoe";
        case Interface::hookAndLoop: return male ? "hook pad" : "loop pad";
        case Interface::adhesivePad: return male ? "adhesive pad" : "flat face for an adhesive pad";
        case Interface::boltPattern: return patternWords(port, units);
    }
    return {};
}

std::string mateWords(const Port& outlet, const Part& next, const BestMate& best, UnitSystem units) {
    if (best.base < 0) return "has no end toward the support";
    const Port& base = next.bases[static_cast<std::size_t>(best.base)];
    const Port& stud = outlet.gender == Gender::male ? outlet : base;
    const Port& socket = outlet.gender == Gender::male ? base : outlet;
    const std::string here = aPort(outlet, units), there = aPort(base, units);
    switch (best.mate.fault) {
        case MateFault::none: break;
        case MateFault::lengthUnknown:
            return std::string("screws on; how far is not known: measure ") + (stud.length.known() ? "how deep its socket is" : "how far the screw stands out");
        case MateFault::interfaceDiffers: return "has " + there + ", here is " + here;
        case MateFault::genderSame: return "both ends are " + here + ": neither goes into the other";
        case MateFault::threadDiffers: return "has " + there + ", here is " + here;
        case MateFault::patternDiffers: return "has " + there + ", here are " + here;
        case MateFault::bottoms:
            return "the " + lengthWords(stud.length.value.value_or(0), units) + " screw meets the bottom of the " +
                   lengthWords(socket.length.value.value_or(0), units) + " socket before it clamps";
        case MateFault::tooFewTurns: return "only " + oneDecimal(best.mate.turns) + " turns engage, 3 are needed";
    }
    switch (base.interface) {
        case Interface::thread: return "screws on by its " + portWords(base, units) + ", " + oneDecimal(best.mate.turns) + " turns";
        case Interface::dovetailPlate: return "slides on by its dovetail";
        case Interface::accessoryShoe: return "slides into the shoe";
        case Interface::hookAndLoop: return "holds by hook and loop";
        case Interface::adhesivePad: return "sticks on by its pad";
        case Interface::boltPattern: return "screws on: " + portWords(stud, units);
    }
    return {};
}

}  // namespace hither
