#include "core/catalogue/catalogue.h"

#include <algorithm>
#include <set>

#include "core/catalogue/json_text.h"

namespace hither {

const Part* Catalogue::find(const std::string& id) const {
    const auto found = byId_.find(id);
    return found == byId_.end() ? nullptr : parts_[found->second].get();
}

void Catalogue::add(Part part) {
    const auto [place, isNew] = byId_.emplace(part.id, parts_.size());
    auto shared = std::make_shared<const Part>(std::move(part));
    if (isNew) parts_.push_back(std::move(shared));
    else parts_[place->second] = std::move(shared);
}

std::vector<PartProblem> Catalogue::addFolder(const std::filesystem::path& folder) {
    namespace fs = std::filesystem;
    std::vector<PartProblem> problems;
    std::error_code error;
    if (!fs::exists(folder, error)) return problems;
    std::vector<fs::path> files;
    fs::directory_iterator entry(folder, error);
    for (; !error && entry != fs::directory_iterator(); entry.increment(error))
        if (entry->path().extension() == ".json") files.push_back(entry->path());
    if (error) problems.push_back({folder.string(), "", "", "a folder that cannot be listed", "a folder with *.json"});
    std::sort(files.begin(), files.end(), [](const fs::path& a, const fs::path& b) { return a.filename() < b.filename(); });

    std::set<std::string> here;  // an id may replace one of another folder, but not stand twice in this one
    for (const fs::path& file : files) {
        const std::string name = file.string();
        const JsonRead read = readJsonFile(file);
        if (!read.json) {
            problems.push_back({name, "", "", read.problem, "one part or a list of parts in JSON"});
            continue;
        }
        const auto take = [&](const nlohmann::json& json, const std::string& place) {
            PartRead one = readPart(json, name);
            for (PartProblem& problem : one.problems) {
                if (problem.part.empty()) problem.part = place;
                problems.push_back(std::move(problem));
            }
            if (!one.part) return;
            if (!here.insert(one.part->id).second) problems.push_back({name, one.part->id, "id", "an id that stands twice in this folder", "an id of its own"});
            else add(std::move(*one.part));
        };
        if (read.json->is_array()) {
            for (std::size_t i = 0; i < read.json->size(); ++i) take((*read.json)[i], "number " + std::to_string(i + 1));
        } else {
            take(*read.json, "");
        }
    }
    return problems;
}

}  // namespace hither
