#include "app/panels/setup_tree.h"

#include <QLabel>
#include <QVBoxLayout>

namespace hither {

SetupTree::SetupTree(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(new QLabel(tr("setup_tree"), this));
}

}  // namespace hither
