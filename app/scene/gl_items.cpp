#include "app/scene/gl_items.h"

#include <QMatrix4x4>
#include <Qt3DCore/QEntity>
#include <Qt3DCore/QTransform>
#include <Qt3DRender/QGeometryRenderer>
#include <Qt3DRender/QMaterial>

#include "app/scene/gl_geometry.h"

namespace hither {
using Qt3DCore::QEntity;
namespace {

QMatrix4x4 matrixOf(const Pose& X) {
    QMatrix4x4 m;
    for (int r = 0; r < 3; ++r)
        for (int c = 0; c < 4; ++c) m(r, c) = static_cast<float>(X.matrix()(r, c));
    return m;
}

}  // namespace

GlItems::GlItems(QEntity* root, GlMaterials& materials) : root_(root), materials_(materials) {}
GlItems::~GlItems() = default;

GlItems::Geometry& GlItems::geometry(const MeshRef& mesh) {
    Geometry& g = geometries_[mesh.get()];
    if (!g.surface) {
        g.mesh = mesh;
        g.surface = surfaceGeometry(root_, *mesh);
        g.edges = edgeGeometry(root_, *mesh);
    }
    return g;
}

void GlItems::make(Entry& entry, const PictureItem& item) {
    Geometry& g = geometry(item.mesh);
    ++g.users;
    entry.item.mesh = item.mesh;
    entry.surface = new QEntity(root_);
    entry.transform = new Qt3DCore::QTransform;
    entry.transform->setMatrix(matrixOf(item.X_W));
    entry.surface->addComponent(entry.transform);
    entry.surface->addComponent(g.surface);
    if (g.edges && !inFront(item.look)) {
        entry.edges = new QEntity(entry.surface);
        entry.edges->addComponent(g.edges);
    }
    dress(entry, item);
    entry.item = item;
    if (item.outlined) outline(entry, true);
}

void GlItems::dress(Entry& entry, const PictureItem& item) {
    Qt3DRender::QMaterial* material = materials_.surface(item.look, item.opacity);
    if (material != entry.material) {
        if (entry.material) entry.surface->removeComponent(entry.material);
        entry.surface->addComponent(material);
        entry.material = material;
    }
    if (!entry.edges) return;
    Qt3DRender::QMaterial* edges = materials_.edges(item.opacity < 0.99 || item.look == Look::body || item.look == Look::bodySite);
    if (edges != entry.edgeMaterial) {
        if (entry.edgeMaterial) entry.edges->removeComponent(entry.edgeMaterial);
        entry.edges->addComponent(edges);
        entry.edgeMaterial = edges;
    }
}

void GlItems::outline(Entry& entry, bool on) {
    if (on && !entry.outline) {
        Geometry& g = geometry(entry.item.mesh);
        if (!g.outline) g.outline = outlineGeometry(root_, *entry.item.mesh);
        entry.outline = new QEntity(entry.surface);
        entry.outline->addComponent(g.outline);
        entry.outline->addComponent(materials_.outline());
    } else if (!on && entry.outline) {
        delete entry.outline;
        entry.outline = nullptr;
    }
}

void GlItems::release(Entry& entry) {
    delete entry.surface;
    const auto found = geometries_.find(entry.item.mesh.get());
    entry = {};
    if (found == geometries_.end() || --found->second.users > 0) return;
    delete found->second.surface;
    delete found->second.edges;
    delete found->second.outline;
    geometries_.erase(found);
}

void GlItems::show(const std::vector<PictureItem>& items) {
    ++round_;
    for (const PictureItem& item : items) {
        if (!item.mesh) continue;
        Entry& entry = entries_[item.key];
        entry.seen = round_;
        if (!entry.surface || entry.item.mesh != item.mesh || inFront(entry.item.look) != inFront(item.look)) {
            Entry old = std::move(entry);
            entry = {};
            entry.seen = round_;
            make(entry, item);
            if (old.surface) release(old);
            continue;
        }
        if (entry.item.X_W.matrix() != item.X_W.matrix()) entry.transform->setMatrix(matrixOf(item.X_W));
        if (entry.item.look != item.look || entry.item.opacity != item.opacity) dress(entry, item);
        if (entry.item.outlined != item.outlined) outline(entry, item.outlined);
        entry.item = item;
    }
    for (auto it = entries_.begin(); it != entries_.end();) {
        if (it->second.seen == round_) {
            ++it;
            continue;
        }
        release(it->second);
        it = entries_.erase(it);
    }
}

}  // namespace hither
