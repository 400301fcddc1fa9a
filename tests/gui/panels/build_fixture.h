#pragma once
#include <string>
#include <vector>

#include <QCoreApplication>

#include "app/panels/build_chain_list.h"
#include "app/panels/build_offer_list.h"
#include "app/panels/build_panel.h"
#include "app/panels/build_rows.h"
#include "app/panels/build_ways_bar.h"
#include "app/panels/build_where_list.h"
#include "core/plan/edits/options.h"
#include "core/plan/edits/sites.h"
#include "core/plan/edits/supports.h"
#include "givens_fixture.h"

namespace hither::test {

inline Plan taken(Edited edit) {
    if (!edit) throw std::runtime_error(edit.whyNot);
    return *edit.plan;
}

/// A manual wheelchair with somebody of middle size on it, who can press outward with the right elbow,
/// and an option without a mount.
inline Plan elbowPlan() {
    Plan plan = GivensFixture::chairPlan();
    PersonSpec person;
    person.name = "Trial";
    person.on = "chair";
    person.body.percentile = 50;
    plan = taken(setPerson(plan, person));
    SiteSpec site;
    site.id = "elbow";
    site.name = "Right elbow";
    site.controlSite = "elbow_right";
    site.given = SiteGiven::fromPosture;
    site.directionTyped = false;
    site.movement_m = Figure{0.04, {BasisKind::measured, "test"}};
    site.force_N = Figure{6.0, {BasisKind::measured, "test"}};
    plan = taken(addSite(plan, site));
    return taken(addOption(plan, "option-1", "Option 1"));
}

/// The step "build" as the window has it, in a column of the width that it has there.
struct BuildFixture : GivensFixture {
    Shown<BuildPanel>* shown = nullptr;
    std::unique_ptr<Shown<BuildPanel>> held;

    explicit BuildFixture(Plan plan = elbowPlan(), int width = 350, int height = 900) : GivensFixture(std::move(plan)) {
        view.setStep(JobStep::build);
        held = std::make_unique<Shown<BuildPanel>>(*this, width, height);
        shown = held.get();
    }
    BuildPanel& panel() { return *shown->panel; }
    template <class W> W* child() { return panel().findChild<W*>(); }
    BuildChainList& chain() { return *child<BuildChainList>(); }
    BuildOfferList& offers() { return *child<BuildOfferList>(); }
    BuildWaysBar& ways() { return *child<BuildWaysBar>(); }
    BuildWhereList& where() { return *child<BuildWhereList>(); }
    static void settle() { Shown<BuildPanel>::settle(); }

    /// A key to whatever has the keyboard, as a person presses it.
    static void key(int key, Qt::KeyboardModifiers with = Qt::NoModifier) {
        QWidget* to = QApplication::focusWidget();
        if (!to) throw std::runtime_error("nothing has the keyboard");
        QTest::keyClick(to, static_cast<Qt::Key>(key), with);
        settle();
    }
    static void type(const char* words) {
        QWidget* to = QApplication::focusWidget();
        if (!to) throw std::runtime_error("nothing has the keyboard");
        QTest::keyClicks(to, words);
        settle();
    }
    /// Goes down in a list that has the keyboard, or whose search field has it, until that row is picked.
    static bool downTo(BuildRowList& list, const QString& wanted) {
        for (int i = 0; i <= list.count() && list.currentKey() != wanted; ++i) key(Qt::Key_Down);
        return list.currentKey() == wanted;
    }
    /// Takes a part that is on offer, by typing and by the keys for down and Enter.
    bool takeByKeys(const char* words, const QString& part) {
        type(words);
        if (!downTo(*offers().list(), part)) return false;
        key(Qt::Key_Return);
        return true;
    }
    /// From New mount to the grip, by the keyboard.
    bool startByKeys(const QString& where_, const char* words, const QString& grip) {
        panel().chooseWhere();
        settle();
        key(Qt::Key_Home);
        if (!downTo(*where().list(), where_)) return false;
        key(Qt::Key_Return);
        return takeByKeys(words, grip);
    }
    const PlanOption& option() const { return document.plan().options.front(); }
    std::vector<std::string> partIds(std::size_t mount = 0) const {
        std::vector<std::string> ids;
        for (const MountPart& p : option().mounts.at(mount).parts) ids.push_back(p.part);
        return ids;
    }
    /// As a person meets it: the clamp, the arm, the back and the switch of the sample "elbow switch on chair".
    bool elbowMountByKeys() {
        return startByKeys("chair/back_cane_right", "screw clamp", "screw-clamp-7-8-in") && takeByKeys("arm", "arm-single-lock-130") &&
               takeByKeys("back", "back-three-screws-40-4-40") && takeByKeys("switch", "switch-round-medium");
    }
};

}  // namespace hither::test
