#include "app/panels/build_chain_list.h"
#include "app/panels/build_mount_bar.h"
#include "app/panels/build_panel.h"
#include "app/panels/build_rows.h"
#include "app/panels/build_ways_bar.h"

namespace hither {

void BuildPanel::addActions() {
    ActionTable& table = context_.actions;
    const auto add = [&](const char* id, const QString& words, const QString& help, const QKeySequence& keys, std::function<void()> run, std::function<bool()> possible) {
        QAction* action = table.add({id, "build", words, help, keys, std::move(run), std::move(possible), {}, {}});
        addAction(action);
        return action;
    };
    const auto anyMount = [this] { return context_.view.mount() != nullptr; };
    const auto here = [this] { context_.view.setStep(JobStep::build); };
    const auto stepping = [this] { return ways_->state() == BuildWaysBar::State::stepping; };
    add("build.new_mount", tr("New mount"), tr("Choose a rail, edge, face or cloth for another mount"), QKeySequence("Ctrl+M"), [this] { chooseWhere(); },
        [this] { return !context_.document.plan().supports.empty(); });
    add("build.copy_mount", tr("Copy the mount"), tr("Another mount of the same parts in the same place"), {}, [this] { mounts_->copy(); }, anyMount);
    add("build.rename_mount", tr("Rename the mount …"), tr("Gives the mount another name"), {}, [this] { mounts_->rename(); }, anyMount);
    add("build.remove_mount", tr("Remove the mount"), tr("Takes the whole mount out of this option"), {}, [this] { mounts_->remove(); }, anyMount);
    add("build.add_part", tr("Add a part"), tr("Shows what can go behind the part picked, or on the free end"), QKeySequence(Qt::Key_Insert), [this, here] { here(); chain_->offerBehind(); }, [this] { return chain_->canAdd(); });
    add("build.replace_part", tr("Replace the part"), tr("Shows what can take the place of the part picked"), QKeySequence("Ctrl+R"), [this, here] { here(); chain_->offerInPlace(); },
        [this] { return chain_->part() >= 0; });
    add("build.turn_part", tr("Turn the part end for end"), tr("Builds the part picked the other way round"), QKeySequence("Ctrl+T"), [this] { chain_->turn(); }, [this] { return chain_->canTurn(); });
    QAction* remove = add("build.remove_part", tr("Remove the part"), tr("Takes the part picked out of the mount"), QKeySequence(Qt::Key_Delete), [this] { chain_->remove(); },
                          [this] { return chain_->canRemove(); });
    // Delete means this only where the parts are listed: elsewhere it deletes letters.
    remove->setShortcutContext(Qt::WidgetWithChildrenShortcut);
    removeAction(remove);
    chain_->list()->addAction(remove);
    add("build.bring_to_site", tr("Bring to site"), tr("Looks for joint settings that put the switch on its site, facing the movement"), QKeySequence("Ctrl+B"),
        [this, here] { here(); ways_->start(); }, [this] { return ways_->canStart(); });
    add("build.previous_way", tr("Previous way"), tr("Shows the way before this one"), QKeySequence("Alt+PgUp"), [this] { ways_->step(-1); }, stepping);
    add("build.next_way", tr("Next way"), tr("Shows the next way"), QKeySequence("Alt+PgDown"), [this] { ways_->step(1); }, stepping);
    add("build.keep_way", tr("Keep this way"), tr("Keeps the way shown"), QKeySequence("Alt+Return"), [this] { ways_->keep(); }, stepping);
    add("build.leave_ways", tr("Leave the ways"), tr("Everything is as it was before they were looked for"), {}, [this] { ways_->leave(); },
        [this] { return ways_->state() != BuildWaysBar::State::idle; });
}

}  // namespace hither
