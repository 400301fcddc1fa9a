#include "app/panels/hand_over_panel.h"

#include <QLabel>
#include <QVBoxLayout>

namespace hither {

HandOverPanel::HandOverPanel(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(new QLabel(tr("hand_over"), this));
}

}  // namespace hither
