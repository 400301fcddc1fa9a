#include "app/analysis/ways_finder.h"

#include "tests/gui/analysis/fixture.h"

using namespace hither;
using namespace hither::test;

namespace {

std::shared_ptr<const Setup> setupOf(const Document& document) {
    SetupMade made = makeSetup(document.plan(), 0, shipped()->body);
    REQUIRE(made.setup);
    return std::make_shared<const Setup>(std::move(*made.setup));
}

}  // namespace

TEST_CASE("The finder gives the ways that the search gives") {
    Opened opened("elbow_switch_on_chair");
    const auto setup = setupOf(opened.document);
    const CheckLimits limits = opened.document.plan().limits;
    const std::string mount = setup->mounts[0].mount.id;
    WaysFinder finder(shipped());
    int found = 0, running = 0;
    std::shared_ptr<const Ways> ways;
    QObject::connect(&finder, &WaysFinder::found, &finder, [&](const std::string& of, std::shared_ptr<const Ways> got) {
        CHECK(of == mount);
        CHECK_FALSE(finder.running());
        ways = got;
        ++found;
    });
    QObject::connect(&finder, &WaysFinder::runningChanged, &finder, [&] { ++running; });
    finder.find(setup, mount, limits);
    REQUIRE(until([&] { return found > 0; }));
    const Ways own = findWays(*setup, 0, contextFor(opened.document.plan(), *shipped()));
    REQUIRE(ways);
    CHECK(ways->left == own.left);
    CHECK(running == 2);

    // Dropped searches say nothing; the last one does.
    for (int i = 0; i < 5; ++i) finder.find(setup, mount, limits);
    REQUIRE(until([&] { return !finder.running(); }));
    CHECK(found == 2);
    finder.find(setup, mount, limits);
    finder.cancel();
    CHECK_FALSE(finder.running());
    QTest::qWait(50);
    CHECK(found == 2);
    finder.find(setup, "nobody", limits);
    CHECK_FALSE(finder.running());
    finder.find(setup, mount, limits);  // ends with the finder
}
