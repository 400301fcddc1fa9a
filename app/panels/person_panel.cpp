#include "app/panels/person_panel.h"

#include <QLabel>
#include <QVBoxLayout>

namespace hither {

PersonPanel::PersonPanel(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(new QLabel(tr("person"), this));
}

}  // namespace hither
