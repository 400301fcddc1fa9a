#include "app/cli/findings_out.h"

#include <algorithm>
#include <array>

#include "app/words/text.h"
#include "core/checks/subjects.h"

namespace hither::cli {
namespace {

const char* kindWord(Subject::Kind kind) {
    switch (kind) {
        case Subject::Kind::mount: return "mount";
        case Subject::Kind::part: return "part";
        case Subject::Kind::body: return "body";
        case Subject::Kind::support: return "support";
        case Subject::Kind::keepOut: return "keep_out";
        case Subject::Kind::site: return "site";
    }
    return "part";
}

const char* kindWord(Remedy::Kind kind) {
    switch (kind) {
        case Remedy::Kind::insertParts: return "insert_parts";
        case Remedy::Kind::replacePart: return "replace_part";
        case Remedy::Kind::moveJoint: return "move_joint";
        case Remedy::Kind::solve: return "solve";
        case Remedy::Kind::measure: return "measure";
        case Remedy::Kind::chooseGroup: return "choose_group";
    }
    return "measure";
}

/// "MISSES", "UNKNOWN", "CLOSE", "meets": told apart by the word, with no need of colour.
std::string shown(Verdict verdict) {
    std::string text = word(verdict);
    if (verdict != Verdict::meets)
        std::transform(text.begin(), text.end(), text.begin(), [](unsigned char c) { return static_cast<char>(std::toupper(c)); });
    return text;
}

}  // namespace

Json findingJson(const Finding& f, UnitSystem system) {
    Json out;
    out["id"] = f.id;
    out["check"] = word(f.check);
    out["verdict"] = word(f.verdict);
    if (f.value) put(out, "value", *f.value, f.measure);
    if (f.limit) put(out, "limit", *f.limit, f.measure);
    out["basis"] = word(f.basis);
    out["sentence"] = sentence(f, system);
    out["key"] = f.key;
    Json subjects = Json::array();
    for (const Subject& s : f.subjects) {
        Json one;
        one["kind"] = kindWord(s.kind);
        one["id"] = s.id;
        if (s.kind == Subject::Kind::part) one["part"] = s.part;
        if (!s.piece.empty()) one["piece"] = s.piece;
        one["name"] = s.name;
        subjects.push_back(one);
    }
    out["subjects"] = subjects;
    if (f.witness) out["witness"] = {{"a_mm", millimetres(f.witness->a_W)}, {"b_mm", millimetres(f.witness->b_W)}};
    if (!f.at.empty()) {
        Json at = Json::array();
        for (const GroupAt& g : f.at) {
            Json one = {{"support", g.support}, {"group", g.group}};
            put(one, "setting", g.value, g.slides ? Measure::length : Measure::angle);
            at.push_back(one);
        }
        out["at"] = at;
    }
    if (f.remedy) {
        Json remedy;
        remedy["kind"] = kindWord(f.remedy->kind);
        remedy["sentence"] = remedySentence(f, system);
        remedy["mount"] = f.remedy->mount;
        if (!f.remedy->insert.empty()) {
            remedy["before_part"] = f.remedy->part;
            Json insert = Json::array();
            for (const MountPart& part : f.remedy->insert) insert.push_back({{"part", part.part}, {"reversed", part.reversed}});
            remedy["insert"] = insert;
        }
        if (f.remedy->price) remedy["price"] = {{"amount", printAmount(*f.remedy->price)}, {"currency", f.remedy->price->currency}};
        out["remedy"] = remedy;
    }
    return out;
}

std::string tally(const std::vector<Finding>& findings) {
    std::array<int, 4> count{};
    for (const Finding& f : findings) ++count[static_cast<std::size_t>(f.verdict)];
    std::string text;
    const auto add = [&](Verdict v, const char* what) {
        const int n = count[static_cast<std::size_t>(v)];
        if (n > 0) text += (text.empty() ? "" : ", ") + std::to_string(n) + " " + what;
    };
    add(Verdict::misses, "missed");
    add(Verdict::unknown, "unknown");
    add(Verdict::close, "close");
    add(Verdict::meets, "met");
    return text.empty() ? "nothing to check yet" : text;
}

void printFindings(std::ostream& out, const std::vector<Finding>& findings, const std::vector<AcceptedNote>& accepted,
                   UnitSystem system, bool brief) {
    const std::string indent(22, ' ');
    for (const Finding& f : findings) {
        const auto note = std::find_if(accepted.begin(), accepted.end(), [&](const AcceptedNote& a) { return a.finding == f.id; });
        if (brief && f.verdict == Verdict::meets && note == accepted.end()) continue;
        std::string head = "  " + shown(f.verdict);
        head.resize(11, ' ');
        head += word(f.check);
        head.resize(indent.size(), ' ');
        out << wrapped(head + sentence(f, system), indent, 100) << "\n";
        if (f.remedy) out << wrapped(indent + "-> " + remedySentence(f, system), indent + "   ", 100) << "\n";
        if (f.verdict != Verdict::meets && f.basis == BasisKind::assumed) out << indent << "(rests on assumed figures)\n";
        if (note != accepted.end())
            out << wrapped(indent + "accepted by " + note->who + ", " + note->when_utc.substr(0, 10) + ": " + note->note, indent, 100) << "\n";
    }
}

}  // namespace hither::cli
