#include <catch2/catch.hpp>

#include <algorithm>

#include <QAbstractButton>
#include <QLabel>
#include <QLineEdit>
#include <QTemporaryDir>

#include "app/panels/person_panel.h"
#include "app/panels/person_words.h"
#include "app/widgets/choice_box.h"
#include "app/widgets/field_row.h"
#include "app/widgets/slider_field.h"
#include "app/widgets/text_field.h"
#include "core/units/quantity.h"
#include "givens_checks.h"
#include "givens_fixture.h"

using namespace hither;

namespace {

Plan personPlan(const char* kind = "chair-manual") {
    Plan plan = GivensFixture::chairPlan();
    plan.supports.front().kind = kind;
    PersonSpec person;
    person.name = "K.";
    person.on = "chair";
    plan.person = person;
    return plan;
}

void open(Shown<PersonPanel>& shown, const char* words) {
    auto* button = shown.find<QAbstractButton>((std::string("fold ") + words).c_str());
    REQUIRE(button);
    button->setFocus(Qt::TabFocusReason);
    QTest::keyClick(button, Qt::Key_Space);
    shown.settle();
}

BodySize sizeIn(const GivensFixture& f) {
    std::vector<std::string> problems;
    return f.shipped->body.size(f.document.plan().person->body, problems);
}

QString problemsShown(Shown<PersonPanel>& shown) {
    QStringList all;
    for (auto* line : shown.panel->findChildren<QLabel*>("problem"))
        if (line->isVisible()) all << line->text();
    return all.join('\n');
}

}  // namespace

TEST_CASE("A person is added with one button, named and removed") {
    GivensFixture f;
    Shown<PersonPanel> shown(f);
    auto* add = shown.find<QAbstractButton>("add person");
    REQUIRE(add);
    const std::string before = f.json();
    QTest::mouseClick(add, Qt::LeftButton);
    shown.settle();
    REQUIRE(f.document.plan().person);
    CHECK(f.document.plan().person->on == "chair");
    CHECK(f.document.undoLabel() == "Add the person");
    CHECK_FALSE(shown.find<QAbstractButton>("add person"));
    auto* name = shown.find<TextField>("person name");
    REQUIRE(name);
    CHECK(name->hasFocus());
    QTest::keyClicks(name, "Robin");
    QTest::keyClick(name, Qt::Key_Return);
    CHECK(f.document.plan().person->name == "Robin");
    QTest::mouseClick(shown.find<QAbstractButton>("remove person"), Qt::LeftButton);
    shown.settle();
    CHECK(f.json() == before);
    CHECK(shown.find<QAbstractButton>("add person"));
    f.document.undo();
    shown.settle();
    CHECK(shown.find<TextField>("person name")->text() == "Robin");
}

TEST_CASE("Without anything to rest on the way leads to the supports") {
    GivensFixture f(Plan{});
    Shown<PersonPanel> shown(f);
    f.view.setStep(JobStep::person);
    CHECK_FALSE(shown.find<QAbstractButton>("add person"));
    auto* support = shown.find<QAbstractButton>("to support");
    REQUIRE(support);
    QTest::mouseClick(support, Qt::LeftButton);
    CHECK(f.view.step() == JobStep::support);
}

TEST_CASE("A person that a site is on stays, and the panel says why") {
    Plan plan = personPlan();
    SiteSpec site;
    site.id = "s";
    site.name = "Elbow";
    site.given = SiteGiven::fromPosture;
    site.controlSite = "elbow_right";
    plan.sites.push_back(site);
    GivensFixture f(plan);
    Shown<PersonPanel> shown(f);
    QTest::mouseClick(shown.find<QAbstractButton>("remove person"), Qt::LeftButton);
    shown.settle();
    CHECK(f.document.plan().person);
    auto* refusal = shown.find<QLabel>("refusal");
    CHECK(refusal->isVisible());
    CHECK(refusal->text().contains("is on the body"));
}

TEST_CASE("Typing a stature shows it at once; Esc leaves no trace, Enter is one step") {
    GivensFixture f(personPlan());
    Shown<PersonPanel> shown(f);
    auto* stature = shown.find<NumberField>("body stature");
    auto* arm = shown.find<NumberField>("body acromionradialelength");
    REQUIRE(stature);
    REQUIRE(arm);
    CHECK(stature->text().isEmpty());
    // ANSUR II (NATICK/TR-15/007), mean stature of the women: 1628 mm.
    CHECK(stature->placeholderText().toStdString() == "1628 mm");
    const QString armBefore = arm->placeholderText();
    const std::string before = f.json();
    stature->setFocus(Qt::TabFocusReason);
    QTest::keyClicks(stature, "1510");
    CHECK(f.document.inGesture());
    CHECK(f.document.plan().person->body.typed.at("stature") == 1.510);
    CHECK(arm->placeholderText() != armBefore);
    CHECK(arm->placeholderText().toStdString() == printLength(sizeIn(f).m("acromionradialelength"), UnitSystem::metric, 0));
    QTest::keyClick(stature, Qt::Key_Escape);
    CHECK(f.json() == before);
    CHECK_FALSE(f.document.canUndo());
    CHECK(stature->text().isEmpty());
    CHECK(arm->placeholderText() == armBefore);

    QTest::keyClicks(stature, "1510");
    QTest::keyClick(stature, Qt::Key_Return);
    shown.settle();
    CHECK(f.document.undoLabel() == "Set: stature");
    auto* row = qobject_cast<FieldRow*>(stature->parentWidget());
    REQUIRE(row);
    CHECK(row->basis() == BasisKind::measured);
    f.document.undo();
    CHECK(f.json() == before);
    CHECK_FALSE(f.document.canUndo());
    CHECK(row->basis() == BasisKind::published);
}

TEST_CASE("A percentile gives the stature until one is typed") {
    GivensFixture f(personPlan());
    Shown<PersonPanel> shown(f);
    auto* percentile = shown.find<NumberField>("percentile");
    REQUIRE(percentile);
    percentile->setFocus(Qt::TabFocusReason);
    QTest::keyClicks(percentile, "95");
    QTest::keyClick(percentile, Qt::Key_Return);
    // ANSUR II, women: 95th percentile of stature 1740 mm.
    CHECK(shown.find<NumberField>("body stature")->placeholderText().toStdString() == "1740 mm");
    percentile->selectAll();
    QTest::keyClicks(percentile, "100");
    QTest::keyClick(percentile, Qt::Key_Return);
    CHECK(*f.document.plan().person->body.percentile == 95);
    CHECK_FALSE(percentile->complaint().isEmpty());
}

TEST_CASE("What is wrong with a body is said where it is typed") {
    GivensFixture f(personPlan());
    Shown<PersonPanel> shown(f);
    CHECK(problemsShown(shown).isEmpty());
    auto* table = shown.find<ChoiceBox>("body table");
    table->setFocus(Qt::TabFocusReason);
    QTest::keyClick(table, Qt::Key_End);
    shown.settle();
    REQUIRE(f.document.plan().person->body.table == BodyTable::child);
    CHECK(problemsShown(shown).contains("needs a typed stature"));
    CHECK_FALSE(shown.find<NumberField>("percentile"));
    auto* stature = shown.find<NumberField>("body stature");
    stature->setFocus(Qt::TabFocusReason);
    QTest::keyClicks(stature, "1200");
    QTest::keyClick(stature, Qt::Key_Return);
    shown.settle();
    CHECK(problemsShown(shown).isEmpty());

    // A dimension in a closed part of the form: the problem stands below its heading.
    Plan wrong = personPlan();
    wrong.person->body.typed["handlength"] = 0.33;
    GivensFixture g(wrong);
    Shown<PersonPanel> other(g);
    CHECK(problemsShown(other).contains("Hand length of"));
    open(other, "Body dimensions");
    CHECK(problemsShown(other).count("Hand length of") == 1);
    for (const std::string& name : bodyDimensionNames()) CHECK(bodyDimensionName(name).toStdString() != name);
}

TEST_CASE("A joint turned by slider is one step; Esc leaves no trace") {
    GivensFixture f(personPlan());
    Shown<PersonPanel> shown(f);
    open(shown, "Right arm");
    auto* elbow = shown.find<SliderField>("posture elbow_flexion_right");
    REQUIRE(elbow);
    HeldSlider* slider = elbow->slider();
    // The forearms of a seated person rest level.
    CHECK(elbow->numberField()->placeholderText().toStdString() == "90°");
    CHECK(slider->value() == 90);
    const std::string before = f.json();
    slider->setFocus(Qt::TabFocusReason);
    for (int i = 0; i < 4; ++i) QTest::keyClick(slider, Qt::Key_Right);
    CHECK(f.document.inGesture());
    CHECK(f.document.plan().person->posture.at("elbow_flexion_right") == Approx(radians(94)));
    QTest::keyClick(slider, Qt::Key_Escape);
    CHECK(f.json() == before);
    CHECK_FALSE(f.document.canUndo());
    CHECK(slider->value() == 90);
    for (int i = 0; i < 4; ++i) QTest::keyClick(slider, Qt::Key_Left);
    QTest::keyClick(slider, Qt::Key_Return);
    CHECK(f.document.plan().person->posture.at("elbow_flexion_right") == Approx(radians(86)));
    CHECK(f.document.undoLabel() == "Set: elbow flexion, right");
    f.document.undo();
    CHECK(f.json() == before);
    CHECK_FALSE(f.document.canUndo());
    f.document.redo();
    auto* rest = shown.find<QAbstractButton>("rest");
    CHECK(rest->isVisible());
    QTest::mouseClick(rest, Qt::LeftButton);
    CHECK(f.document.plan().person->posture.empty());
    CHECK_FALSE(rest->isVisible());
}

TEST_CASE("An active range has ends of its own, and none when it is as published") {
    GivensFixture f(personPlan());
    Shown<PersonPanel> shown(f);
    open(shown, "Left arm: range");
    auto* most = shown.find<NumberField>("most elbow_flexion_left");
    auto* least = shown.find<NumberField>("least elbow_flexion_left");
    REQUIRE(most);
    CHECK(most->placeholderText().toStdString() == "150°");   // AAOS
    const std::string before = f.json();
    most->setFocus(Qt::TabFocusReason);
    QTest::keyClicks(most, "70");
    QTest::keyClick(most, Qt::Key_Return);
    const JointRange range = f.document.plan().person->activeRanges.at("elbow_flexion_left");
    CHECK(range.min == 0);
    CHECK(range.max == Approx(radians(70)));
    CHECK(least->text().isEmpty());
    least->setFocus(Qt::TabFocusReason);
    QTest::keyClicks(least, "80");
    QTest::keyClick(least, Qt::Key_Return);
    CHECK_FALSE(least->complaint().isEmpty());
    CHECK(f.document.plan().person->activeRanges.at("elbow_flexion_left") == range);
    QTest::keyClick(least, Qt::Key_Escape);
    // The resting elbow (90 degrees) is beyond what this person reaches.
    auto* row = qobject_cast<FieldRow*>(shown.find<SliderField>("posture elbow_flexion_left")->parentWidget());
    REQUIRE(row);
    bool said = false;
    for (auto* label : row->findChildren<QLabel*>()) said = said || label->text().startsWith("Beyond the active range");
    CHECK(said);
    most->setFocus(Qt::TabFocusReason);
    most->selectAll();
    QTest::keyClick(most, Qt::Key_Delete);
    QTest::keyClick(most, Qt::Key_Return);
    CHECK(f.json() == before);
}

TEST_CASE("Joint angles read back from a body are those that it was posed with") {
    Plan plan = personPlan("chair-tilt");
    GivensFixture f(plan);
    for (const char* kind : {"chair-tilt", "bed"}) {
        SupportSpec spec;
        spec.id = "it";
        spec.kind = kind;
        const SupportMade flat = makeSupport(spec);
        REQUIRE(flat.support);
        for (const MovingGroup& g : flat.support->groups) spec.settings[g.id] = g.min + 0.6 * (g.max - g.min);
        const SupportMade support = makeSupport(spec);
        REQUIRE(support.support);
        PersonSpec person;
        person.on = "it";
        int i = 0;
        for (const auto& [joint, range] : publishedRanges()) {
            const double share = 0.2 + 0.6 * ((++i * 7) % 11) / 11.0;
            person.posture[joint] = std::clamp(range.min + share * (range.max - range.min), radians(-80), radians(80));
        }
        const BodyMade made = makeBody(person, *support.support, f.shipped->body);
        REQUIRE(made.body);
        const Posture read = postureOf(*made.body, *support.support);
        CHECK(read.size() == publishedRanges().size());
        for (const auto& [joint, angle] : person.posture) {
            INFO(kind << " " << joint);
            CHECK(read.at(joint) == Approx(angle).margin(1e-9));
        }
    }
}

TEST_CASE("How a person lies is asked on a bed only, a cushion on a seat only") {
    GivensFixture seat(personPlan());
    Shown<PersonPanel> sits(seat);
    CHECK_FALSE(sits.find<ChoiceBox>("person lying"));
    auto* cushion = sits.find<NumberField>("cushion");
    REQUIRE(cushion);
    cushion->setFocus(Qt::TabFocusReason);
    cushion->selectAll();
    QTest::keyClicks(cushion, "80");
    QTest::keyClick(cushion, Qt::Key_Return);
    CHECK(seat.document.plan().person->cushion_m == 0.080);

    GivensFixture bed(personPlan("bed"));
    Shown<PersonPanel> lies(bed);
    CHECK_FALSE(lies.find<NumberField>("cushion"));
    auto* lying = lies.find<ChoiceBox>("person lying");
    REQUIRE(lying);
    lying->setFocus(Qt::TabFocusReason);
    QTest::keyClick(lying, Qt::Key_End);
    CHECK(bed.document.plan().person->lying == PersonSpec::Lying::onRight);
}

TEST_CASE("A plan open to read only can be looked through and not changed") {
    QTemporaryDir folder;
    GivensFixture f(personPlan());
    const QString path = folder.filePath("p.hither");
    REQUIRE(f.document.saveAs(path).isEmpty());
    REQUIRE(f.document.open(path, Document::Access::readOnly).how == Document::Opened::How::opened);
    Shown<PersonPanel> shown(f);
    REQUIRE(f.document.readOnly());
    open(shown, "Right arm");
    CHECK(shown.find<SliderField>("posture elbow_flexion_right")->isVisible());
    CHECK_FALSE(shown.find<HeldSlider>("posture slider elbow_flexion_right")->isEnabled());
    for (auto* field : shown.panel->findChildren<QLineEdit*>()) {
        INFO(field->objectName().toStdString());
        CHECK_FALSE(field->isEnabled());
    }
    for (auto* box : shown.panel->findChildren<ChoiceBox*>()) CHECK_FALSE(box->isEnabled());
    CHECK_FALSE(shown.find<QAbstractButton>("remove person")->isEnabled());
    CHECK(shown.find<QAbstractButton>("next")->isEnabled());
}

TEST_CASE("Every control of the person form has a name and a place in the order of tabs") {
    for (const char* kind : {"chair-manual", "bed"}) {
        GivensFixture f(personPlan(kind));
        Shown<PersonPanel> shown(f);
        for (const char* words : {"Body dimensions", "Neck", "Right arm", "Left leg", "Left arm: range"}) open(shown, words);
        checkNames(*shown.panel);
        checkTabs(*shown.panel);
    }
}

TEST_CASE("Nothing of the person form is cut off at twice the font size") {
    GivensFixture f(personPlan());
    const QFont usual = QApplication::font();
    QFont twice = usual;
    twice.setPointSizeF(2 * usual.pointSizeF());
    QApplication::setFont(twice);
    {
        Shown<PersonPanel> shown(f, 360);
        for (const char* words : {"Body dimensions", "Neck", "Right arm", "Left leg", "Left arm: range"}) open(shown, words);
        checkRoom(*shown.panel);
        CHECK(shown.panel->width() <= shown.area.viewport()->width());
    }
    QApplication::setFont(usual);
}
