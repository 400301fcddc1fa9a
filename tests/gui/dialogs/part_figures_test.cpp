#include <fstream>
#include <set>

#include <QDialogButtonBox>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QTemporaryDir>

#include <nlohmann/json.hpp>

#include "app/dialogs/extra_item_dialog.h"
#include "app/dialogs/own_part_dialog.h"
#include "app/dialogs/own_part_list.h"
#include "app/dialogs/own_part_store.h"
#include "app/dialogs/part_figures_dialog.h"
#include "app/dialogs/part_figures_who.h"
#include "app/dialogs/part_figures_words.h"
#include "app/widgets/number_field.h"
#include "core/plan/edits/part_figures.h"
#include "tests/gui/panels/finding_fixture.h"

using namespace hither;
using namespace hither::test;

namespace {

NumberField* fieldOf(const QWidget& dialog, const QString& name) {
    for (NumberField* f : dialog.findChildren<NumberField*>()) if (f->accessibleName() == name) return f;
    return nullptr;
}
QLineEdit* initialsOf(const QWidget& dialog) {
    for (QLineEdit* e : dialog.findChildren<QLineEdit*>()) if (e->accessibleName().contains("initials")) return e;
    return nullptr;
}
void type(QLineEdit* field, const QString& text) {
    field->setFocus();
    field->selectAll();
    QTest::keyClicks(field, text);
    QTest::keyClick(field, Qt::Key_Return);
}
const Figure& figureAt(const std::vector<NamedFigure>& all, const std::string& place) {
    for (const NamedFigure& f : all) if (f.place == place) return f.figure;
    FAIL("no figure " + place);
    return all.front().figure;
}
/// The folder of own parts for the time of a test.
struct OwnFolder {
    QTemporaryDir folder;
    OwnFolder() {
        shipped();   // reads its data without any own parts
        qputenv("HITHER_PARTS", folder.path().toUtf8());
    }
    ~OwnFolder() { qputenv("HITHER_PARTS", "/nonexistent"); }
};

}  // namespace

TEST_CASE("Every figure of every shipped part has a plain name of its own and says how to measure it") {
    for (const auto& part : shipped()->catalogue.parts()) {
        std::set<QString> names;
        for (const NamedFigure& f : figuresOf(*part)) {
            const FigureWords words = figureWords(*part, f.place);
            INFO(part->id << " " << f.place << " " << words.name.toStdString());
            CHECK(words.name.toStdString() != f.place);
            CHECK_FALSE(words.measure.isEmpty());
            CHECK(names.insert(words.name).second);
        }
    }
}

TEST_CASE("A figure typed becomes measured by whom and when, in one step, and the finding's basis follows") {
    Desk desk(samplePlan("elbow_switch_on_chair"));
    const Finding* load = nullptr;
    for (const Finding& f : desk.analysis.latest()->findings) if (f.key == "fit.rated_load.carries" && f.basis == BasisKind::assumed) load = &f;
    REQUIRE(load);
    const std::string finding = load->id, id = load->subjects[0].piece;
    std::vector<std::pair<std::string, std::string>> places{{id, "rated_load"}};
    const Mount& mount = desk.document.plan().options[0].mounts[0];
    for (std::size_t i = static_cast<std::size_t>(load->subjects[0].part) + 1; i < mount.parts.size(); ++i)
        for (const NamedFigure& f : figuresOf(*desk.document.plan().part(mount.parts[i].part)))
            if (f.place.find("/mass") != std::string::npos) places.push_back({mount.parts[i].part, f.place});
    std::size_t steps = 0;
    for (const auto& [part, place] : places) {
        PartFiguresDialog dialog(desk.context, part, place);
        dialog.show();
        if (steps == 0) initialsOf(dialog)->clear();
        NumberField* field = fieldOf(dialog, figureWords(*desk.document.plan().part(part), place).name);
        REQUIRE(field);
        type(field, "2000 g");
        if (steps == 0) {
            CHECK_FALSE(desk.document.canUndo());   // waits for the initials
            type(initialsOf(dialog), "KL");
        }
        const Figure figure = figureAt(figuresOf(*desk.document.plan().part(part)), place);
        CHECK(*figure.value == Approx(2.0));
        CHECK(figure.basis == Basis{BasisKind::measured, "KL, " + QDate::currentDate().toString(Qt::ISODate).toStdString()});
        ++steps;
    }
    desk.settle();
    const Finding* now = desk.analysis.finding(QString::fromStdString(finding));
    REQUIRE(now);
    CHECK(now->basis == BasisKind::measured);
    for (std::size_t i = 0; i < steps; ++i) desk.document.undo();
    CHECK_FALSE(desk.document.canUndo());
}

TEST_CASE("The dialog keeps what is being typed, follows undo, and closes with its part") {
    Desk desk(samplePlan("elbow_switch_on_chair"));
    const std::string id = desk.document.plan().options[0].mounts[0].parts.back().part;
    PartFiguresDialog dialog(desk.context, id, "face/force");
    dialog.show();
    NumberField* force = fieldOf(dialog, figureWords(*desk.document.plan().part(id), "face/force").name);
    REQUIRE(force);
    initialsOf(dialog)->setText("KL");
    const std::optional<double> before = force->value();
    type(force, "1.75 N");
    CHECK(*figureAt(figuresOf(*desk.document.plan().part(id)), "face/force").value == Approx(1.75));
    desk.document.undo();
    CHECK(force->value() == before);
    type(force, "-1 N");
    CHECK(figureAt(figuresOf(*desk.document.plan().part(id)), "face/force").value == before);
    desk.document.startWith(Plan{}, false);
    CHECK_FALSE(dialog.isVisible());
}

TEST_CASE("A copy as one's own part is written, read back, never over another, changed and deleted") {
    OwnFolder own;
    const Part& from = *shipped()->catalogue.parts().front();
    QSignalSpy changed(&OwnPartsNotice::get(), &OwnPartsNotice::ownPartsChanged);
    OwnPartDialog dialog(from, {}, shipped()->catalogue, UnitSystem::metric);
    dialog.show();
    QLineEdit *name = nullptr, *id = nullptr;
    for (QLineEdit* e : dialog.findChildren<QLineEdit*>()) {
        if (e->accessibleName() == "Name") name = e;
        if (e->accessibleName().startsWith("Short name")) id = e;
    }
    REQUIRE(name);
    REQUIRE(id);
    name->setFocus();
    name->selectAll();
    QTest::keyClicks(name, "My clamp, blue");
    CHECK(id->text() == "my-clamp-blue");
    initialsOf(dialog)->setText("KL");
    const std::string place = figuresOf(from).front().place;
    NumberField* field = fieldOf(dialog, figureWords(from, place).name);
    type(field, field->accessibleName().contains("Mass") ? "777 g" : "0.777");
    QPushButton* save = dialog.findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Save);
    // An id of the catalogue, and one that is none, are refused.
    for (const QString& bad : {QString::fromStdString(shipped()->catalogue.parts().back()->id), QString("Not An Id")}) {
        id->setText(bad);
        save->click();
        CHECK(dialog.isVisible());
        CHECK(readOwnParts().parts.empty());
    }
    id->setText("my-clamp-blue");
    save->click();
    CHECK_FALSE(dialog.isVisible());
    CHECK(changed.count() == 1);
    OwnParts read = readOwnParts();
    REQUIRE(read.parts.size() == 1);
    CHECK(read.unread.empty());
    CHECK(read.parts[0] == dialog.part());
    CHECK(read.parts[0].name == "My clamp, blue");
    CHECK(figureAt(figuresOf(read.parts[0]), place).basis.kind == BasisKind::measured);
    Catalogue catalogue;
    CHECK(catalogue.addFolder(own.folder.path().toStdString()).empty());
    CHECK(catalogue.find("my-clamp-blue"));

    Part second = read.parts[0];
    CHECK_FALSE(saveOwnPart(second, {}, shipped()->catalogue).isEmpty());       // there already
    second.name = "Renamed";
    CHECK(saveOwnPart(second, second.id, shipped()->catalogue).isEmpty());
    CHECK(readOwnParts().parts[0].name == "Renamed");
    second.id = "my-clamp-red";
    CHECK(saveOwnPart(second, "my-clamp-blue", shipped()->catalogue).isEmpty());
    REQUIRE(readOwnParts().parts.size() == 1);
    CHECK(readOwnParts().parts[0].id == "my-clamp-red");
    CHECK(removeOwnPart("my-clamp-red").isEmpty());
    CHECK(readOwnParts().parts.empty());
    CHECK_FALSE(removeOwnPart("my-clamp-red").isEmpty());
}

TEST_CASE("A part that stands in a list with others is changed and deleted alone, and a bad file is named") {
    OwnFolder own;
    Part a = *shipped()->catalogue.parts()[0], b = *shipped()->catalogue.parts()[1];
    a.id = "list-a";
    b.id = "list-b";
    const std::string folder = own.folder.path().toStdString();
    std::ofstream(folder + "/both.json") << nlohmann::json::array({writePart(a), writePart(b)}).dump();
    std::ofstream(folder + "/broken.json") << "{ no part";
    a.name = "Changed";
    REQUIRE(saveOwnPart(a, "list-a", shipped()->catalogue).isEmpty());
    OwnParts read = readOwnParts();
    REQUIRE(read.parts.size() == 2);
    CHECK(read.parts[0] == a);
    CHECK(read.parts[1] == b);
    REQUIRE(read.unread.size() == 1);
    CHECK(read.unread[0].find("broken.json") != std::string::npos);
    Desk desk(samplePlan("elbow_switch_on_chair"));
    OwnPartList list(desk.context);
    list.show();
    CHECK(list.findChild<QListWidget*>()->count() == 2);
    list.remove("list-a");
    CHECK(list.findChild<QListWidget*>()->count() == 1);
    REQUIRE(readOwnParts().parts.size() == 1);
    CHECK(readOwnParts().parts[0] == b);
}

TEST_CASE("An extra item is typed with count and price, and what cannot be is said") {
    ExtraItemDialog dialog({"item", "", 1, std::nullopt, ""}, "EUR");
    dialog.show();
    REQUIRE(QTest::qWaitForWindowActive(&dialog));
    QPushButton* ok = dialog.findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok);
    ok->click();
    CHECK(dialog.isVisible());
    QLineEdit *name = nullptr, *price = nullptr;
    for (QLineEdit* e : dialog.findChildren<QLineEdit*>()) {
        if (e->accessibleName().startsWith("What")) name = e;
        if (e->accessibleName().startsWith("Price")) price = e;
    }
    QTest::keyClicks(name, "Batteries");
    QTest::keyClicks(price, "cheap");
    ok->click();
    CHECK(dialog.isVisible());
    price->clear();
    QTest::keyClicks(price, "3,50");
    NumberField* count = dialog.findChild<NumberField*>();
    count->setFocus();
    count->selectAll();
    QTest::keyClicks(count, "4");
    QTest::keyClick(count, Qt::Key_Tab);
    ok->click();
    CHECK_FALSE(dialog.isVisible());
    CHECK(dialog.item() == ExtraItem{"item", "Batteries", 4, Money{350, "EUR"}, ""});
}
