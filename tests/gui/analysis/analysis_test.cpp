#include <atomic>
#include <condition_variable>
#include <mutex>
#include <stdexcept>
#include <vector>

#include "app/analysis/analysis.h"
#include "core/plan/edits/joints.h"
#include "core/plan/edits/options.h"
#include "tests/gui/analysis/fixture.h"

using namespace hither;
using namespace hither::test;

namespace {

/// The plan with its mount a little further along what holds it.
Edited moved(const Plan& plan, double by) {
    Plan other = plan;
    other.options[0].mounts[0].place.along_m += by;
    return {other, {}};
}

/// Checks that wait until they are let go, so that a test decides what overtakes what.
struct Gate {
    std::mutex mutex;
    std::condition_variable changed;
    int entered = 0, allowed = 0;
    std::atomic<int> cancelled{0};
    std::vector<Finding> operator()(const Setup&, const CheckContext& context) {
        std::unique_lock lock(mutex);
        const int mine = ++entered;
        changed.notify_all();
        while (allowed < mine) {
            if (context.cancelled()) { ++cancelled; return {}; }
            changed.wait_for(lock, std::chrono::milliseconds(1));
        }
        return {};
    }
    void waitForEntry(int n) {
        std::unique_lock lock(mutex);
        changed.wait(lock, [&] { return entered >= n; });
    }
    void allow(int n) {
        std::lock_guard guard(mutex);
        allowed = n;
        changed.notify_all();
    }
};

}  // namespace

TEST_CASE("While somebody drags, results follow, never go back, and end with the last") {
    Opened opened("two_switches_on_tray");
    Analysis analysis(opened.document, opened.view, shipped());
    std::vector<quint64> seen;
    QObject::connect(&analysis, &Analysis::analysed, &analysis, [&] { if (analysis.latest()) seen.push_back(analysis.latest()->revision); });
    opened.document.beginGesture("Slide the grip");
    for (int i = 1; i <= 60; ++i) {
        REQUIRE(opened.document.preview(moved(opened.document.gestureStart(), 0.0005 * i)));
        if (i % 3 == 0) QTest::qWait(4);
    }
    opened.document.endGesture();
    REQUIRE(until([&] { return analysis.upToDate(); }));
    CHECK(std::is_sorted(seen.begin(), seen.end()));
    CHECK(seen.size() >= 2);
    CHECK(analysis.latest()->revision == opened.document.revision());
    CHECK(analysis.latest()->plan == opened.document.shared());

    // The same as judged here.
    const SetupMade made = makeSetup(opened.document.plan(), 0, shipped()->body);
    REQUIRE(made.setup);
    const std::vector<Finding> own = checkAll(*made.setup, contextFor(opened.document.plan(), *shipped()));
    REQUIRE(analysis.latest()->findings.size() == own.size());
    for (std::size_t i = 0; i < own.size(); ++i) {
        CHECK(analysis.latest()->findings[i].id == own[i].id);
        CHECK(analysis.latest()->findings[i].verdict == own[i].verdict);
    }
    CHECK(analysis.finding(QString::fromStdString(own.front().id)) != nullptr);
    CHECK(analysis.finding("nothing") == nullptr);
}

TEST_CASE("An overtaken revision is finished and shown when it is newer than what is shown, those between are left out") {
    Opened opened("elbow_switch_on_chair");
    Gate gate;
    Analysis analysis(opened.document, opened.view, shipped(), nullptr, std::ref(gate));
    const quint64 first = opened.document.revision();
    gate.waitForEntry(1);
    for (int i = 1; i <= 5; ++i) REQUIRE(opened.document.apply("Slide the grip", moved(opened.document.plan(), 0.001)));
    gate.allow(1);
    REQUIRE(until([&] { return analysis.latest() != nullptr; }));
    CHECK(analysis.latest()->revision == first);
    CHECK_FALSE(analysis.upToDate());
    gate.allow(100);
    REQUIRE(until([&] { return analysis.upToDate(); }));
    CHECK(gate.entered == 2);  // the first and the last
    CHECK(gate.cancelled == 0);
}

TEST_CASE("Results of another option or another plan are never shown") {
    Opened opened("two_options_at_one_site");
    const std::string second = opened.document.plan().options.at(1).id;
    Gate gate;
    Analysis analysis(opened.document, opened.view, shipped(), nullptr, std::ref(gate));
    QObject::connect(&analysis, &Analysis::analysed, &analysis, [&] {
        if (!analysis.latest()) return;
        CHECK(analysis.latest()->option == opened.view.option());
        CHECK(analysis.latest()->plan->id == opened.document.plan().id);
    });
    gate.waitForEntry(1);
    opened.view.setOption(second);  // the first is given up
    gate.waitForEntry(2);
    CHECK(gate.cancelled == 1);
    opened.open("elbow_switch_on_chair");
    gate.waitForEntry(3);
    CHECK(gate.cancelled == 2);
    gate.allow(100);
    REQUIRE(until([&] { return analysis.upToDate(); }));
    // Until the new plan is judged there is nothing, not the old plan's.
    opened.open("head_switch_on_bed");
    CHECK(analysis.latest() == nullptr);
    REQUIRE(until([&] { return analysis.upToDate(); }));
    Plan empty = opened.document.plan();
    empty.options.clear();
    opened.document.startWith(empty, true);
    CHECK(analysis.upToDate());
    CHECK(analysis.latest()->setup == nullptr);
    CHECK(analysis.situation() != nullptr);
}

TEST_CASE("An error while judging is a line, and the next revision is judged again") {
    Opened opened("elbow_switch_on_chair");
    std::atomic<bool> broken{true};
    Analysis analysis(opened.document, opened.view, shipped(), nullptr, [&](const Setup& setup, const CheckContext& context) {
        if (broken) throw std::runtime_error("out of luck");
        return checkAll(setup, context);
    });
    REQUIRE(until([&] { return analysis.upToDate(); }));
    REQUIRE(analysis.latest()->problems.size() == 1);
    CHECK(analysis.latest()->problems[0].what.find("out of luck") != std::string::npos);
    CHECK(analysis.latest()->findings.empty());
    CHECK(analysis.latest()->setup == nullptr);
    broken = false;
    REQUIRE(opened.document.apply("Slide the grip", moved(opened.document.plan(), 0.001)));
    REQUIRE(until([&] { return analysis.upToDate(); }));
    CHECK(analysis.latest()->problems.empty());
    CHECK_FALSE(analysis.latest()->findings.empty());
}

TEST_CASE("An option that cannot be set up says why, and the givens are there all the same") {
    Opened opened("elbow_switch_on_chair");
    Analysis analysis(opened.document, opened.view, shipped());
    Plan broken = opened.document.plan();
    broken.options[0].mounts[0].attachment = "nowhere";
    opened.document.startWith(broken, true);
    CHECK(analysis.setup() == nullptr);
    CHECK(analysis.situation() != nullptr);
    CHECK_FALSE(analysis.problems().empty());
    REQUIRE(until([&] { return analysis.upToDate(); }));
    CHECK_FALSE(analysis.latest()->problems.empty());
}
