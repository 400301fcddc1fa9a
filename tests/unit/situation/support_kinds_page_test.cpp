#include <catch2/catch.hpp>
#include <fstream>
#include <sstream>

#include "core/units/quantity.h"
#include "tests/unit/situation/support_samples.h"

using namespace support_samples;

namespace {

std::string number(double value, bool angle) {
    std::ostringstream text;
    text << std::round((angle ? degrees(value) : 1000 * value) * 10) / 10;
    return text.str();
}

std::string inGroup(const std::string& group) { return group.empty() ? "-" : "`" + group + "`"; }

/// What of a rail, edge, face or cloth a person wants to know before choosing it, at standard dimensions.
std::string size(const Attachment& a) {
    const std::string length = number(a.length_m(), false) + " mm long";
    switch (a.kind) {
        case AttachmentKind::rail: return (a.section == Section::square ? "square, " : "round, ") + a.tubeAsTyped + ", " + length;
        case AttachmentKind::edge: return number(*a.thickness_m.value, false) + " mm thick, " + length + ", free " + number(a.depth_m, false) + " mm in";
        case AttachmentKind::face: return number(a.sizeX_m, false) + " x " + number(a.sizeY_m, false) + " mm";
        case AttachmentKind::cloth: return number(*a.thickness_m.value, false) + " mm thick, " + length;
    }
    return {};
}

std::string vector(const Vec3& v, double scale) {
    std::ostringstream text;
    for (int i = 0; i < 3; ++i) {
        const double rounded = std::round(v[i] * scale * 100) / 100;
        text << (i ? ", " : "[") << (rounded == 0 ? 0.0 : rounded);
    }
    return text.str() + "]";
}
std::string point(const Vec3& p) { return vector((p * 1000).array().round(), 1); }

std::string line(const Attachment& a) { return a.kind == AttachmentKind::face ? "middle " + point(a.a) : point(a.a) + " to " + point(a.b); }

/// Where `around` counts from on a rail, the x axis of a face, and the normals.
std::string directions(const Attachment& a) {
    if (a.kind == AttachmentKind::rail) return "around 0: " + vector(a.reference, 1);
    return (a.kind == AttachmentKind::face ? "x: " + vector(a.reference, 1) + ", " : std::string()) + "up: " + vector(a.up, 1);
}

std::string notFree(const Attachment& a) {
    std::string text;
    for (const Blocked& b : a.blocked) {
        text += (text.empty() ? "" : "; ") + number(b.from_m, false) + "-" + number(b.to_m, false) + " " + b.why;
        if (!b.wholeTurn) text += " (around " + number(b.sectorFrom_rad, true) + " to " + number(b.sectorTo_rad, true) + ")";
    }
    return text.empty() ? "-" : text;
}

const char* kindWord(AttachmentKind kind) {
    switch (kind) {
        case AttachmentKind::rail: return "rail";
        case AttachmentKind::edge: return "edge";
        case AttachmentKind::face: return "face";
        case AttachmentKind::cloth: return "cloth";
    }
    return "";
}

/// The page as the code has it. Groups, attachments and landmarks are listed with every group that the
/// kind can have, so at the most of each range and the standard of everything else.
std::string page() {
    std::ostringstream out;
    out << "# Kinds of supports\n\n"
           "What can be typed about each kind of support, and what it then has to fix a mount to or to measure from.\n"
           "A test compares this page with the program, so that it cannot go stale.\n\n"
           "Dimensions that are not typed have their standard value and count as assumed; the standards are common\n"
           "practice, no source, unless the page says otherwise. Lengths are in mm, angles in degrees; a file's keys are\n"
           "those of the first column. A range of 0 leaves its moving group out, and what belongs to that group then\n"
           "belongs to the group's parent. Places and sizes of rails, edges, faces, cloth and landmarks are those of the\n"
           "standard dimensions with every group at zero; any rail takes another tube size by its id (`\"tubes\": {\"back_cane_left\": \"1 in\"}`). Everything lies in the\n"
           "support's own frame: x forward, y to the person's left, z up, origin on the floor below the reference point\n"
           "(chair: middle of the line where seat and back meet; bed: mattress centre line at the back section's hinge;\n"
           "table and tray: middle of the edge nearest the person; pole: its middle).\n"
           "A place along a rail, edge or cloth counts from its first end; round a rail it counts from the direction given,\n"
           "by the right hand about first end to second end.\n";
    for (const SupportKind& kind : supportKinds()) {
        out << "\n## " << kind.kind << ": " << kind.name << "\n\n" << kind.about << "\n";
        SupportSpec spec = standard(kind.kind);
        if (!kind.dimensions.empty()) {
            out << "\n| dimension | meaning | standard | least | most |\n| --- | --- | --- | --- | --- |\n";
            for (const SupportDimension& d : kind.dimensions) {
                out << "| `" << dimensionKey(d) << "` | " << d.means << " | " << number(d.standard, d.angle) << " | " << number(d.min, d.angle) << " | " << number(d.max, d.angle) << " |\n";
                if (d.key.size() > 6 && d.key.rfind("_range") == d.key.size() - 6 && d.standard == 0) spec.dimensions[d.key] = d.max;
            }
        }
        const SupportMade made = makeSupport(spec);
        REQUIRE(made.support);
        if (!made.support->groups.empty()) {
            out << "\n| moving group | what moves | goes with | setting |\n| --- | --- | --- | --- |\n";
            for (const MovingGroup& g : made.support->groups)
                out << "| `" << g.id << "` | " << g.name << " | " << inGroup(g.parent) << " | `" << g.id << (g.slides ? "_mm` (slides)" : "_deg` (turns)") << " |\n";
        }
        if (!made.support->attachments.empty()) {
            out << "\n| id | what | kind | size | where | directions | not free, mm along | group |\n| --- | --- | --- | --- | --- | --- | --- | --- |\n";
            for (const Attachment& a : made.support->attachments)
                out << "| `" << a.id << "` | " << a.name << " | " << kindWord(a.kind) << " | " << size(a) << " | " << line(a) << " | " << directions(a) << " | " << notFree(a) << " | " << inGroup(a.group) << " |\n";
        }
        if (!made.support->landmarks.empty()) {
            out << "\n| landmark | what | where | group |\n| --- | --- | --- | --- |\n";
            for (const Landmark& l : made.support->landmarks) out << "| `" << l.id << "` | " << l.name << " | " << point(l.p_S) << " | " << inGroup(l.group) << " |\n";
        }
    }
    return out.str();
}

}  // namespace

TEST_CASE("resources/support_kinds.md lists what the program makes", "[support]") {
    const std::string fromCode = page();
    std::ifstream file(std::string(HITHER_SOURCE_DIR) + "/resources/support_kinds.md", std::ios::binary);
    std::ostringstream read;
    read << file.rdbuf();
    if (read.str() == fromCode) { SUCCEED(); return; }
    const std::string fresh = std::string(HITHER_BINARY_DIR) + "/support_kinds.md";
    std::ofstream(fresh, std::ios::binary) << fromCode;
    FAIL("the page differs from the code; the page as it should be is in " << fresh);
}
