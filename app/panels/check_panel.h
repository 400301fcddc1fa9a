#pragma once
#include <QWidget>

#include "app/actions/editor_context.h"

namespace hither {

class CheckPanel : public QWidget {
    Q_OBJECT

public:
    explicit CheckPanel(const EditorContext& context, QWidget* parent = nullptr);

private:
    EditorContext context_;
};

}  // namespace hither
