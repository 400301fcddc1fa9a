#include "app/panels/finding_list.h"

#include <QLabel>
#include <QVBoxLayout>

namespace hither {

FindingList::FindingList(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(new QLabel(tr("finding_list"), this));
}

}  // namespace hither
