#pragma once
#include <string>

#include <QDialog>

#include "app/actions/editor_context.h"

class QLabel;

namespace hither {

class PartFiguresGrid;

/// The figures of one of the plan's parts, by its id, to look at and to replace by measured ones; each is
/// one step. `place` (as figuresOf() has it) gets the keyboard. It closes when the plan no longer has the part.
class PartFiguresDialog : public QDialog {
    Q_OBJECT

public:
    PartFiguresDialog(const EditorContext& context, std::string part, const std::string& place = {}, QWidget* parent = nullptr);

private:
    void refresh();
    void copyAsOwn();

    EditorContext context_;
    std::string part_;
    PartFiguresGrid* grid_;
    QLabel* why_;
};

}  // namespace hither
