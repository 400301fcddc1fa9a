#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/plan/plan.h"
#include "core/storage/plan_difference.h"
#include "core/storage/storage_error.h"

namespace hither {

/// A plan as it was last seen when the program ended without saving it.
struct Leftover {
    enum class Against {
        unnamed,      ///< the plan never had a file
        sameFile,     ///< its file is the one that was opened or saved, byte for byte
        otherFile,    ///< its file has been changed since by somebody else
        missingFile   ///< its file is no longer there
    };
    std::string path;                         ///< of the autosave itself
    std::string file;                         ///< the plan's own file; empty: unnamed
    std::string saved_utc;
    Against against = Against::unnamed;
    std::optional<Plan> plan;                 ///< absent when the autosave cannot be read: see problems
    std::vector<PlanDifference> differences;  ///< from the plan in `file` to the autosaved one; empty without such a file
    std::vector<StorageError> problems;
};
const char* word(Leftover::Against against);

/// Unsaved plans kept in a folder of the program's own by the same writer as real saves. Each is bound to its
/// file by that file's SHA-256, never by dates; beside it stands NAME.json that says so. An autosave
/// goes only by `discard`: after a good save, or when a person says so.
class Autosave {
public:
    explicit Autosave(std::string folder) : folder_(std::move(folder)) {}

    /// Keeps a plan. `file` is its own file (empty: unnamed) and `fileSum` that file's SHA-256 when it was
    /// last opened or saved here. The folder is made when it is not there. The path of the autosave
    /// is the same for the same plan and file.
    std::vector<StorageError> keep(const Plan& plan, const std::string& file, const std::string& fileSum) const;
    void discard(const Plan& plan, const std::string& file) const;
    void discard(const Leftover& leftover) const;
    /// Everything that was left, in name order.
    std::vector<Leftover> leftovers() const;
    std::string pathFor(const Plan& plan, const std::string& file) const;

private:
    std::string folder_;
};

/// SHA-256 of a plan's file as it is now; null when it cannot be read.
std::optional<std::string> fileSum(const std::string& path);

}  // namespace hither
