#include "app/scene/gl_stages.h"

#include <array>

#include <QWindow>
#include <Qt3DRender/QBlendEquation>
#include <Qt3DRender/QBlendEquationArguments>
#include <Qt3DRender/QCamera>
#include <Qt3DRender/QCameraSelector>
#include <Qt3DRender/QClearBuffers>
#include <Qt3DRender/QCullFace>
#include <Qt3DRender/QDepthTest>
#include <Qt3DRender/QEffect>
#include <Qt3DRender/QFilterKey>
#include <Qt3DRender/QGraphicsApiFilter>
#include <Qt3DRender/QMultiSampleAntiAliasing>
#include <Qt3DRender/QNoDepthMask>
#include <Qt3DRender/QNoDraw>
#include <Qt3DRender/QPolygonOffset>
#include <Qt3DRender/QRenderCapture>
#include <Qt3DRender/QRenderPass>
#include <Qt3DRender/QRenderPassFilter>
#include <Qt3DRender/QRenderStateSet>
#include <Qt3DRender/QRenderSurfaceSelector>
#include <Qt3DRender/QShaderProgram>
#include <Qt3DRender/QSortPolicy>
#include <Qt3DRender/QTechnique>
#include <Qt3DRender/QViewport>

namespace hither {
using namespace Qt3DRender;
namespace {

QString keyOf(Stage stage) { return QString::number(static_cast<int>(stage)); }

QFilterKey* makeKey(Stage stage) {
    auto* key = new QFilterKey;
    key->setName("stage");
    key->setValue(keyOf(stage));
    return key;
}

void depth(QRenderStateSet* set, QDepthTest::DepthFunction function) {
    auto* test = new QDepthTest;
    test->setDepthFunction(function);
    set->addRenderState(test);
}
void cull(QRenderStateSet* set, QCullFace::CullingMode mode) {
    auto* face = new QCullFace;
    face->setMode(mode);
    set->addRenderState(face);
}
void blend(QRenderStateSet* set) {
    auto* equation = new QBlendEquation;
    equation->setBlendFunction(QBlendEquation::Add);
    set->addRenderState(equation);
    auto* arguments = new QBlendEquationArguments;
    arguments->setSourceRgb(QBlendEquationArguments::SourceAlpha);
    arguments->setDestinationRgb(QBlendEquationArguments::OneMinusSourceAlpha);
    arguments->setSourceAlpha(QBlendEquationArguments::Zero);
    arguments->setDestinationAlpha(QBlendEquationArguments::One);
    set->addRenderState(arguments);
}
void keepDepth(QRenderStateSet* set) { set->addRenderState(new QNoDepthMask); }
void offset(QRenderStateSet* set) {
    auto* shift = new QPolygonOffset;
    shift->setScaleFactor(1);
    shift->setDepthSteps(1);
    set->addRenderState(shift);
}

void setStates(QRenderStateSet* set, Stage stage) {
    set->addRenderState(new QMultiSampleAntiAliasing);
    switch (stage) {
        case Stage::back:
            depth(set, QDepthTest::LessOrEqual); keepDepth(set); cull(set, QCullFace::NoCulling);
            break;
        case Stage::edges:
        case Stage::floorLabels:
        case Stage::lines:
            depth(set, QDepthTest::LessOrEqual); keepDepth(set); cull(set, QCullFace::NoCulling); blend(set);
            break;
        case Stage::opaque:
            depth(set, QDepthTest::LessOrEqual); cull(set, QCullFace::Back); offset(set);
            break;
        case Stage::outline:
            depth(set, QDepthTest::LessOrEqual); cull(set, QCullFace::Front);
            break;
        case Stage::translucent:
            depth(set, QDepthTest::LessOrEqual); keepDepth(set); cull(set, QCullFace::Back); blend(set);
            break;
        case Stage::handles:
            depth(set, QDepthTest::LessOrEqual); cull(set, QCullFace::Back);
            break;
        case Stage::linesHidden:
            depth(set, QDepthTest::Greater); keepDepth(set); cull(set, QCullFace::NoCulling); blend(set);
            break;
        case Stage::labels:
            depth(set, QDepthTest::Always); keepDepth(set); cull(set, QCullFace::NoCulling); blend(set);
            break;
    }
}

}  // namespace

QEffect* makeEffect(Qt3DCore::QNode* owner, const std::vector<Stage>& stages, const char* vertexCode, const char* fragmentCode) {
    auto* effect = new QEffect(owner);
    auto* technique = new QTechnique(effect);
    QGraphicsApiFilter* api = technique->graphicsApiFilter();
    api->setApi(QGraphicsApiFilter::OpenGL);
    api->setProfile(QGraphicsApiFilter::CoreProfile);
    api->setMajorVersion(3);
    api->setMinorVersion(2);
    auto* program = new QShaderProgram(technique);
    program->setVertexShaderCode(vertexCode);
    program->setFragmentShaderCode(fragmentCode);
    for (const Stage stage : stages) {
        auto* pass = new QRenderPass(technique);
        pass->setShaderProgram(program);
        pass->addFilterKey(makeKey(stage));
        technique->addRenderPass(pass);
    }
    effect->addTechnique(technique);
    return effect;
}

FrameGraph makeFrameGraph(QWindow* window, QCamera* camera) {
    FrameGraph graph;
    auto* surface = new QRenderSurfaceSelector;
    surface->setSurface(window);
    auto* viewport = new QViewport(surface);
    viewport->setNormalizedRect(QRectF(0, 0, 1, 1));
    auto* selector = new QCameraSelector(viewport);
    selector->setCamera(camera);
    auto* clear = new QClearBuffers(selector);
    clear->setBuffers(QClearBuffers::ColorDepthBuffer);
    new QNoDraw(clear);
    constexpr std::array order = {Stage::opaque, Stage::outline, Stage::back, Stage::edges, Stage::floorLabels, Stage::translucent,
                                  Stage::handles, Stage::linesHidden, Stage::lines, Stage::labels};
    for (const Stage stage : order) {
        QFrameGraphNode* under = selector;
        if (stage == Stage::translucent || stage == Stage::opaque) {
            auto* sort = new QSortPolicy(selector);
            sort->setSortTypes(QList<QSortPolicy::SortType>{stage == Stage::opaque ? QSortPolicy::StateChangeCost : QSortPolicy::BackToFront});
            under = sort;
        }
        auto* states = new QRenderStateSet(under);
        setStates(states, stage);
        auto* filter = new QRenderPassFilter(states);
        filter->addMatch(makeKey(stage));
    }
    graph.capture = new QRenderCapture(selector);
    new QNoDraw(graph.capture);
    graph.root = surface;
    return graph;
}

}  // namespace hither
