#include "app/panels/site_panel.h"

#include <QLabel>
#include <QVBoxLayout>

namespace hither {

SitePanel::SitePanel(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(new QLabel(tr("site"), this));
}

}  // namespace hither
