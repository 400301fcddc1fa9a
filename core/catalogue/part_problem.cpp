#include "core/catalogue/part_problem.h"

namespace hither {

std::string describe(const PartProblem& problem) {
    std::string line = problem.file;
    const auto append = [&line](const std::string& separator, const std::string& text) {
        if (text.empty()) return;
        if (!line.empty()) line += separator;
        line += text;
    };
    append(": ", problem.part.empty() ? "" : "part " + problem.part);
    append(": ", problem.key);
    append(": ", problem.found.empty() ? "" : "found " + problem.found);
    append("; ", problem.allowed.empty() ? "" : "allowed: " + problem.allowed);
    return line;
}

}  // namespace hither
