#pragma once
#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace hither {

/// Strength and stiffness of what parts are made of, from resources/materials/materials.json with
/// the source of each row. Pa; G 0 where it is not known.
struct Material { std::string key, name; double E_Pa = 0, G_Pa = 0, yield_Pa = 0; std::string source; };
struct MaterialTable {
    std::map<std::string, Material> rows;
    const Material* find(const std::string& key) const;
};
/// Problems are one line each; rows that are wrong are left out.
MaterialTable readMaterials(const std::filesystem::path& file, std::vector<std::string>& problems);

}  // namespace hither
