#pragma once
#include <vector>

#include <QString>

namespace Qt3DCore { class QNode; class QEntity; }
namespace Qt3DRender { class QEffect; class QFrameGraphNode; class QRenderState; class QCamera; class QRenderCapture; }
class QWindow;

namespace hither {

/// What is drawn after what. Every material belongs to one stage (lines to two).
enum class Stage { opaque, outline, back, edges, translucent, floorLabels, handles, linesHidden, lines, labels };

/// One effect with one pass for each stage named. Owned by `owner`.
Qt3DRender::QEffect* makeEffect(Qt3DCore::QNode* owner, const std::vector<Stage>& stages, const char* vertexCode, const char* fragmentCode);

/// The frame graph: clears, then the stages in their order, then the capture.
struct FrameGraph {
    Qt3DRender::QFrameGraphNode* root = nullptr;
    Qt3DRender::QRenderCapture* capture = nullptr;
};
FrameGraph makeFrameGraph(QWindow* window, Qt3DRender::QCamera* camera);

}  // namespace hither
