#pragma once
#include <string>
#include <vector>

#include "core/storage/plan_schema.h"

namespace hither::test {

/// The bytes of a database after some SQL, as any program could change it; `resum` makes the checksum
/// fit again, so that only what comes after it can refuse.
std::string changedBy(const std::string& bytes, const std::string& sql, bool resum = false);

/// A file with the same rows in the tables of another (older) list, as format 0.
std::string olderFile(const std::string& bytes, const std::vector<PlanTable>& tables);

}  // namespace hither::test
