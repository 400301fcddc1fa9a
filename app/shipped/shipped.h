#pragma once
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "core/catalogue/catalogue.h"
#include "core/catalogue/materials.h"
#include "core/checks/checks.h"
#include "core/plan/plan.h"
#include "core/situation/body_table.h"

namespace hither {

/// What a plan is judged with: the shipped data and the person's own parts.
struct Shipped {
    Catalogue catalogue;
    MaterialTable materials;
    BodyData body;
};

/// Folder of the shipped data: HITHER_RESOURCES, else `resources` of the source folder it was built in.
std::filesystem::path resourcesFolder();
/// Folder of the sample plans: beside the shipped data.
std::filesystem::path samplesFolder();
/// The person's own folder: XDG_DATA_HOME/hither, else ~/.local/share/hither; empty when neither is known.
std::filesystem::path ownDataFolder();
/// Folder of the person's own parts: HITHER_PARTS, else `parts` in their own folder. It need not exist.
std::filesystem::path ownPartsFolder();

/// Reads the shipped data. `problem` is one clear line when it is not whole, and then there is nothing;
/// the person's own parts that cannot be read are left out, each with a line in `leftOut`.
struct ShippedRead { std::optional<Shipped> shipped; std::string problem; std::vector<std::string> leftOut; };
ShippedRead readShipped();

/// Reads the parts anew, shipped and own, into `shipped`. The parts that it had stay alive in `retired`
/// for whoever still points at one. A line for each that cannot be read.
std::vector<std::string> readPartsAgain(Shipped& shipped, std::vector<Catalogue>& retired);

/// What the checks need besides a setup. It refers to `shipped`, which must outlive it.
CheckContext contextFor(const Plan& plan, const Shipped& shipped);

}  // namespace hither
