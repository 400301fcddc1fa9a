#include "core/catalogue/materials.h"

#include <nlohmann/json.hpp>

#include "core/catalogue/json_form.h"
#include "core/catalogue/json_text.h"
#include "core/catalogue/port_json.h"

namespace hither {

const Material* MaterialTable::find(const std::string& key) const {
    const auto found = rows.find(key);
    return found == rows.end() ? nullptr : &found->second;
}

MaterialTable readMaterials(const std::filesystem::path& file, std::vector<std::string>& problems) {
    MaterialTable table;
    const JsonRead read = readJsonFile(file);
    std::vector<PartProblem> found;
    ProblemList list{file.string(), "", found};
    if (!read.json) {
        list.add("", read.problem, "a list of materials");
    } else if (!read.json->is_array()) {
        list.add("", quoted(*read.json), "a list of materials");
    } else {
        for (std::size_t i = 0; i < read.json->size(); ++i) {
            const std::size_t before = found.size();
            JsonForm form((*read.json)[i], std::to_string(i), list);
            constexpr FormUnit gigapascal{"GPa", 1e9, 1}, megapascal{"MPa", 1e6, 1};
            Material row;
            row.key = form.needText("key", 64);
            if (!row.key.empty() && !isId(row.key)) form.problem("key", "lower case letters a to z, digits and hyphens");
            row.name = form.needText("name");
            row.E_Pa = form.need("E_GPa", gigapascal, {0, 2000, true});
            row.G_Pa = form.numberOr("G_GPa", 0, gigapascal, {0, 1000, true});
            row.yield_Pa = form.need("yield_MPa", megapascal, {0, 10000, true});
            row.source = form.needText("source", 1000);
            form.finish();
            if (found.size() != before) continue;
            const std::string key = row.key;
            if (!table.rows.emplace(key, std::move(row)).second) list.add(std::to_string(i) + "/key", "\"" + key + "\" for the second time", "a key of its own");
        }
    }
    for (const PartProblem& problem : found) problems.push_back(describe(problem));
    return table;
}

}  // namespace hither
