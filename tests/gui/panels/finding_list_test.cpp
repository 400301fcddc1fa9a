#include <QAccessible>
#include <QLabel>
#include <QScrollBar>

#include "app/panels/finding_list.h"
#include "app/panels/finding_view.h"
#include "app/panels/finding_words.h"
#include "core/plan/edits/findings.h"
#include "core/plan/edits/joints.h"
#include "core/plan/edits/parts.h"
#include "tests/gui/panels/finding_fixture.h"

using namespace hither;
using namespace hither::test;

namespace {

struct Listed : Desk {
    FindingList list{context};
    FindingView* view_ = list.findChild<FindingView*>();
    FindingModel* model = static_cast<FindingModel*>(view_->model());

    explicit Listed(Plan plan) : Desk(std::move(plan)) {
        list.resize(320, 600);
        list.show();
        REQUIRE(QTest::qWaitForWindowExposed(&list));
        model->show(analysis.latest());
    }
    QString header() const {
        QString all;
        for (const QLabel* l : list.findChildren<QLabel*>()) all += l->text() + '\n';
        return all;
    }
    void click(int row) { QTest::mouseClick(view_->viewport(), Qt::LeftButton, {}, view_->visualRect(model->index(row)).center()); }
};

/// `count` made-up findings of one option, in the core's order.
std::shared_ptr<Analysed> made(const Desk& desk, int count, int shift = 0) {
    auto out = std::make_shared<Analysed>(*desk.analysis.latest());
    out->findings.clear();
    for (int i = 0; i < count; ++i) {
        Finding f = desk.analysis.latest()->findings.front();
        f.id = "clearance.body:m/" + std::to_string((i * 7 + shift) % count);
        f.verdict = i < count / 2 ? Verdict::misses : i < count * 3 / 4 ? Verdict::unknown : Verdict::close;
        f.key = "clearance.near";
        f.measure = Measure::length;
        f.value = 0.001 * i + 0.0001 * shift;
        f.limit = 0.01;
        out->findings.push_back(f);
    }
    return out;
}

}  // namespace

TEST_CASE("A missed check stands first and the list says that the plan is not ready") {
    Listed l(samplePlan("does_not_mate"));
    const Finding* missed = l.first(Verdict::misses);
    REQUIRE(missed);
    CHECK(l.model->row(0).kind == FindingRow::Kind::heading);
    CHECK(l.model->row(0).verdict == Verdict::misses);
    CHECK(l.model->row(1).key == missed->id);
    CHECK(l.model->row(1).text.toStdString() == sentence(*missed, UnitSystem::metric));
    CHECK(l.header().contains("not ready"));
    // Every finding that is not met is listed once, in the core's order; those that are met are folded away.
    std::vector<std::string> listed, wanted;
    for (int i = 0; i < l.model->rowCount(); ++i) if (l.model->row(i).kind == FindingRow::Kind::finding) listed.push_back(l.model->row(i).key);
    for (const Finding& f : l.analysis.latest()->findings) if (f.verdict != Verdict::meets) wanted.push_back(f.id);
    CHECK(listed == wanted);
}

TEST_CASE("Clicking a finding shows it and picks its first subject, and Enter goes to the Check step") {
    Listed l(samplePlan("does_not_mate"));
    const Finding missed = *l.first(Verdict::misses);
    l.click(1);
    CHECK(l.view.finding().toStdString() == missed.id);
    REQUIRE_FALSE(missed.subjects.empty());
    CHECK(l.view.picked() == pickedOf(missed.subjects.front(), l.analysis.situation().get()));
    CHECK(l.view.picked().kind == Picked::Kind::part);
    CHECK(l.view.step() != JobStep::check);
    QTest::keyClick(l.view_, Qt::Key_Return);
    CHECK(l.view.step() == JobStep::check);
}

TEST_CASE("The list works by keyboard alone: arrows go over rows, a heading opens and closes its group") {
    Listed l(samplePlan("elbow_switch_on_chair"));
    const int closed = l.model->rowCount();
    const int heading = l.model->rowOf("heading meets");
    REQUIRE(heading == closed - 1);
    l.view_->setFocus();
    QTest::keyClick(l.view_, Qt::Key_End);
    REQUIRE(l.view_->currentIndex().row() == heading);
    QTest::keyClick(l.view_, Qt::Key_Return);
    CHECK(l.model->rowCount() > closed);
    QTest::keyClick(l.view_, Qt::Key_Down);
    CHECK(l.view.finding().toStdString() == l.model->row(heading + 1).key);
    QTest::keyClick(l.view_, Qt::Key_Up);
    QTest::keyClick(l.view_, Qt::Key_Left);
    CHECK(l.model->rowCount() == closed);
    l.click(heading);
    CHECK(l.model->rowCount() > closed);
}

TEST_CASE("F8 goes round the missed findings and back, and only round those") {
    Plan plan = samplePlan("does_not_mate");
    Listed l(plan);
    std::vector<std::string> missed;
    for (const Finding& f : l.analysis.latest()->findings) if (f.verdict == Verdict::misses) missed.push_back(f.id);
    REQUIRE_FALSE(missed.empty());
    for (std::size_t round = 0; round <= missed.size(); ++round) {
        l.actions.action("check.next")->trigger();
        CHECK(l.view.finding().toStdString() == missed[round % missed.size()]);
    }
    l.actions.action("check.previous")->trigger();
    CHECK(l.view.finding().toStdString() == missed[(missed.size() * 2 - 1) % missed.size()]);
    CHECK(l.view_->currentIndex().row() == l.model->rowOf(l.view.finding().toStdString()));

    Listed fine(samplePlan("elbow_switch_on_chair"));
    REQUIRE_FALSE(fine.first(Verdict::misses));
    CHECK_FALSE(fine.actions.action("check.next")->isEnabled());
    CHECK(fine.header().contains("asses these checks"));
}

TEST_CASE("New results change sixty rows in place: the picked one stays picked and where it is") {
    Listed l(samplePlan("does_not_mate"));
    l.view_->show(made(l, 60));
    const std::string id = l.model->row(25).key;
    l.view.showFinding(QString::fromStdString(id));
    l.view_->scrollTo(l.model->index(25), QAbstractItemView::PositionAtCenter);
    QSignalSpy reset(l.model, &QAbstractItemModel::modelReset);
    QSignalSpy chosen(l.view_, &FindingView::chosen);
    for (int shift = 1; shift <= 6; ++shift) {
        const int top = l.view_->visualRect(l.model->index(l.model->rowOf(id))).top();
        l.view_->show(made(l, 60, shift));
        const int row = l.model->rowOf(id);
        REQUIRE(row >= 0);
        CHECK(l.view_->selectionModel()->isSelected(l.model->index(row)));
        // The finding may have moved among the others; on the screen it stays, but at the ends of the list.
        const int y = l.view_->visualRect(l.model->index(row)).top();
        const QScrollBar* bar = l.view_->verticalScrollBar();
        if (bar->value() > bar->minimum() && bar->value() < bar->maximum()) CHECK(std::abs(y - top) <= 1);
    }
    CHECK(reset.count() == 0);
    CHECK(chosen.count() == 0);
    CHECK(l.view.finding().toStdString() == id);
}

TEST_CASE("Rows say everything in words for a screen reader, accepted ones with who, when and why") {
    Listed l(samplePlan("does_not_mate"));
    const std::string id = l.first(Verdict::misses)->id;
    REQUIRE(l.document.apply("Accept", acceptFinding(l.document.plan(), {l.view.option(), id, "only for the photo", "KL", "2026-11-25T09:00:00Z"})));
    l.settle();
    l.model->show(l.analysis.latest());
    const FindingRow& row = l.model->row(l.model->rowOf(id));
    CHECK(row.verdict == Verdict::misses);
    CHECK(row.accepted == "Accepted by KL on 2026-11-25: only for the photo");
    CHECK(l.header().contains("accepted with a note"));
    for (int i = 0; i < l.model->rowCount(); ++i) {
        const QString spoken = l.model->data(l.model->index(i), Qt::AccessibleTextRole).toString();
        CHECK_FALSE(spoken.isEmpty());
        if (l.model->row(i).kind != FindingRow::Kind::finding) continue;
        CHECK(spoken.contains(l.model->row(i).text));
        CHECK(spoken.contains(l.model->row(i).value));
    }
    CHECK(l.model->data(l.model->index(l.model->rowOf(id)), Qt::AccessibleTextRole).toString().contains("only for the photo"));
    QAccessibleInterface* list = QAccessible::queryAccessibleInterface(l.view_);
    REQUIRE(list);
    CHECK_FALSE(list->text(QAccessible::Name).isEmpty());
    CHECK(list->role() == QAccessible::List);
}

TEST_CASE("An option that cannot be set up says why in rows, with the place in words") {
    Plan plan = samplePlan("does_not_mate");
    plan.options[0].mounts[0].attachment = "no_such_rail";
    Listed l(plan);
    REQUIRE_FALSE(l.analysis.latest()->problems.empty());
    REQUIRE(l.model->rowCount() == static_cast<int>(l.analysis.latest()->problems.size()));
    CHECK(l.model->row(0).kind == FindingRow::Kind::problem);
    CHECK(l.model->row(0).text.contains("no_such_rail"));
    CHECK_FALSE(l.model->row(0).text.contains("options/"));
    CHECK(l.header().contains("Cannot be checked yet"));
}
