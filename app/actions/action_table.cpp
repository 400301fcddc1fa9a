#include "app/actions/action_table.h"

#include <algorithm>
#include <cassert>
#include <utility>

#include <QStringList>

namespace hither {

QAction* ActionTable::add(ActionEntry entry) {
    assert(!actions_.count(entry.id));
    for ([[maybe_unused]] const ActionEntry& other : entries_) assert(entry.keys.isEmpty() || other.keys != entry.keys);
    auto* action = new QAction(entry.words, this);
    action->setObjectName(entry.id);
    action->setShortcut(entry.keys);
    action->setToolTip(entry.help);
    action->setStatusTip(entry.help);
    action->setCheckable(static_cast<bool>(entry.checked));
    connect(action, &QAction::triggered, this, [this, run = entry.run] {
        run();
        refresh();
    });
    actions_[entry.id] = action;
    entries_.push_back(std::move(entry));
    return action;
}

QAction* ActionTable::action(const QString& id) const {
    const auto found = actions_.find(id);
    assert(found != actions_.end());
    return found->second;
}

std::vector<const ActionEntry*> ActionTable::matching(const QString& typed) const {
    const QStringList words = typed.simplified().toLower().split(' ', Qt::SkipEmptyParts);
    std::vector<const ActionEntry*> out;
    for (const ActionEntry& e : entries_) {
        const QString all = (action(e.id)->text() + ' ' + e.help + ' ' + e.id).toLower();
        if (std::all_of(words.begin(), words.end(), [&](const QString& w) { return all.contains(w); })) out.push_back(&e);
    }
    const auto begins = [&](const ActionEntry* e) { return !words.isEmpty() && action(e->id)->text().toLower().startsWith(words.front()); };
    std::stable_partition(out.begin(), out.end(), begins);
    return out;
}

void ActionTable::refresh() {
    for (const ActionEntry& e : entries_) {
        QAction* action = actions_[e.id];
        if (e.wordsNow) action->setText(e.wordsNow());
        action->setEnabled(!e.possible || e.possible());
        if (e.checked) action->setChecked(e.checked());
    }
}

}  // namespace hither
