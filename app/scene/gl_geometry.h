#pragma once
#include <vector>

#include "app/picture/mesh.h"

namespace Qt3DCore { class QNode; }
namespace Qt3DRender { class QGeometryRenderer; }

namespace hither {

/// A mesh's surface and its feature edges as Qt3D geometry; `edges` null when it has none.
Qt3DRender::QGeometryRenderer* surfaceGeometry(Qt3DCore::QNode* owner, const Mesh& mesh);
Qt3DRender::QGeometryRenderer* edgeGeometry(Qt3DCore::QNode* owner, const Mesh& mesh);
/// The surface with one normal a place, so that it stays closed when it is moved outward.
Qt3DRender::QGeometryRenderer* outlineGeometry(Qt3DCore::QNode* owner, const Mesh& mesh);

/// One named attribute of `size` floats a vertex within a vertex of interleaved floats.
struct VertexPart { const char* name; unsigned size; };
/// Triangles of interleaved floats, three vertices in a row each; `setVertices` replaces them.
class LooseTriangles {
public:
    LooseTriangles(Qt3DCore::QNode* owner, const std::vector<VertexPart>& parts);
    void setVertices(const std::vector<float>& floats);
    Qt3DRender::QGeometryRenderer* renderer() const { return renderer_; }

private:
    struct Nodes;
    Qt3DRender::QGeometryRenderer* renderer_ = nullptr;
    Nodes* nodes_ = nullptr;
    unsigned floatsEach_ = 0;
};

}  // namespace hither
