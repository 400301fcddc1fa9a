#pragma once
#include <map>
#include <string>
#include <vector>

#include "app/picture/make_picture.h"
#include "app/picture/picture.h"
#include "core/chain/setup.h"

namespace hither {

/// Meshes by what they were made from, kept from one picture to the next.
class MeshStore {
public:
    /// The mesh kept under `key`, made now when there is none.
    template <class Make>
    MeshRef get(const std::string& key, Make make) {
        Kept& kept = meshes_[key];
        if (!kept.mesh) kept.mesh = std::make_shared<const Mesh>(make());
        kept.used = true;
        return kept.mesh;
    }
    /// Forgets what was not asked for since the last call.
    void sweep();

private:
    struct Kept { MeshRef mesh; bool used = false; };
    std::map<std::string, Kept> meshes_;
};

/// One mount drawn as what it is: its grip closed on the tube, edge, face or cloth that it holds, necks
/// bent as set, knobs, threads, the switch with its cap; then handles of its joints (Look::jointHandle)
/// and of the outlets where a part can be added (Look::outletHandle), in Build only.
std::vector<PictureItem> mountItems(const SetupMount& mount, const Situation& situation, const PictureWishes& wishes, MeshStore& store);

}  // namespace hither
