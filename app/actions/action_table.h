#pragma once
#include <functional>
#include <map>
#include <vector>

#include <QAction>
#include <QObject>
#include <QString>

namespace hither {

/// One command: what menus, buttons, the command search and the page of keys are made from.
struct ActionEntry {
    QString id;                          ///< "file.save": stable, never shown
    QString group;                       ///< menu that it belongs to: "file", "edit", "view", "build", "check", "help"; empty: no menu
    QString words;                       ///< "Save", with no ampersand
    QString help;                        ///< one line: what it does for the person
    QKeySequence keys;                   ///< may be empty
    std::function<void()> run;
    std::function<bool()> possible;      ///< empty: always
    std::function<QString()> wordsNow;   ///< words that change ("Undo turning the elbow"); empty: `words`
    std::function<bool()> checked;       ///< a choice that is on or off; empty: a plain command
};

/// The one table of commands.
class ActionTable : public QObject {
    Q_OBJECT

public:
    using QObject::QObject;

    /// Asserts that id and keys are new.
    QAction* add(ActionEntry entry);
    QAction* action(const QString& id) const;          ///< asserts that it is there
    const std::vector<ActionEntry>& entries() const { return entries_; }
    /// Entries whose words, help or id hold every word typed, those whose words begin with it first.
    std::vector<const ActionEntry*> matching(const QString& typed) const;
    /// Brings words, possible and checked up to date. Cheap; called after every change.
    void refresh();

private:
    std::vector<ActionEntry> entries_;
    std::map<QString, QAction*> actions_;
};

}  // namespace hither
