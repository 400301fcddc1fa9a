#include "app/panels/support_panel.h"

#include <QLabel>
#include <QVBoxLayout>

namespace hither {

SupportPanel::SupportPanel(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(new QLabel(tr("support"), this));
}

}  // namespace hither
