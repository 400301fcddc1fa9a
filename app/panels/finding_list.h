#pragma once
#include <QWidget>

#include "app/actions/editor_context.h"

namespace hither {

class FindingList : public QWidget {
    Q_OBJECT

public:
    explicit FindingList(const EditorContext& context, QWidget* parent = nullptr);

private:
    EditorContext context_;
};

}  // namespace hither
