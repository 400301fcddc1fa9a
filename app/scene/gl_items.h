#pragma once
#include <cstdint>
#include <map>
#include <string>

#include "app/picture/picture.h"
#include "app/scene/gl_materials.h"

namespace Qt3DCore { class QEntity; class QTransform; }
namespace Qt3DRender { class QGeometryRenderer; }

namespace hither {

/// A picture's items as entities. What has the same key as before keeps its entity; only what differs
/// is changed: place, look, mesh (by address), outline.
class GlItems {
public:
    GlItems(Qt3DCore::QEntity* root, GlMaterials& materials);
    ~GlItems();
    void show(const std::vector<PictureItem>& items);

private:
    struct Geometry { MeshRef mesh; Qt3DRender::QGeometryRenderer *surface = nullptr, *edges = nullptr, *outline = nullptr; int users = 0; };
    struct Entry {
        Qt3DCore::QEntity *surface = nullptr, *edges = nullptr, *outline = nullptr;
        Qt3DCore::QTransform* transform = nullptr;
        Qt3DRender::QMaterial *material = nullptr, *edgeMaterial = nullptr;
        PictureItem item;
        std::uint64_t seen = 0;
    };
    Geometry& geometry(const MeshRef& mesh);
    void make(Entry& entry, const PictureItem& item);
    void release(Entry& entry);
    void dress(Entry& entry, const PictureItem& item);
    void outline(Entry& entry, bool on);

    Qt3DCore::QEntity* root_;
    GlMaterials& materials_;
    std::map<const Mesh*, Geometry> geometries_;
    std::map<std::string, Entry> entries_;
    std::uint64_t round_ = 0;
};

}  // namespace hither
