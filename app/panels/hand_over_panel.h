#pragma once
#include <QWidget>

#include "app/actions/editor_context.h"

namespace hither {

class HandOverPanel : public QWidget {
    Q_OBJECT

public:
    explicit HandOverPanel(const EditorContext& context, QWidget* parent = nullptr);

private:
    EditorContext context_;
};

}  // namespace hither
