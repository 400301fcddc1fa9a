#pragma once
#include <string>
#include <vector>

namespace hither {

/// "Hthr" in ASCII: what a plan file carries at byte 68 of its header (SQLite's application_id), so
/// that `file` and the desktop can tell it from other SQLite files.
constexpr unsigned planApplicationId = 0x48746872;
/// SQLite's user_version of a plan file: the number of its format.
constexpr int planFormat = 1;

/// One table: its name, the exact text by which it is made (which is also what a file must contain),
/// and the columns by which its rows are ordered.
struct PlanTable { std::string name, sql, order; };

/// The tables of format 1 in the order in which they are made. Frozen: a later format gets a list of
/// its own and a migration step. Columns hold SI values and say so in their names (_m, _rad, _kg, _N):
/// a column holds a binary number, and millimetres or degrees could not give every one of them back.
const std::vector<PlanTable>& planTables1();

}  // namespace hither
