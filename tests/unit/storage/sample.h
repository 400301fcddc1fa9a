#pragma once
#include <random>
#include <string>

#include "core/catalogue/catalogue.h"
#include "core/plan/plan.h"
#include "core/storage/plan_json.h"

namespace hither::test {

/// The shipped parts.
const Catalogue& shippedParts();
/// Reads a plan's JSON form with a fixed id and clock and the shipped parts.
PlanRead readPlan(const std::string& json);
/// Every problem in one text, for messages of failed tests.
std::string told(const std::vector<StorageError>& problems);

/// JSON of a plan that uses every key of the form (invented).
extern const char* const everyKey;
/// The smallest plan that has a mount.
extern const char* const smallest;
Plan everyKeyPlan();

/// A plan of any valid content from a seed: numbers with all their binary digits, several of everything.
Plan randomPlan(std::mt19937_64& random);

/// A folder of its own that goes with this object; its name has a space.
class Folder {
public:
    Folder();
    ~Folder();
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    std::string operator/(const std::string& name) const { return path_ + "/" + name; }
    const std::string& path() const { return path_; }
private:
    std::string path_;
};

std::string bytesOf(const std::string& path);
void writeBytes(const std::string& path, const std::string& bytes);

}  // namespace hither::test
