#pragma once
#include <QWidget>

#include "app/actions/editor_context.h"

class QLabel;
class QPushButton;

namespace hither {

class BuildRowList;

/// Where another mount can be fixed: every rail, edge, face and cloth of the plan's supports.
class BuildWhereList : public QWidget {
    Q_OBJECT

public:
    explicit BuildWhereList(const EditorContext& context, QWidget* parent = nullptr);
    void refresh();
    void takeFocus();
    /// The option's first mount: there is nothing to go back to.
    void setFirst(bool first);
    BuildRowList* list() const { return list_; }
    /// The middle of an attachment: where a grip goes at first.
    static Placement middleOf(const Attachment& attachment);

signals:
    void done();   ///< chosen, or left

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void choose(const QString& key);
    EditorContext context_;
    QLabel* words_;
    BuildRowList* list_;
    QPushButton *take_, *leave_;
};

}  // namespace hither
