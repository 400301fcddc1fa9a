#include "app/scene/gl_image.h"

#include <Qt3DRender/QAbstractTextureImage>
#include <Qt3DRender/QTexture>
#include <Qt3DRender/QTextureImageData>
#include <Qt3DRender/QTextureImageDataGenerator>

namespace hither {
using namespace Qt3DRender;
namespace {

class Generator : public QTextureImageDataGenerator {
public:
    Generator(QImage image, int serial) : image_(std::move(image)), serial_(serial) {}
    QTextureImageDataPtr operator()() override {
        auto data = QTextureImageDataPtr::create();
        data->setImage(image_);
        return data;
    }
    bool operator==(const QTextureImageDataGenerator& other) const override {
        const auto* that = functor_cast<Generator>(&other);
        return that && that->serial_ == serial_;
    }
    QT3D_FUNCTOR(Generator)

private:
    QImage image_;
    int serial_;
};

}  // namespace

class ImageTexture::Source : public QAbstractTextureImage {
public:
    using QAbstractTextureImage::QAbstractTextureImage;
    void set(const QImage& image) {
        static int serial = 0;
        generator_ = QTextureImageDataGeneratorPtr(new Generator(image, ++serial));
        notifyDataGeneratorChanged();
    }

protected:
    QTextureImageDataGeneratorPtr dataGenerator() const override { return generator_; }

private:
    QTextureImageDataGeneratorPtr generator_;
};

ImageTexture::ImageTexture(Qt3DCore::QNode* owner) {
    texture_ = new QTexture2D(owner);
    texture_->setMinificationFilter(QAbstractTexture::Linear);
    texture_->setMagnificationFilter(QAbstractTexture::Linear);
    texture_->setWrapMode(QTextureWrapMode(QTextureWrapMode::ClampToEdge));
    texture_->setGenerateMipMaps(false);
    source_ = new Source;
    QImage nothing(4, 4, QImage::Format_RGBA8888);
    nothing.fill(Qt::transparent);
    source_->set(nothing);
    texture_->addTextureImage(source_);
}

void ImageTexture::setImage(const QImage& image) { source_->set(image.convertToFormat(QImage::Format_RGBA8888)); }

}  // namespace hither
