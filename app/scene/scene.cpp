#include "app/scene/scene.h"

namespace hither {

struct Scene::State { Camera camera; Picture picture; };
Scene::Scene(const EditorContext&, QWidget* parent) : QWidget(parent), state_(std::make_unique<State>()) { setMinimumSize(240, 200); }
Scene::~Scene() = default;
const Camera& Scene::camera() const { return state_->camera; }
void Scene::lookFrom(NamedView) {}
const Picture& Scene::picture() const { return state_->picture; }
void Scene::setColours(const PictureColours&) {}
quint64 Scene::frames() const { return 0; }

}  // namespace hither
