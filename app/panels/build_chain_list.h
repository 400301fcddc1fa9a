#pragma once
#include <QWidget>

#include "app/actions/editor_context.h"

class QLabel;
class QPushButton;

namespace hither {

class BuildRowList;

/// The parts of the mount from support to switch, what each goes together with, and its free end.
class BuildChainList : public QWidget {
    Q_OBJECT

public:
    explicit BuildChainList(const EditorContext& context, QWidget* parent = nullptr);
    void refresh();
    void followPick();

    /// The part picked in the mount worked on; -1: none.
    int part() const;
    BuildRowList* list() const { return list_; }
    /// Whether something can go behind the part picked, or on the free end when none is.
    bool canAdd() const;
    bool canRemove() const;
    bool canTurn() const;

    void offerBehind();   ///< the part picked, or the free end when none is
    void offerInPlace();
    void remove();
    void turn();

signals:
    void partFiguresWanted(const QString& part);
    void offersWanted();   ///< what was asked for is on offer now

private:
    void choose(const QString& key);
    int lastPart() const;

    EditorContext context_;
    QLabel* heading_;
    BuildRowList* list_;
    QWidget* buttons_;
    QPushButton *behind_, *replace_, *turn_, *remove_, *figures_;
};

}  // namespace hither
