#pragma once
#include <QWidget>

#include "app/actions/editor_context.h"

class QComboBox;
class QLabel;

namespace hither {

/// Which mount of the option is worked on, which site its switch serves, and what can be done with a
/// mount as a whole.
class BuildMountBar : public QWidget {
    Q_OBJECT

public:
    explicit BuildMountBar(const EditorContext& context, QWidget* parent = nullptr);
    void refresh();

    void copy();
    void rename();
    void remove();

signals:
    void wantsNew();

private:
    void pickSite(int index);

    EditorContext context_;
    QComboBox *mounts_, *sites_;
    QLabel *mountLabel_, *siteLabel_;
    QWidget* rest_;
};

/// "Mount 3": the first name of that kind that the option does not have yet.
QString freeMountName(const PlanOption* option);

}  // namespace hither
