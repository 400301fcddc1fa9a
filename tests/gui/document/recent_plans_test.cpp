#include <QDir>
#include <QFile>
#include <QTemporaryDir>

#include <catch2/catch.hpp>

#include "app/document/recent_plans.h"

using namespace hither;

TEST_CASE("The plans of late stand newest first, each once, twelve at most, and missing ones are known") {
    QTemporaryDir folder;
    const RecentPlans recent(folder.filePath("data/recent.json"));
    CHECK(recent.read().empty());
    for (int i = 0; i < 20; ++i) CHECK(recent.add(folder.filePath(QString("%1.hither").arg(i)), QString("Plan “%1”").arg(i), "2026-05-01T08:00:00Z") == QString());
    CHECK(recent.add(folder.filePath("15.hither"), "Again") == QString());
    std::vector<RecentPlan> plans = recent.read();
    REQUIRE(plans.size() == RecentPlans::most);
    CHECK(plans[0].title == "Again");
    CHECK(plans[0].path == folder.filePath("15.hither"));
    CHECK(plans[1].title == "Plan “19”");
    CHECK(plans[1].opened_utc == "2026-05-01T08:00:00Z");
    CHECK(plans.back().title == "Plan “8”");
    CHECK_FALSE(plans[0].there);
    QFile file(folder.filePath("15.hither"));
    REQUIRE(file.open(QIODevice::WriteOnly));
    CHECK(recent.read()[0].there);
    CHECK(recent.remove(folder.filePath("15.hither")) == QString());
    CHECK(recent.read().size() == 11);
}

TEST_CASE("A list that cannot be read or written is no list, and it is said") {
    QTemporaryDir folder;
    QFile file(folder.filePath("recent.json"));
    REQUIRE(file.open(QIODevice::WriteOnly));
    file.write("{\"plans\": [3, {\"path\": 4}, {\"path\": \"/x.hither\"}]");
    file.close();
    CHECK(RecentPlans(file.fileName()).read().empty());
    CHECK(RecentPlans(QString()).read().empty());
    CHECK(RecentPlans(QString()).add("/x.hither", "X") == QString());
    CHECK(RecentPlans(file.fileName() + "/below/recent.json").add("/x.hither", "X") != QString());
}
