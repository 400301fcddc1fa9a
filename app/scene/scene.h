#pragma once
#include <memory>

#include <QWidget>

#include "app/actions/editor_context.h"
#include "app/picture/camera.h"
#include "app/picture/make_picture.h"
#include "app/picture/picture_colours.h"

namespace hither {

class SceneView;

/// The scene in the middle of the window: keeps the picture up to date with document, view state and
/// findings, and turns mouse and keys into camera moves, picks and gestures of the document:
///   click a rail, edge, face, cloth    picks it and asks for grips there (in Build)
///   click an outlet                    asks for what mates
///   click the body                     in Site: puts the site there
///   drag the switch                    the chain follows (solved with what is not kept)
///   drag a joint's handle              it turns, slides or swings; detents click
///   drag elsewhere                     orbits; with Shift or the middle button slides; wheel and pinch zoom
/// Esc while dragging cancels without a trace. Registers its camera commands in the action table.
class Scene : public QWidget {
    Q_OBJECT

public:
    Scene(const EditorContext& context, QWidget* parent = nullptr);
    ~Scene() override;

    SceneView& view() { return *view_; }
    const Camera& camera() const;
    void lookFrom(NamedView view);
    /// The picture as it is now shown.
    const Picture& picture() const;
    void setColours(const PictureColours& colours);
    quint64 frames() const;

signals:
    /// One line about what is under the pointer or what a drag does; empty: nothing.
    void saying(const QString& words);

protected:
    void changeEvent(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void addActions();
    void takeColours();
    void refreshSoon();
    void refresh();
    void look(const Camera& camera);

    struct State;
    std::unique_ptr<State> state_;
    SceneView* view_ = nullptr;
};

}  // namespace hither
