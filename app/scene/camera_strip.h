#pragma once
#include <QWidget>

#include "app/actions/action_table.h"

namespace hither {

/// The row of buttons over the view, one for each of the commands named.
class CameraStrip : public QWidget {
    Q_OBJECT

public:
    CameraStrip(ActionTable& actions, const QStringList& ids, const QStringList& shortWords, QWidget* parent);
};

}  // namespace hither
