#include "app/words/storage_words.h"

#include <algorithm>

namespace hither {
namespace {

std::string fact(const StorageError& error, const std::string& name) {
    const auto found = error.facts.find(name);
    return found == error.facts.end() ? std::string{} : echoed(found->second, 200);
}

std::string cause(const StorageError& error) {
    using Code = StorageError::Code;
    switch (error.code) {
        case Code::missing: return "there is no such file";
        case Code::notAFile: return "this is not an ordinary file";
        case Code::tooLarge: return "too large to be a plan";
        case Code::notAPlan: return error.facts.count("line") ? "the text is not JSON as it should be" : "this is not a Hither plan";
        case Code::truncated: return "the file is cut short";
        case Code::newerFormat: return "the plan was saved by a newer Hither";
        case Code::damaged: return "the file is damaged";
        case Code::unexpectedSchema: return "the file's tables are not those of a plan";
        case Code::badValue: return "this value cannot be right";
        case Code::unknownKey: return "unknown key";
        case Code::missingKey: return "something is missing";
        case Code::wrongType: return "this is of the wrong type";
        case Code::cannotWrite: return "the file could not be written; the old one is unchanged";
        case Code::cannotVerify: return "what was written did not read back as the plan; the old file is unchanged";
        case Code::lockedByOther: return "somebody else has this plan open";
        case Code::ioError: return "the file could not be read";
    }
    return "the file could not be read";
}

}  // namespace

std::string echoed(const std::string& text, std::size_t most) {
    std::string out;
    for (const char c : text) {
        if (out.size() >= most && (static_cast<unsigned char>(c) & 0xC0u) != 0x80u) { out += "..."; break; }
        out += static_cast<unsigned char>(c) < 0x20 || c == 0x7f ? ' ' : c;
    }
    return out;
}

std::string sentence(const StorageError& error) {
    std::string line = error.file.empty() ? std::string{} : echoed(error.file, 300) + ": ";
    if (!error.place.empty()) line += echoed(error.place, 200) + ": ";
    line += cause(error);
    std::string more;
    const auto add = [&](const std::string& text) { if (!text.empty()) more += (more.empty() ? "" : "; ") + text; };
    if (const std::string found = fact(error, "found"); !found.empty()) add("found " + found);
    if (const std::string allowed = fact(error, "allowed"); !allowed.empty()) add("allowed: " + allowed);
    if (const std::string nearest = fact(error, "nearest"); !nearest.empty()) add("did you mean " + nearest + "?");
    for (const auto& [name, text] : error.facts)
        if (name != "found" && name != "allowed" && name != "nearest" && name != "line" && name != "column") add(name + " " + echoed(text, 200));
    return more.empty() ? line : line + " (" + more + ")";
}

std::string sentence(const std::vector<StorageError>& problems, const std::string& path) {
    if (problems.empty()) return path + ": cannot be read";
    // A misspelt key is the cause of what is then missing: it is told first.
    const auto first = std::find_if(problems.begin(), problems.end(), [](const StorageError& e) { return e.code == StorageError::Code::unknownKey; });
    std::string line = sentence(first == problems.end() ? problems.front() : *first);
    if (problems.size() > 1) line += " (and " + std::to_string(problems.size() - 1) + " more)";
    return line;
}

std::string sentence(const PlanProblem& problem, const std::string& file) {
    return echoed(file, 300) + ": " + (problem.where.empty() ? "" : echoed(problem.where, 200) + ": ") + echoed(problem.what, 400);
}

}  // namespace hither
