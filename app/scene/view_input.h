#pragma once
#include <QObject>
#include <QPointF>

#include "app/scene/scene_view.h"

namespace hither {

/// Turns the mouse, wheel and touch events of a widget or window into the view's signals, and gives the
/// view the keyboard on a click. Keys come to the view itself.
class ViewInput : public QObject {
    Q_OBJECT

public:
    /// `origin`: where the picture begins in the source's pixels.
    ViewInput(SceneView* view, QObject* source, QPointF origin = {});

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    bool takeTouch(QEvent* event);

    SceneView* view_;
    QPointF origin_;
    double spread_ = 0;
};

}  // namespace hither
