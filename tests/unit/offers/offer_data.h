#pragma once
#include <algorithm>

#include <catch2/catch.hpp>

#include "core/offers/offer.h"
#include "core/offers/offer_edits.h"
#include "core/storage/plan_json.h"

namespace hither {

/// The shipped cupboard, read once.
inline const Catalogue& shippedParts() {
    static const Catalogue all = [] {
        Catalogue c;
        REQUIRE(c.addFolder(std::string(HITHER_SOURCE_DIR) + "/resources/parts").empty());
        return c;
    }();
    return all;
}
inline const BodyData& shippedBody() {
    static const BodyData body = [] {
        std::vector<std::string> problems;
        return *BodyData::read(std::string(HITHER_SOURCE_DIR) + "/resources/body", problems);
    }();
    return body;
}
inline const Part& shippedPart(const std::string& id) {
    const Part* part = shippedParts().find(id);
    INFO(id);
    REQUIRE(part);
    return *part;
}
inline Plan samplePlan(const std::string& name) {
    PlanRead read = planFromJsonFile(std::string(HITHER_SOURCE_DIR) + "/sample_plans/" + name + ".json");
    REQUIRE(read.plan);
    return *read.plan;
}
inline const Offer& offerOf(const std::vector<Offer>& offers, const std::string& id) {
    const auto found = std::find_if(offers.begin(), offers.end(), [&](const Offer& o) { return o.part->id == id; });
    INFO(id);
    REQUIRE(found != offers.end());
    return *found;
}
inline Attachment roundRail(double outside_m) {
    Attachment rail;
    rail.id = "rail";
    rail.b = Vec3(0.4, 0, 0);
    rail.outside_m = {outside_m, {BasisKind::measured, "test"}};
    return rail;
}

}  // namespace hither
