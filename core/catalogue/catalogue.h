#pragma once
#include <filesystem>
#include <map>
#include <memory>
#include <string>
#include <vector>

#include <nlohmann/json_fwd.hpp>

#include "core/catalogue/part.h"
#include "core/catalogue/part_problem.h"

namespace hither {

/// One part from its JSON form (resources/parts/part_format.md). Every problem is listed; the part
/// is there only when there are none. Unknown keys are problems.
struct PartRead { std::optional<Part> part; std::vector<PartProblem> problems; };
PartRead readPart(const nlohmann::json& json, const std::string& file);
/// The complete JSON form: readPart(writePart(p)) == p, and the text is the same every time.
nlohmann::json writePart(const Part& part);

/// The parts that a person can choose from: shipped ones and their own. Ids are unique; a person's
/// own part with a shipped id takes its place (they measured theirs).
class Catalogue {
public:
    const Part* find(const std::string& id) const;
    const std::vector<std::shared_ptr<const Part>>& parts() const& { return parts_; }
    const std::vector<std::shared_ptr<const Part>>& parts() const&& = delete;  // would outlive its catalogue
    void add(Part part);
    /// Every *.json of a folder in name order: a file is one part or a list of parts. A file that
    /// cannot be read is a problem; the others still load. A missing folder is no problem.
    std::vector<PartProblem> addFolder(const std::filesystem::path& folder);

private:
    std::vector<std::shared_ptr<const Part>> parts_;
    std::map<std::string, std::size_t> byId_;
};

}  // namespace hither
