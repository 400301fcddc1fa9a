#include <algorithm>
#include <ostream>

#include "app/cli/measured_json.h"
#include "app/cli/program.h"
#include "app/words/text.h"

namespace hither::cli {
namespace {

bool hasWords(const Part& part, const std::string& wanted) {
    std::string text = part.id + " " + part.name + " " + word(part.kind);
    for (const std::string& w : part.words) text += " " + w;
    const auto lower = [](std::string s) { for (char& c : s) if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a'); return s; };
    text = lower(text);
    std::string one;
    for (const char c : lower(wanted) + " ") {
        if (c != ' ') { one += c; continue; }
        if (!one.empty() && text.find(one) == std::string::npos) return false;
        one.clear();
    }
    return true;
}

std::string ends(const Part& part) {
    std::string text = part.bases.empty() ? std::string{} : describe(part.bases.front());
    for (std::size_t i = 1; i < part.bases.size(); ++i) text += " or " + describe(part.bases[i]);
    if (part.outlet) text += (text.empty() ? "" : " -> ") + describe(*part.outlet);
    return text;
}

}  // namespace

int runList(const ListArguments& arguments, std::ostream& out, std::ostream& err) {
    Json rows = Json::array();
    if (arguments.what == "parts") {
        const Shipped shipped = loadShipped(err);
        for (const auto& part : shipped.catalogue.parts()) {
            if (!hasWords(*part, arguments.words)) continue;
            rows.push_back({{"id", part->id}, {"name", part->name}, {"kind", word(part->kind)}});
            if (!arguments.json) out << padded(part->id, 34) << padded(word(part->kind), 9) << padded(part->name, 46) << ends(*part) << "\n";
        }
    } else if (arguments.what == "supports") {
        for (const SupportKind& kind : supportKinds()) {
            SupportSpec spec;
            spec.id = spec.kind = kind.kind;
            Json one = {{"kind", kind.kind}, {"name", kind.name}, {"about", kind.about}};
            Json dimensions = Json::array(), groups = Json::array(), attachments = Json::array();
            if (!arguments.json) out << kind.kind << ": " << kind.name << "\n" << wrapped("  " + kind.about, "  ", 100) << "\n";
            for (const SupportDimension& d : kind.dimensions) {
                const Measure measure = d.angle ? Measure::angle : Measure::length;
                Json row = {{"key", d.key + suffix(measure)}, {"means", d.means}};
                put(row, "standard", d.standard, measure);
                put(row, "min", d.min, measure);
                put(row, "max", d.max, measure);
                if (!arguments.json)
                    out << "    " << padded(d.key + suffix(measure), 30) << padded(d.angle ? printAngle(d.standard) : printLength(d.standard, UnitSystem::metric), 10) << d.means << "\n";
                dimensions.push_back(row);
            }
            if (const SupportMade made = makeSupport(spec); made.support) {
                for (const MovingGroup& g : made.support->groups) {
                    const Measure measure = g.slides ? Measure::length : Measure::angle;
                    Json row = {{"setting", g.id + suffix(measure)}, {"name", g.name}};
                    put(row, "min", g.min, measure);
                    put(row, "max", g.max, measure);
                    groups.push_back(row);
                    if (!arguments.json) out << "    " << padded(g.id + suffix(measure), 30) << padded("setting", 10) << g.name << "\n";
                }
                for (const Attachment& a : made.support->attachments) {
                    static const char* const kinds[] = {"rail", "edge", "face", "cloth"};
                    attachments.push_back({{"id", a.id}, {"kind", kinds[static_cast<int>(a.kind)]}, {"name", a.name}});
                    if (!arguments.json) out << "    " << padded(a.id, 30) << padded(kinds[static_cast<int>(a.kind)], 10) << a.name << "\n";
                }
            }
            one["dimensions"] = dimensions;
            one["settings"] = groups;
            one["attachments"] = attachments;
            rows.push_back(one);
        }
    } else {
        for (const auto& [id, name] : controlSites()) {
            rows.push_back({{"id", id}, {"name", name}});
            if (!arguments.json) out << padded(id, 26) << name << "\n";
        }
    }
    if (arguments.json) out << Json({{"hither_list", 1}, {arguments.what, rows}}).dump(2) << "\n";
    return fine;
}

}  // namespace hither::cli
