#include "app/scene/camera_strip.h"

#include <algorithm>

#include <QFontMetrics>
#include <QToolButton>

#include "app/scene/flow_row.h"

namespace hither {

CameraStrip::CameraStrip(ActionTable& actions, const QStringList& ids, const QStringList& shortWords, QWidget* parent) : QWidget(parent) {
    setAccessibleName(tr("Ways to look at the scene"));
    auto* row = new FlowRow(this, 2);
    row->setContentsMargins(3, 2, 3, 2);
    for (int i = 0; i < ids.size(); ++i) {
        QAction* action = actions.action(ids[i]);
        auto* button = new QToolButton(this);
        button->setText(shortWords[i]);
        button->setAutoRaise(true);
        button->setFocusPolicy(Qt::StrongFocus);
        button->setCheckable(action->isCheckable());
        button->setAccessibleName(action->text());
        button->setAccessibleDescription(action->toolTip());
        const QString keys = action->shortcut().toString(QKeySequence::NativeText);
        button->setToolTip(keys.isEmpty() ? action->text() : tr("%1 (%2)").arg(action->text(), keys));
        const int least = std::max(24, QFontMetrics(button->font()).height() + 8);
        button->setMinimumSize(least, least);
        connect(button, &QToolButton::clicked, action, &QAction::trigger);
        if (action->isCheckable()) {
            button->setChecked(action->isChecked());
            connect(action, &QAction::toggled, button, &QToolButton::setChecked);
        }
        row->addWidget(button);
    }
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

}  // namespace hither
