#include <QAccessible>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTemporaryDir>

#include "app/panels/check_panel.h"
#include "app/panels/finding_accept.h"
#include "app/panels/finding_at.h"
#include "app/panels/finding_button.h"
#include "app/panels/finding_card.h"
#include "app/panels/finding_figures.h"
#include "app/panels/finding_limits.h"
#include "app/panels/finding_list.h"
#include "app/panels/finding_words.h"
#include "app/widgets/fold.h"
#include "app/widgets/number_field.h"
#include "core/plan/edits/joints.h"
#include "core/storage/plan_file.h"
#include "core/storage/plan_save.h"
#include "tests/gui/panels/finding_fixture.h"

using namespace hither;
using namespace hither::test;

namespace {

struct Checking : Desk {
    CheckPanel panel{context};

    explicit Checking(Plan plan) : Desk(std::move(plan)) {
        panel.resize(340, 900);
        panel.show();
        REQUIRE(QTest::qWaitForWindowExposed(&panel));
    }
    void look(const Finding& f) { view.showFinding(QString::fromStdString(f.id)); }
    QPushButton* button(const QString& words) const {
        for (QPushButton* b : panel.findChildren<QPushButton*>()) if (b->text() == words && b->isVisible()) return b;
        return nullptr;
    }
    QString words() const {
        QString all;
        for (const QLabel* l : panel.findChildren<QLabel*>()) if (l->isVisible()) all += l->text() + '\n';
        return all;
    }
    void click(QPushButton* b) {
        REQUIRE(b);
        QTest::mouseClick(b, Qt::LeftButton);
    }
};

const Finding* withRemedy(const Desk& desk, Remedy::Kind kind) {
    for (const Finding& f : desk.analysis.latest()->findings) if (f.remedy && f.remedy->kind == kind) return &f;
    return nullptr;
}
const Finding* byId(const Desk& desk, const std::string& id) { return desk.analysis.finding(QString::fromStdString(id)); }

}  // namespace

TEST_CASE("The remedy of screws that do not go together is one click and one step, and then they do") {
    Checking c(samplePlan("does_not_mate"));
    const Finding* f = withRemedy(c, Remedy::Kind::insertParts);
    REQUIRE(f);
    REQUIRE(f->verdict == Verdict::misses);
    c.look(*f);
    CHECK(c.words().contains(QString::fromStdString(sentence(*f, UnitSystem::metric))));
    const QString offered = QString::fromStdString(remedySentence(*f, UnitSystem::metric));
    const Plan before = c.document.plan();
    c.click(c.button(QString(offered).replace('&', "&&")));
    c.settle();
    CHECK(c.document.plan().options[0].mounts[0].parts.size() > before.options[0].mounts[0].parts.size());
    for (const Finding& g : c.analysis.latest()->findings)
        if (g.key.rfind("fit.mate", 0) == 0) CHECK(g.verdict == Verdict::meets);
    CHECK(c.document.undoLabel().startsWith("Add "));
    c.document.undo();
    CHECK(c.document.plan() == before);
    CHECK_FALSE(c.document.canUndo());
}

TEST_CASE("The remedy of a switch that stands off its site sets the joints in one step") {
    Plan plan = samplePlan("elbow_switch_on_chair");
    for (MountPart& p : plan.options[0].mounts[0].parts)
        for (auto& [name, setting] : p.joints)
            for (double& q : setting.q) q *= 0.5;
    Checking c(plan);
    const Finding* f = withRemedy(c, Remedy::Kind::solve);
    REQUIRE(f);
    c.look(*f);
    c.click(c.button(QString::fromStdString(remedySentence(*f, UnitSystem::metric))));
    c.settle();
    for (const Finding& g : c.analysis.latest()->findings) CHECK(g.key != "reach.site.short");
    CHECK(c.document.undoLabel() == "Bring the switch to its site");
    c.document.undo();
    CHECK(c.document.plan() == plan);
}

TEST_CASE("Accepting asks for a note and initials, keeps the verdict, and survives saving and opening") {
    Checking c(samplePlan("does_not_mate"));
    const Finding f = *c.first(Verdict::misses);
    c.look(f);
    auto* note = c.panel.findChild<FindingAccept*>()->findChild<QPlainTextEdit*>();
    auto* initials = c.panel.findChild<FindingAccept*>()->findChild<QLineEdit*>();
    initials->clear();
    c.click(c.button("Accept with this note"));
    CHECK(c.document.plan().accepted.empty());
    CHECK(c.words().contains("Say why"));
    QTest::keyClicks(note, "cushion comes next week");
    c.click(c.button("Accept with this note"));
    CHECK(c.document.plan().accepted.empty());
    CHECK(c.words().contains("Type your initials"));
    QTest::keyClicks(initials, "KL");
    QTest::keyClick(initials, Qt::Key_Return);
    REQUIRE(c.document.plan().accepted.size() == 1);
    const AcceptedFinding& a = c.document.plan().accepted[0];
    CHECK(a.finding == f.id);
    CHECK(a.note == "cushion comes next week");
    CHECK(a.who == "KL");
    CHECK(QDateTime::fromString(QString::fromStdString(a.when_utc), Qt::ISODate).isValid());
    c.settle();
    CHECK(byId(c, f.id)->verdict == Verdict::misses);

    QTemporaryDir folder;
    const std::string path = folder.filePath("plan.hither").toStdString();
    REQUIRE(savePlanFile(c.document.plan(), path).empty());
    PlanRead read = openPlanFile(path);
    REQUIRE(read.plan);
    CHECK(read.plan->accepted == c.document.plan().accepted);

    Checking again(*read.plan);
    again.look(f);
    CHECK(again.words().contains("Accepted by KL on"));
    CHECK(again.words().contains("cushion comes next week"));
    again.click(again.button("Withdraw"));
    CHECK(again.document.plan().accepted.empty());
}

TEST_CASE("A finding that occurs at another setting can be looked at there, and leaving leaves no trace") {
    // The bed's head switch is judged over the movement of the back section.
    for (const char* name : {"head_switch_on_bed", "two_switches_on_tray", "elbow_switch_on_chair"}) {
        Checking c(samplePlan(name));
        const Finding* f = nullptr;
        for (const Finding& g : c.analysis.latest()->findings) if (!g.at.empty()) { f = &g; break; }
        if (!f) continue;
        const Finding found = *f;
        const Plan before = c.document.plan();
        c.look(found);
        const auto shows = [&] {
            for (const GroupAt& at : found.at)
                for (const SupportSpec& s : c.document.plan().supports)
                    if (s.id == at.support && (!s.settings.count(at.group) || s.settings.at(at.group) != at.value)) return false;
            return true;
        };
        c.click(c.button("Show at this setting"));
        CHECK(shows());
        CHECK(c.document.inGesture());
        c.settle();
        c.click(c.button("Back to the present setting"));
        CHECK(c.document.plan() == before);
        c.click(c.button("Show at this setting"));
        QTest::keyClick(c.button("Back to the present setting"), Qt::Key_Escape);
        CHECK(c.document.plan() == before);
        c.click(c.button("Show at this setting"));
        c.view.setStep(JobStep::build);
        c.view.showFinding({});
        CHECK(c.document.plan() == before);
        CHECK_FALSE(c.document.canUndo());
        return;
    }
    FAIL("no sample has a finding at another setting");
}

TEST_CASE("What the checks ask is typed, seen at once, one step, and goes back to common practice") {
    Checking c(samplePlan("elbow_switch_on_chair"));
    auto* limits = c.panel.findChild<FindingLimits*>();
    for (Fold* fold : c.panel.findChildren<Fold*>()) fold->setOpen(true);
    REQUIRE(QTest::qWaitForWindowActive(&c.panel));
    NumberField* body = limits->findChildren<NumberField*>().front();
    body->setFocus();
    QTest::keyClick(body, Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(body, "25 mm");
    CHECK(c.document.plan().limits.clearanceBody_m == Approx(0.025));
    CHECK_FALSE(c.document.canUndo());
    QTest::keyClick(body, Qt::Key_Return);
    CHECK(c.document.canUndo());
    CHECK_FALSE(c.document.inGesture());
    QTest::keyClicks(body, "9");
    QTest::keyClick(body, Qt::Key_Escape);
    CHECK(c.document.plan().limits.clearanceBody_m == Approx(0.025));
    for (QPushButton* b : limits->findChildren<QPushButton*>()) b->click();
    CHECK(c.document.plan().limits == CheckLimits{});
    c.document.undo();
    c.document.undo();
    CHECK(c.document.plan().limits == CheckLimits{});
    CHECK_FALSE(c.document.canUndo());
}

TEST_CASE("The card names what it is about and the figures to measure, and every control has a name") {
    Checking c(samplePlan("elbow_switch_on_chair"));
    const Finding* load = nullptr;
    for (const Finding& f : c.analysis.latest()->findings) if (f.key.rfind("fit.rated_load", 0) == 0) { load = &f; break; }
    REQUIRE(load);
    c.look(*load);
    for (const Subject& s : load->subjects) CHECK(c.words().contains(QString::fromStdString(s.name)));
    const auto figures = figuresBehind(*load, c.document.plan(), c.view.option());
    REQUIRE_FALSE(figures.empty());
    for (const FigureBehind& f : figures) CHECK(c.words().contains(f.name.toHtmlEscaped()));
    QSignalSpy wanted(c.panel.findChild<FindingCard*>(), &FindingCard::figureWanted);
    for (QLabel* l : c.panel.findChildren<QLabel*>())
        if (l->text().contains(QString::fromStdString(figures[0].part + "|" + figures[0].place))) emit l->linkActivated(QString::fromStdString(figures[0].part + "|" + figures[0].place));
    REQUIRE(wanted.count() == 1);
    CHECK(wanted[0][0].toString().toStdString() == figures[0].part);
    for (QWidget* dialog : QApplication::topLevelWidgets()) if (dialog != &c.panel) dialog->close();

    for (QWidget* w : c.panel.findChildren<QWidget*>()) {
        if (!w->isVisibleTo(&c.panel) || w->focusPolicy() == Qt::NoFocus || w->focusPolicy() == Qt::ClickFocus) continue;
        QAccessibleInterface* in = QAccessible::queryAccessibleInterface(w);
        INFO(w->metaObject()->className() << " " << w->objectName().toStdString());
        REQUIRE(in);
        CHECK_FALSE(in->text(QAccessible::Name).isEmpty());
        CHECK(w->height() >= 24);
    }
}

TEST_CASE("A tube whose size is unknown leads to the support, where the size is typed") {
    Plan plan = samplePlan("elbow_switch_on_chair");
    Attachment bar;
    bar.id = "bar";
    bar.name = "bar of unknown size";
    bar.a = Vec3(0.1, -0.3, 0.7);
    bar.b = Vec3(0.4, -0.3, 0.7);
    bar.reference = Vec3::UnitZ();
    plan.supports[0].attachments.push_back(bar);
    plan.options[0].mounts[0].support = plan.supports[0].id;
    plan.options[0].mounts[0].attachment = "bar";
    plan.options[0].mounts[0].place = {};
    Checking c(plan);
    const Finding* unknown = nullptr;
    for (const Finding& f : c.analysis.latest()->findings) if (f.key == "fit.tube.size_unknown") unknown = &f;
    REQUIRE(unknown);
    c.look(*unknown);
    QLabel* to = nullptr;
    for (QLabel* l : c.panel.findChildren<QLabel*>()) if (l->isVisible() && l->text().contains("Type the size of bar")) to = l;
    REQUIRE(to);
    c.view.setStep(JobStep::check);
    emit to->linkActivated("size");
    CHECK(c.view.step() == JobStep::support);
    CHECK(c.view.picked() == Picked::attachment(plan.supports[0].id, "bar"));
}
