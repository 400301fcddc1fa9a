#pragma once
#include <QWidget>

#include "app/actions/editor_context.h"

namespace hither {

class BuildPanel : public QWidget {
    Q_OBJECT

public:
    explicit BuildPanel(const EditorContext& context, QWidget* parent = nullptr);

private:
    EditorContext context_;
};

}  // namespace hither
