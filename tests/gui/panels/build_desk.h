#pragma once
#include <QApplication>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>

#include "app/panels/build_chain_list.h"
#include "app/panels/build_offer_list.h"
#include "app/panels/build_panel.h"
#include "app/panels/build_rows.h"
#include "app/panels/build_ways_bar.h"
#include "app/panels/build_where_list.h"
#include "core/plan/edits/mounts.h"
#include "tests/gui/panels/finding_fixture.h"

namespace hither::test {

/// The build panel in a window of its own, with keys and clicks going to what has the focus.
struct BuildDesk : Desk {
    QScrollArea window;
    BuildPanel& panel;

    explicit BuildDesk(Plan plan) : Desk(std::move(plan)), panel(*new BuildPanel(context)) {
        QObject::connect(&document, &Document::historyChanged, &actions, &ActionTable::refresh);   // as the window does
        view.setStep(JobStep::build);
        window.setWidgetResizable(true);
        window.setWidget(&panel);
        window.resize(360, 900);
        window.show();
        QApplication::setActiveWindow(&window);
        REQUIRE(QTest::qWaitForWindowActive(&window));
        QTest::qWait(20);
    }
    BuildOfferList& offers() { return *panel.findChild<BuildOfferList*>(); }
    BuildChainList& chain() { return *panel.findChild<BuildChainList*>(); }
    BuildWaysBar& ways() { return *panel.findChild<BuildWaysBar*>(); }
    BuildWhereList& where() { return *panel.findChild<BuildWhereList*>(); }
    QWidget* focus() const { return QApplication::focusWidget(); }
    void key(int key, Qt::KeyboardModifiers modifiers = {}) {
        REQUIRE(focus());
        QTest::keyClick(focus(), static_cast<Qt::Key>(key), modifiers);
        QTest::qWait(1);
    }
    void type(const QString& text) {
        REQUIRE(focus());
        QTest::keyClicks(focus(), text);
    }
    void shortcut(const char* keys) {
        const QKeySequence sequence(keys);
        key(sequence[0].key(), sequence[0].keyboardModifiers());
    }
    const Mount& mount() const { return *view.mount(); }
    std::string json() const { return planToJson(document.plan()); }
    std::vector<std::string> parts() const {
        std::vector<std::string> ids;
        for (const MountPart& p : mount().parts) ids.push_back(p.part);
        return ids;
    }
    /// Waits until the ways have been looked for.
    void waitForWays() { REQUIRE(QTest::qWaitFor([this] { return ways().state() != BuildWaysBar::State::searching; }, 20000)); }
};

inline Plan withoutMounts(Plan plan) {
    while (!plan.options[0].mounts.empty()) {
        const std::string option = plan.options[0].id, mount = plan.options[0].mounts.front().id;
        plan = *removeMount(plan, option, mount).plan;
    }
    return plan;
}

}  // namespace hither::test
