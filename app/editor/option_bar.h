#pragma once
#include <QWidget>

#include "app/actions/editor_context.h"

class QTabBar;

namespace hither {

class VerdictMark;

/// The placement options of the plan side by side, to compare by switching; the verdict of the one in
/// view; undo, redo and the command search. Registers the commands about options.
class OptionBar : public QWidget {
    Q_OBJECT

public:
    explicit OptionBar(const EditorContext& context, QWidget* parent = nullptr);

private:
    void addActions();
    void refreshTabs();
    void refreshVerdict();
    QString freeName() const;
    std::string freeOptionId() const;

    EditorContext context_;
    QTabBar* tabs_ = nullptr;
    VerdictMark* verdict_ = nullptr;
    bool filling_ = false;
};

}  // namespace hither
