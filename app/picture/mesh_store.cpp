#include "app/picture/mount_items.h"

namespace hither {

void MeshStore::sweep() {
    std::erase_if(meshes_, [](const auto& entry) { return !entry.second.used; });
    for (auto& [key, kept] : meshes_) kept.used = false;
}

}  // namespace hither
