#include "app/panels/check_panel.h"

#include <QLabel>
#include <QVBoxLayout>

namespace hither {

CheckPanel::CheckPanel(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(new QLabel(tr("check"), this));
}

}  // namespace hither
