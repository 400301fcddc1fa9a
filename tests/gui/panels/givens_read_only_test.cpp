#include <catch2/catch.hpp>

#include <QAbstractButton>
#include <QListWidget>
#include <QTemporaryDir>

#include "app/panels/site_panel.h"
#include "app/panels/support_panel.h"
#include "app/widgets/choice_box.h"
#include "app/widgets/text_field.h"
#include "givens_fixture.h"

using namespace hither;

namespace {

/// A plan with two supports and a typed site, saved, and opened to read only.
struct ReadOnly {
    QTemporaryDir folder;
    GivensFixture f;
    ReadOnly() {
        Plan plan = GivensFixture::chairPlan();
        SupportSpec table;
        table.id = "table";
        table.kind = "table";
        table.at_m = Vec3(0.6, 0, 0);
        plan.supports.push_back(table);
        SiteSpec site;
        site.id = "site";
        site.name = "Point";
        site.point = Vec3(0.3, 0, 0.8);
        plan.sites.push_back(site);
        f.document.startWith(plan, true);
        const QString path = folder.filePath("p.hither");
        const QString why = f.document.saveAs(path);
        if (!why.isEmpty()) throw std::runtime_error(why.toStdString());
        const Document::Opened opened = f.document.open(path, Document::Access::readOnly);
        if (opened.how != Document::Opened::How::opened) throw std::runtime_error(opened.words.toStdString());
    }
};

template <class Panel>
void checkOnlyLooking(const Panel& panel) {
    int fields = 0;
    for (auto* field : panel.template findChildren<NumberField*>()) { CHECK_FALSE(field->isEnabled()); ++fields; }
    for (auto* field : panel.template findChildren<TextField*>()) CHECK_FALSE(field->isEnabled());
    for (auto* box : panel.template findChildren<ChoiceBox*>()) CHECK_FALSE(box->isEnabled());
    for (auto* button : panel.template findChildren<QAbstractButton*>()) {
        const QString name = button->objectName();
        const bool looks = name == "next" || name.startsWith("fold ") || name.startsWith("to ") || name.startsWith("qt_") || name.isEmpty();
        CAPTURE(name.toStdString());
        CHECK(button->isEnabled() == looks);
    }
    CHECK(fields > 3);
}

}  // namespace

TEST_CASE("In a plan opened to read only the forms are for looking") {
    ReadOnly r;
    REQUIRE(r.f.document.readOnly());
    Shown<SupportPanel> supports(r.f);
    checkOnlyLooking(*supports.panel);
    auto* list = supports.find<QListWidget>("supports");
    REQUIRE(list);
    CHECK(list->isEnabled());
    list->setCurrentRow(1);
    supports.settle();
    CHECK(supports.find<NumberField>("dimension table_width"));
    CHECK_FALSE(r.f.document.modified());
    Shown<SitePanel> sites(r.f);
    checkOnlyLooking(*sites.panel);
}
