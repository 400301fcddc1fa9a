#include <catch2/catch.hpp>

#include <functional>
#include <random>

#include "core/catalogue/mating.h"
#include "core/catalogue/reversed.h"

using namespace hither;

namespace {

Port threaded(const std::string& thread, Gender gender, double length_m = 0.008) {
    Port port;
    port.thread = *parseThread(thread).value;
    port.gender = gender;
    port.length = {length_m, {BasisKind::measured, {}}};
    return port;
}

Part adapter(const std::string& id, Port base, Port outlet, std::optional<std::int64_t> cents, bool reversible) {
    Part part;
    part.id = part.name = id;
    part.kind = PartKind::adapter;
    part.bases = {std::move(base)};
    part.outlet = std::move(outlet);
    if (cents) part.price = Money{*cents, "EUR"};
    part.reversible = reversible;
    return part;
}

std::string ids(const std::vector<AdapterStep>& chain) {
    std::string text;
    for (const AdapterStep& step : chain) text += (text.empty() ? "" : " ") + step.part->id + (step.reversed ? "*" : "");
    return text;
}

struct Cost {
    int unpriced = 0;
    std::int64_t cents = 0;
    std::size_t parts = 0;
    auto operator<=>(const Cost&) const = default;
};
Cost costOf(const std::vector<AdapterStep>& chain) {
    Cost cost;
    for (const AdapterStep& step : chain) {
        ++cost.parts;
        if (step.part->price) cost.cents += step.part->price->minor;
        else ++cost.unpriced;
    }
    return cost;
}

/// Whether a chain really joins outlet and next, by turning the parts themselves.
bool joins(const Port& outlet, const std::vector<AdapterStep>& chain, const Part& next) {
    Port end = outlet;
    for (const AdapterStep& step : chain) {
        const Part part = step.reversed ? reversed(*step.part) : *step.part;
        if (!mateWith(end, part).mate.goesTogether()) return false;
        end = *part.outlet;
    }
    return mateWith(end, next).mate.goesTogether();
}

}  // namespace

TEST_CASE("the cheapest adapter chain, worked by hand", "[catalogue][adapters]") {
    Catalogue catalogue;
    catalogue.add(adapter("quarter-to-three-eighths", threaded("1/4-20", Gender::female), threaded("3/8-16", Gender::male), 500, false));
    catalogue.add(adapter("cheap-a", threaded("1/4-20", Gender::female), threaded("M5", Gender::male), 100, false));
    catalogue.add(adapter("cheap-b", threaded("M5", Gender::female), threaded("3/8-16", Gender::male), 150, false));
    catalogue.add(adapter("gift", threaded("1/4-20", Gender::female), threaded("3/8-16", Gender::male), std::nullopt, false));
    Part next;
    next.bases = {threaded("3/8-16", Gender::female, 0.010)};
    const Port outlet = threaded("1/4-20", Gender::male);
    CHECK(ids(cheapestAdapters(outlet, next, catalogue)) == "cheap-a cheap-b");
    CHECK(ids(cheapestAdapters(outlet, next, catalogue, 1)) == "quarter-to-three-eighths");  // no price is dearer than any
    CHECK(cheapestAdapters(outlet, next, catalogue, 0).empty());
    CHECK(cheapestAdapters(threaded("3/8-16", Gender::male), next, catalogue).empty());  // mates already
    CHECK(cheapestAdapters(threaded("M8", Gender::male), next, catalogue).empty());      // nothing known
    Part nothing;
    CHECK(cheapestAdapters(outlet, nothing, catalogue).empty());
}

TEST_CASE("an adapter may be built in the other way round, and parts of other kinds are not used", "[catalogue][adapters]") {
    Catalogue catalogue;
    catalogue.add(adapter("bushing", threaded("3/8-16", Gender::male), threaded("1/4-20", Gender::female), 200, true));
    Part joint = adapter("ball-head", threaded("1/4-20", Gender::female), threaded("3/8-16", Gender::male), 1, false);
    joint.kind = PartKind::joint;
    catalogue.add(joint);
    Part next;
    next.bases = {threaded("3/8-16", Gender::female, 0.010)};
    const auto chain = cheapestAdapters(threaded("1/4-20", Gender::male), next, catalogue);
    REQUIRE(chain.size() == 1);
    CHECK(chain[0].reversed);
    CHECK(chain[0].part->id == "bushing");
    CHECK(joins(threaded("1/4-20", Gender::male), chain, next));
}

TEST_CASE("adapter chains are the cheapest of all there are, on random catalogues", "[catalogue][adapters]") {
    std::mt19937 random(4711);
    const auto whole = [&random](int low, int high) { return std::uniform_int_distribution<int>(low, high)(random); };
    const char* threads[] = {"1/4-20", "3/8-16", "M5"};
    const auto port = [&] {  // now and then a stud is too short or too long for a socket
        const bool male = whole(0, 1) == 1;
        return threaded(threads[whole(0, 2)], male ? Gender::male : Gender::female, (male ? whole(3, 7) : whole(6, 9)) / 1000.0);
    };
    int found = 0, long_ones = 0, turned = 0, unpriced = 0;
    for (int round = 0; round < 1500; ++round) {
        Catalogue catalogue;
        for (int i = 0, n = whole(1, 9); i < n; ++i) {
            Part part = adapter("a" + std::to_string(whole(0, 30)), port(), port(), whole(0, 4) ? std::optional<std::int64_t>(100 * whole(1, 5)) : std::nullopt, whole(0, 1) == 1);
            if (!part.reversible && whole(0, 2) == 0) part.bases.push_back(port());
            catalogue.add(part);
        }
        Part next;
        next.bases = {port()};
        const Port outlet = port();
        const int atMost = whole(0, 3);

        // Every chain there is, one after another.
        std::optional<Cost> best;
        std::vector<AdapterStep> chain;
        const std::function<void()> extend = [&] {
            if (joins(outlet, chain, next) && (!best || costOf(chain) < *best)) best = costOf(chain);
            if (static_cast<int>(chain.size()) == atMost) return;
            for (const auto& part : catalogue.parts())
                for (const bool turn : {false, true}) {
                    if (turn && !part->reversible) continue;
                    chain.push_back({part.get(), turn});
                    extend();
                    chain.pop_back();
                }
        };
        extend();

        const auto answer = cheapestAdapters(outlet, next, catalogue, atMost);
        if (!best || best->parts == 0) {
            CHECK(answer.empty());
            continue;
        }
        REQUIRE_FALSE(answer.empty());
        CHECK(joins(outlet, answer, next));
        CHECK(costOf(answer) == *best);
        CHECK(ids(answer) == ids(cheapestAdapters(outlet, next, catalogue, atMost)));
        ++found;
        long_ones += answer.size() > 1;
        unpriced += best->unpriced > 0;
        for (const AdapterStep& step : answer) turned += step.reversed;
    }
    CHECK(found > 50);  // the comparison above had something to compare
    CHECK(long_ones > 10);
    CHECK(turned > 10);
    CHECK(unpriced > 5);
}

TEST_CASE("equal costs are settled by id, whatever the order in the catalogue", "[catalogue][adapters]") {
    for (const bool other : {false, true}) {
        Catalogue catalogue;
        for (const char* id : {other ? "b" : "a", other ? "a" : "b"})
            catalogue.add(adapter(id, threaded("1/4-20", Gender::female), threaded("3/8-16", Gender::male), 500, false));
        Part next;
        next.bases = {threaded("3/8-16", Gender::female, 0.010)};
        CHECK(ids(cheapestAdapters(threaded("1/4-20", Gender::male), next, catalogue)) == "a");
    }
}
