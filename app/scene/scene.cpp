#include "app/scene/scene.h"

#include <QApplication>
#include <QEvent>
#include <QStyle>
#include <QTimer>
#include <QVBoxLayout>
#include <QVariantAnimation>

#include "app/scene/camera_strip.h"
#include "app/scene/named_views.h"
#include "app/scene/scene_tools.h"
#include "app/scene/scene_view.h"
#include "app/widgets/theme.h"

namespace hither {
namespace {

constexpr int turn_ms = 150;

}  // namespace

struct Scene::State {
    State(const EditorContext& c) : context(c) {}

    const EditorContext context;
    PictureMaker maker;
    Picture picture;
    Camera camera, from, goal;
    SceneTools* tools = nullptr;
    QTimer later;
    QVariantAnimation turn;
    bool person = true, labels = true;
    bool wholeNext = true;       ///< another plan was opened: shown whole with the next picture
    bool ownColours = false;

    /// What the person would look at: the picked site, else the first one; what is before them when that is
    /// at their own head or behind them.
    Vec3 lookAt(const Situation& situation) const {
        const Site* site = context.view.picked().kind == Picked::Kind::site ? situation.site(context.view.picked().id) : nullptr;
        if (!site && !situation.sites.empty()) site = &situation.sites.front();
        if (!situation.body) return site ? site->p_W : Vec3(Vec3::Zero());
        const Vec3 eyes = situation.body->eyes_W;
        const Mat3 head = situation.body->X_WSegment.at({Segment::head, Side::none}).linear();
        if (site && (site->p_W - eyes).norm() > 0.25 && (site->p_W - eyes).normalized().dot(head.col(0)) > 0.3) return site->p_W;
        return eyes + 0.6 * head.col(0) - 0.45 * head.col(2);
    }
};

Scene::Scene(const EditorContext& context, QWidget* parent) : QWidget(parent), state_(std::make_unique<State>(context)) {
    State& s = *state_;
    // The buttons first: Tab goes from them to the view.
    addActions();
    auto* strip = new CameraStrip(context.actions,
                                  {"view.whole", "view.front", "view.left", "view.right", "view.back", "view.top", "view.person", "view.body", "view.labels"},
                                  {tr("Whole scene"), tr("Front"), tr("Left"), tr("Right"), tr("Behind"), tr("Above"), tr("Person’s view"), tr("Person"), tr("Labels")}, this);
    view_ = makeSceneView(this);
    view_->setAccessibleName(tr("Scene"));
    view_->setAccessibleDescription(tr("A picture of the supports, the person and the mounts. The setup tree and the findings list say the same in words. "
                                       "Arrow keys look from another side, with Shift they slide the picture, plus and minus come nearer and go farther."));
    s.tools = new SceneTools(context, *view_, [&s]() -> const Camera& { return s.camera; }, [&s]() -> const Picture& { return s.picture; }, this);
    connect(s.tools, &SceneTools::saying, this, &Scene::saying);
    connect(s.tools, &SceneTools::cameraMoved, this, [this](const Camera& camera) { look(camera); });
    connect(s.tools, &SceneTools::wholeWanted, this, [this] { lookFrom(NamedView::whole); });

    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(strip);
    column->addWidget(view_, 1);

    s.later.setSingleShot(true);
    connect(&s.later, &QTimer::timeout, this, &Scene::refresh);
    const auto soon = [this] { refreshSoon(); };
    connect(&context.document, &Document::changed, this, soon);
    connect(&context.document, &Document::fileChanged, this, [this] {
        state_->wholeNext = true;
        refreshSoon();
    });
    connect(&context.view, &ViewState::optionChanged, this, soon);
    connect(&context.view, &ViewState::stepChanged, this, soon);
    connect(&context.view, &ViewState::pickedChanged, this, soon);
    connect(&context.view, &ViewState::offerForChanged, this, soon);
    connect(&context.view, &ViewState::findingChanged, this, soon);
    connect(&context.analysis, &Analysis::analysed, this, [this] { if (!state_->context.view.finding().isEmpty()) refreshSoon(); });
    connect(s.tools, &SceneTools::hoverChanged, this, soon);

    s.turn.setDuration(turn_ms);
    s.turn.setStartValue(0.0);
    s.turn.setEndValue(1.0);
    s.turn.setEasingCurve(QEasingCurve::InOutQuad);
    connect(&s.turn, &QVariantAnimation::valueChanged, this, [this](const QVariant& share) {
        state_->camera = between(state_->from, state_->goal, share.toDouble());
        view_->setCamera(state_->camera);
    });
    takeColours();
    refreshSoon();
}

Scene::~Scene() = default;

const Camera& Scene::camera() const { return state_->camera; }
const Picture& Scene::picture() const { return state_->picture; }
quint64 Scene::frames() const { return view_->frames(); }

void Scene::setColours(const PictureColours& colours) {
    state_->ownColours = true;
    view_->setColours(colours);
}

void Scene::takeColours() {
    if (state_->ownColours) return;
    PictureColours colours = Theme::current().dark ? PictureColours::darkOnes() : PictureColours::light();
    colours.labelFont = font();
    view_->setColours(colours);
}

void Scene::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange || event->type() == QEvent::StyleChange) takeColours();
}

void Scene::refreshSoon() {
    if (!state_->later.isActive()) state_->later.start(0);
}

void Scene::refresh() {
    State& s = *state_;
    const auto situation = s.context.analysis.situation();
    const auto setup = s.context.analysis.setup();
    const auto judged = s.context.analysis.latest();  // keeps the finding alive
    PictureWishes wishes;
    wishes.step = s.context.view.step();
    wishes.picked = s.context.view.picked();
    wishes.hovered = s.tools->hovered();
    wishes.finding = s.context.analysis.finding(s.context.view.finding());
    wishes.offerFor = s.context.view.offerFor();
    wishes.labels = s.labels;
    wishes.body = s.person;
    wishes.units = s.context.view.units();
    s.picture = s.maker.make(situation.get(), setup.get(), wishes);
    view_->show(s.picture);
    if (s.wholeNext && !s.picture.bounds_W.isEmpty()) {
        s.wholeNext = false;
        look(namedCamera(NamedView::whole, s.camera, s.picture.bounds_W, view_->pictureSize(), std::nullopt, Vec3::Zero()));
    }
}

void Scene::resizeEvent(QResizeEvent* event) {
    // A view that has not had its size yet showed nothing whole.
    const bool first = !isVisible();
    QWidget::resizeEvent(event);
    if (first) state_->wholeNext = true;
    refreshSoon();
}

void Scene::look(const Camera& camera) {
    state_->turn.stop();
    state_->camera = camera;
    view_->setCamera(camera);
}

void Scene::lookFrom(NamedView view) {
    State& s = *state_;
    const auto situation = s.context.analysis.situation();
    const std::optional<Vec3> eyes = situation && situation->body ? std::optional<Vec3>(situation->body->eyes_W) : std::nullopt;
    const Camera goal = namedCamera(view, s.turn.state() == QAbstractAnimation::Running ? s.goal : s.camera, s.picture.bounds_W, view_->pictureSize(), eyes,
                                    situation ? s.lookAt(*situation) : Vec3(Vec3::Zero()));
    const bool still = QGuiApplication::platformName() == "offscreen" || style()->styleHint(QStyle::SH_Widget_Animation_Duration, nullptr, this) <= 0;
    if (still) {
        look(goal);
        return;
    }
    s.turn.stop();
    s.from = s.camera;
    s.goal = goal;
    s.turn.start();
}

void Scene::addActions() {
    State& s = *state_;
    struct Way { const char* id; NamedView view; QString words, help; int digit; };
    const Way ways[] = {{"view.whole", NamedView::whole, tr("Whole scene"), tr("Shows everything from where you look now"), 1},
                          {"view.front", NamedView::front, tr("From the front"), tr("Looks at the person from the front"), 2},
                          {"view.left", NamedView::leftSide, tr("From the left"), tr("Looks from the person's left"), 3},
                          {"view.right", NamedView::rightSide, tr("From the right"), tr("Looks from the person's right"), 4},
                          {"view.back", NamedView::back, tr("From behind"), tr("Looks from behind the person"), 5},
                          {"view.top", NamedView::top, tr("From above"), tr("Looks straight down"), 6},
                          {"view.person", NamedView::person, tr("Person’s view"), tr("Looks with the person's eyes toward the site"), 7}};
    for (const Way& l : ways)
        s.context.actions.add({l.id, "view", l.words, l.help, QKeySequence(QString("Alt+%1").arg(l.digit)), [this, view = l.view] { lookFrom(view); }, {}, {}, {}});
    const auto toggles = [this](bool State::*what) {
        return [this, what] {
            State& state = *state_;
            state.*what = !(state.*what);
            refreshSoon();
        };
    };
    s.context.actions.add({"view.body", "view", tr("Show the person"), tr("Shows or hides the person's body in the scene"), QKeySequence("Alt+8"), toggles(&State::person), {}, {},
                           [&s] { return s.person; }});
    s.context.actions.add({"view.labels", "view", tr("Show labels"), tr("Shows or hides the words in the scene"), QKeySequence("Alt+9"), toggles(&State::labels), {}, {},
                           [&s] { return s.labels; }});
}

}  // namespace hither
