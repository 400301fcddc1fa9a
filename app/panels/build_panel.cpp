#include "app/panels/build_panel.h"

#include <QLabel>
#include <QVBoxLayout>

namespace hither {

BuildPanel::BuildPanel(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(new QLabel(tr("build"), this));
}

}  // namespace hither
