#pragma once
#include <QImage>

namespace Qt3DCore { class QNode; }
namespace Qt3DRender { class QTexture2D; }

namespace hither {

/// A texture that shows an image; row 0 of the image is v = 0.
class ImageTexture {
public:
    explicit ImageTexture(Qt3DCore::QNode* owner);
    void setImage(const QImage& image);
    Qt3DRender::QTexture2D* texture() const { return texture_; }

private:
    class Source;
    Qt3DRender::QTexture2D* texture_ = nullptr;
    Source* source_ = nullptr;
};

}  // namespace hither
