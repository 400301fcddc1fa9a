#pragma once
#include <QSlider>
#include <QWidget>

#include "app/panels/build_settings.h"

class QLabel;

namespace hither {

/// A slider whose whole movement is one gesture, by mouse (press to release) as by keys (first key down
/// to key up). Esc ends it without a trace. The wheel scrolls what it stands in.
class BuildSlider : public QSlider {
    Q_OBJECT

public:
    explicit BuildSlider(QWidget* parent = nullptr);
    bool held() const { return held_; }

signals:
    void began();
    void movedTo(int position);
    void ended();
    void cancelled();

protected:
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void keyReleaseEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void hideEvent(QHideEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    bool event(QEvent* event) override;

private:
    void begin();
    void end();
    bool held_ = false;
};

/// One number of a setting: its name, a field, and a slider between its limits.
class BuildDial : public QWidget {
    Q_OBJECT

public:
    explicit BuildDial(QWidget* parent = nullptr);
    /// `owner`: how the setting is called, for screen readers ("Elbow").
    void show(const Dial& dial, const QString& owner, UnitSystem units);
    const Dial& dial() const { return dial_; }
    NumberField* field() const { return field_; }
    BuildSlider* slider() const { return slider_; }

signals:
    void began();                ///< a gesture
    void tried(double value);    ///< while it goes on
    void ended();
    void cancelled();
    void entered(double value);  ///< typed

private:
    double valueAt(int position) const;
    int positionOf(double value) const;
    void note(double wanted, double taken);

    Dial dial_;
    UnitSystem units_ = UnitSystem::metric;
    QLabel* name_;
    NumberField* field_ = nullptr;
    BuildSlider* slider_;
    QLabel *low_, *high_, *note_;
    bool fieldGesture_ = false;
};

}  // namespace hither
