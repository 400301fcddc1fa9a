#pragma once
#include <memory>

#include <QWidget>

#include "app/actions/editor_context.h"
#include "app/analysis/ways_finder.h"

class QLabel;
class QProgressBar;
class QPushButton;

namespace hither {

/// Brings the switch of the mount worked on to its site: looks for the ways to set its joints, shows one
/// after the other in the scene as a gesture that leaves no trace unless one is kept, or says how near it gets.
class BuildWaysBar : public QWidget {
    Q_OBJECT

public:
    explicit BuildWaysBar(const EditorContext& context, QWidget* parent = nullptr);
    void refresh();

    enum class State { idle, searching, stepping, none };
    State state() const { return state_; }
    bool canStart() const;
    int way() const { return way_; }
    const Ways* ways() const { return ways_.get(); }

    void start();
    void step(int by);
    void keep();
    void leave();          ///< whatever is going on, without a trace
    void setNearest();     ///< as near as it gets
    void takeFocus();

signals:
    void stateChanged();

protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void found(const std::string& mount, std::shared_ptr<const Ways> ways);
    void show(State state);
    void showWay();
    QString whyNotIdle() const;
    QString wayWords() const;
    QString nearestWords() const;
    bool arrow(int key);
    void follow();

    EditorContext context_;
    WaysFinder finder_;
    State state_ = State::idle;
    std::string mount_, option_;
    std::shared_ptr<const Setup> setup_;     ///< that the ways are for
    std::shared_ptr<const Ways> ways_;
    int way_ = 0;
    QString gesture_, failed_;
    bool mine_ = false;                      ///< the change that is signalled now is of this bar
    QPushButton *start_, *previous_, *next_, *keep_, *nearest_, *leave_;
    QLabel* words_;
    QProgressBar* busy_;
};

}  // namespace hither
