#pragma once
#include <QTreeWidget>
#include <QWidget>

#include "app/actions/editor_context.h"
#include "app/panels/setup_tree_rows.h"

namespace hither {

/// The scene's twin in words: supports, person, sites, mounts with their parts and joints, what must stay
/// free. Picking goes both ways. Enter goes to where the thing picked is worked on; on a number it opens a
/// field in its place.
class SetupTree : public QWidget {
    Q_OBJECT

public:
    explicit SetupTree(const EditorContext& context, QWidget* parent = nullptr);

    QTreeWidget* tree() const { return tree_; }
    UnitSystem units() const { return context_.view.units(); }
    /// Brings the words up to date; lines that stay keep their place, opened or closed.
    void refresh();
    /// The row that an item shows, without its children; null: it is no item of this tree.
    const SetupRow* rowOf(const QTreeWidgetItem* item) const;

    /// What a number's field does while it is open.
    void tryValue(const SetupRow& row, double value);
    void setValue(const SetupRow& row, double value);
    void leaveValue();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void showEvent(QShowEvent* event) override;

private:
    void sync(QTreeWidgetItem* parent, const std::vector<SetupRow>& rows);
    void follow();
    void choose(QTreeWidgetItem* item);
    void enter(QTreeWidgetItem* item);
    QTreeWidgetItem* find(const Picked& picked) const;

    EditorContext context_;
    QTreeWidget* tree_;
    bool quiet_ = false, stale_ = true, gesture_ = false;
};

}  // namespace hither
