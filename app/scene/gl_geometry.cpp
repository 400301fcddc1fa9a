#include "app/scene/gl_geometry.h"

#include <map>
#include <tuple>

#include <QByteArray>
#include <QVector3D>
#include <Qt3DCore/QAttribute>
#include <Qt3DCore/QBuffer>
#include <Qt3DCore/QGeometry>
#include <Qt3DRender/QGeometryRenderer>

namespace hither {
using namespace Qt3DCore;
using Qt3DRender::QGeometryRenderer;
namespace {

template <class T>
QByteArray bytesOf(const std::vector<T>& values) {
    return QByteArray(reinterpret_cast<const char*>(values.data()), static_cast<qsizetype>(values.size() * sizeof(T)));
}

QAttribute* addAttribute(QGeometry* geometry, Qt3DCore::QBuffer* buffer, const QString& name, unsigned size, unsigned offset, unsigned stride, unsigned count) {
    auto* a = new QAttribute(geometry);
    a->setAttributeType(QAttribute::VertexAttribute);
    a->setBuffer(buffer);
    a->setName(name);
    a->setVertexBaseType(QAttribute::Float);
    a->setVertexSize(size);
    a->setByteOffset(offset);
    a->setByteStride(stride);
    a->setCount(count);
    geometry->addAttribute(a);
    return a;
}

/// Bounds given by hand: nothing is culled by them, and Qt3D need not read the vertices for them.
void setBounds(QGeometryRenderer* renderer, const std::vector<Eigen::Vector3f>& points) {
    Eigen::AlignedBox3f box;
    for (const Eigen::Vector3f& p : points) box.extend(p);
    if (box.isEmpty()) box.extend(Eigen::Vector3f(0, 0, 0));
    renderer->setMinPoint(QVector3D(box.min().x(), box.min().y(), box.min().z()));
    renderer->setMaxPoint(QVector3D(box.max().x(), box.max().y(), box.max().z()));
}

QGeometryRenderer* surfaceOf(QNode* owner, const Mesh& mesh, const std::vector<Eigen::Vector3f>& normals) {
    auto* renderer = new QGeometryRenderer(owner);
    auto* geometry = new QGeometry(renderer);
    std::vector<float> floats;
    floats.reserve(mesh.points.size() * 6);
    for (std::size_t i = 0; i < mesh.points.size(); ++i) {
        floats.insert(floats.end(), mesh.points[i].data(), mesh.points[i].data() + 3);
        floats.insert(floats.end(), normals[i].data(), normals[i].data() + 3);
    }
    auto* buffer = new Qt3DCore::QBuffer(geometry);
    buffer->setData(bytesOf(floats));
    const auto count = static_cast<unsigned>(mesh.points.size());
    addAttribute(geometry, buffer, QAttribute::defaultPositionAttributeName(), 3, 0, 24, count);
    addAttribute(geometry, buffer, QAttribute::defaultNormalAttributeName(), 3, 12, 24, count);
    std::vector<std::uint32_t> corners;
    corners.reserve(mesh.triangles.size() * 3);
    for (const auto& t : mesh.triangles) corners.insert(corners.end(), t.begin(), t.end());
    auto* cornerBuffer = new Qt3DCore::QBuffer(geometry);
    cornerBuffer->setData(bytesOf(corners));
    auto* index = new QAttribute(geometry);
    index->setAttributeType(QAttribute::IndexAttribute);
    index->setBuffer(cornerBuffer);
    index->setVertexBaseType(QAttribute::UnsignedInt);
    index->setCount(static_cast<unsigned>(corners.size()));
    geometry->addAttribute(index);
    renderer->setGeometry(geometry);
    renderer->setPrimitiveType(QGeometryRenderer::Triangles);
    setBounds(renderer, mesh.points);
    return renderer;
}

}  // namespace

QGeometryRenderer* surfaceGeometry(QNode* owner, const Mesh& mesh) { return surfaceOf(owner, mesh, mesh.normals); }

QGeometryRenderer* outlineGeometry(QNode* owner, const Mesh& mesh) {
    const auto place = [](const Eigen::Vector3f& p) {
        return std::tuple(std::lround(p.x() * 1e5f), std::lround(p.y() * 1e5f), std::lround(p.z() * 1e5f));
    };
    std::map<std::tuple<long, long, long>, Eigen::Vector3f> sums;
    for (std::size_t i = 0; i < mesh.points.size(); ++i) sums.try_emplace(place(mesh.points[i]), Eigen::Vector3f::Zero()).first->second += mesh.normals[i];
    std::vector<Eigen::Vector3f> normals(mesh.points.size());
    for (std::size_t i = 0; i < mesh.points.size(); ++i) {
        const Eigen::Vector3f& sum = sums[place(mesh.points[i])];
        normals[i] = sum.norm() > 1e-4f ? sum.normalized() : mesh.normals[i];
    }
    return surfaceOf(owner, mesh, normals);
}

QGeometryRenderer* edgeGeometry(QNode* owner, const Mesh& mesh) {
    if (mesh.edges.empty()) return nullptr;
    auto* renderer = new QGeometryRenderer(owner);
    auto* geometry = new QGeometry(renderer);
    std::vector<Eigen::Vector3f> points;
    points.reserve(mesh.edges.size() * 2);
    for (const auto& e : mesh.edges) points.insert(points.end(), e.begin(), e.end());
    auto* buffer = new Qt3DCore::QBuffer(geometry);
    buffer->setData(bytesOf(points));
    addAttribute(geometry, buffer, QAttribute::defaultPositionAttributeName(), 3, 0, 12, static_cast<unsigned>(points.size()));
    renderer->setGeometry(geometry);
    renderer->setPrimitiveType(QGeometryRenderer::Lines);
    renderer->setVertexCount(static_cast<int>(points.size()));
    setBounds(renderer, points);
    return renderer;
}

struct LooseTriangles::Nodes : QObject {
    using QObject::QObject;
    Qt3DCore::QBuffer* buffer = nullptr;
    std::vector<QAttribute*> attributes;
};

LooseTriangles::LooseTriangles(QNode* owner, const std::vector<VertexPart>& parts) {
    renderer_ = new QGeometryRenderer(owner);
    nodes_ = new Nodes(renderer_);
    auto* geometry = new QGeometry(renderer_);
    nodes_->buffer = new Qt3DCore::QBuffer(geometry);
    for (const VertexPart& p : parts) floatsEach_ += p.size;
    unsigned offset = 0;
    for (const VertexPart& p : parts) {
        nodes_->attributes.push_back(addAttribute(geometry, nodes_->buffer, p.name, p.size, offset, floatsEach_ * 4, 0));
        offset += p.size * 4;
    }
    renderer_->setGeometry(geometry);
    renderer_->setPrimitiveType(QGeometryRenderer::Triangles);
    renderer_->setMinPoint(QVector3D(-1, -1, -1));
    renderer_->setMaxPoint(QVector3D(1, 1, 1));
    setVertices({});
}

void LooseTriangles::setVertices(const std::vector<float>& floats) {
    // Never empty: a triangle without size stands in.
    const std::vector<float>& used = floats.empty() ? std::vector<float>(std::size_t{3} * floatsEach_, 0.0f) : floats;
    const auto count = static_cast<unsigned>(used.size() / floatsEach_);
    nodes_->buffer->setData(bytesOf(used));
    for (QAttribute* a : nodes_->attributes) a->setCount(count);
    renderer_->setVertexCount(static_cast<int>(count));
}

}  // namespace hither
