#pragma once
#include <filesystem>
#include <functional>
#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

#include "app/shipped/shipped.h"
#include "core/plan/plan.h"

namespace hither::cli {

/// Exit codes of every command.
enum Exit { fine = 0, checkMisses = 1, badInput = 2 };

/// Words for standard error: each is one clear line. Thrown by helpers below, caught once in main.
struct Refused { std::string line; };

/// The shipped data. Problems in the person's own parts are warned of on standard error and
/// those files left out; problems in shipped data throw.
Shipped loadShipped(std::ostream& warnings);

/// A plan from a .hither file or its JSON form, told apart by their first bytes. Throws Refused.
Plan openPlan(const std::string& path, const Shipped& shipped);
/// Saves in the form that the path already has on disk, or by its ending, as the next revision with
/// `what` in its history. Throws Refused.
void savePlan(Plan plan, const std::string& path, const std::string& what);

/// Options chosen by id or name; all when `chosen` is empty. Throws Refused when there is none such.
std::vector<std::size_t> chosenOptions(const Plan& plan, const std::string& chosen, const std::string& path);
/// makeSetup with its first problem as Refused.
Setup setupOf(const Plan& plan, std::size_t option, const Shipped& shipped, const std::string& path);
/// The chosen options made ready. One that cannot be (a mount not fixed yet, a grip that does not take
/// that rail) is told with its reason beside the others; when none can be, throws Refused with the first reason.
struct Ready { std::size_t option = 0; std::optional<Setup> setup; std::string problem; };
std::vector<Ready> readyOptions(const Plan& plan, const std::string& chosen, const Shipped& shipped, const std::string& path);

/// Display units: the plan's own unless the person asks for others.
enum class Display { asPlan, metric, inch };
UnitSystem unitsFor(const Plan& plan, Display display);

struct CheckArguments { std::string plan, option; bool json = false, brief = false; Display display = Display::asPlan; };
int runCheck(const CheckArguments& arguments, std::ostream& out, std::ostream& err);

struct PartsArguments { std::string plan, option; bool json = false, csv = false; Display display = Display::asPlan; };
int runParts(const PartsArguments& arguments, std::ostream& out, std::ostream& err);

struct SolveArguments { std::string plan, option, mount; int choose = 1; bool json = false, write = false; Display display = Display::asPlan; };
int runSolve(const SolveArguments& arguments, std::ostream& out, std::ostream& err);

struct ImportArguments { std::string from, to; bool overwrite = false; };
int runImport(const ImportArguments& arguments, std::ostream& out, std::ostream& err);
struct ExportArguments { std::string plan, to; bool overwrite = false; };
int runExport(const ExportArguments& arguments, std::ostream& out, std::ostream& err);

struct ResolveArguments { std::string plan, option; bool json = false; Display display = Display::asPlan; };
int runResolve(const ResolveArguments& arguments, std::ostream& out, std::ostream& err);

struct ListArguments { std::string what, words; bool json = false; };
int runList(const ListArguments& arguments, std::ostream& out, std::ostream& err);

}  // namespace hither::cli
