#pragma once
#include <QWidget>

#include "app/actions/editor_context.h"

namespace hither {

class FindingCard;

/// The Check step: the finding that is looked at in full, what the checks of this plan ask, the cautions.
class CheckPanel : public QWidget {
    Q_OBJECT

public:
    explicit CheckPanel(const EditorContext& context, QWidget* parent = nullptr);

private:
    EditorContext context_;
    FindingCard* card_;
};

}  // namespace hither
