// Body dimensions against the published survey: ANSUR II (2012), NATICK/TR-15/007 (Gordon et al.
// 2014), statistics computed from its public release (US Government work), and against the segment
// proportions of Winter (2009) Fig. 4.1 after Drillis and Contini (1966). All in mm and kg.
#include <catch2/catch.hpp>

#include <string>
#include <vector>

#include "core/situation/body_table.h"

using namespace hither;

namespace {

BodyData data() {
    std::vector<std::string> problems;
    auto read = BodyData::read(std::string(HITHER_SOURCE_DIR) + "/resources/body", problems);
    REQUIRE(read);
    return *read;
}

BodySize sized(BodyTable table, std::optional<double> percentile, const std::map<std::string, double>& typed_mm = {}) {
    BodySpec spec;
    spec.table = table;
    spec.percentile = percentile;
    for (const auto& [name, value] : typed_mm) spec.typed[name] = name == "weightkg" ? value : value / 1000;
    std::vector<std::string> problems;
    const BodySize size = data().size(spec, problems);
    REQUIRE(problems.empty());
    return size;
}

struct Row { const char* name; double meanM, p5M, p95M, meanF, p5F, p95F; };
// Mean, 5th and 95th percentile, men then women.
const std::vector<Row> survey{
    {"stature", 1756.2, 1648.0, 1870.0, 1628.5, 1525.0, 1740.0},
    {"sittingheight", 918.3, 860.0, 977.0, 856.6, 803.0, 912.0},
    {"eyeheightsitting", 804.5, 750.0, 860.0, 747.7, 698.0, 799.0},
    {"acromialheightsitting", 602.8, 552.0, 653.0, 563.2, 515.2, 609.0},
    {"elbowrestheight", 245.0, 197.0, 291.0, 232.4, 189.0, 275.8},
    {"acromionradialelength", 335.2, 307.0, 365.0, 311.2, 283.2, 340.0},
    {"shoulderelbowlength", 363.7, 334.0, 394.0, 334.3, 307.0, 363.0},
    {"radialestylionlength", 267.9, 244.0, 295.0, 241.3, 218.0, 268.0},
    {"handlength", 193.3, 177.0, 210.0, 181.1, 165.0, 199.0},
    {"handbreadth", 88.3, 81.0, 96.0, 78.2, 72.0, 85.0},
    {"biacromialbreadth", 415.7, 384.0, 447.0, 365.3, 335.0, 396.0},
    {"bideltoidbreadth", 510.4, 459.0, 567.0, 450.3, 406.0, 499.0},
    {"hipbreadthsitting", 379.3, 333.0, 431.0, 399.0, 348.0, 456.0},
    {"buttockkneelength", 618.0, 569.0, 669.0, 590.6, 541.0, 646.0},
    {"buttockpopliteallength", 502.9, 459.0, 548.0, 485.1, 441.0, 535.0},
    {"poplitealheight", 429.8, 390.0, 471.0, 388.2, 350.0, 428.0},
    {"kneeheightsitting", 554.2, 509.0, 602.0, 511.3, 469.2, 557.0},
    {"thighclearance", 180.5, 157.0, 207.0, 167.9, 145.0, 191.0},
    {"abdominalextensiondepthsitting", 254.7, 200.0, 320.0, 229.7, 184.0, 285.0},
    {"chestdepth", 253.8, 211.0, 298.0, 247.4, 205.0, 295.8},
    {"chestbreadth", 289.4, 261.0, 320.0, 269.3, 241.0, 302.0},
    {"footlength", 271.2, 250.0, 293.0, 246.3, 226.0, 267.8},
    {"footbreadthhorizontal", 101.9, 94.0, 111.0, 92.7, 85.0, 101.0},
    {"lateralmalleolusheight", 72.9, 64.0, 83.0, 62.7, 54.0, 71.0},
    {"headbreadth", 154.3, 146.0, 163.0, 147.8, 140.0, 156.0},
    {"headlength", 199.5, 188.0, 211.0, 189.8, 178.0, 202.0},
    {"tragiontopofhead", 131.1, 121.0, 141.0, 126.5, 116.0, 137.0},
    {"neckcircumference", 397.6, 360.0, 443.0, 329.8, 302.0, 363.0},
    {"wristcircumference", 175.9, 162.0, 191.0, 154.8, 142.2, 168.0},
    {"forearmcircumferenceflexed", 310.1, 275.0, 347.9, 264.1, 235.0, 296.0},
    {"bicepscircumferenceflexed", 358.1, 303.0, 418.0, 305.6, 259.0, 360.0},
    {"thumbtipreach", 811.9, 742.0, 886.0, 744.0, 674.2, 816.0},
};

}  // namespace

TEST_CASE("survey means, 5th and 95th percentiles are carried for women and men", "[body]") {
    const BodyData all = data();
    for (const auto& row : survey) {
        INFO(row.name);
        const auto& man = all.tables.at(BodyTable::man).statistics.at(row.name);
        const auto& woman = all.tables.at(BodyTable::woman).statistics.at(row.name);
        // The figures are printed to 0.1 mm.
        CHECK(man.mean * 1000 == Approx(row.meanM).margin(0.051));
        CHECK(man.percentiles.at(5) * 1000 == Approx(row.p5M).margin(0.051));
        CHECK(man.percentiles.at(95) * 1000 == Approx(row.p95M).margin(0.051));
        CHECK(woman.mean * 1000 == Approx(row.meanF).margin(0.051));
        CHECK(woman.percentiles.at(5) * 1000 == Approx(row.p5F).margin(0.051));
        CHECK(woman.percentiles.at(95) * 1000 == Approx(row.p95F).margin(0.051));
    }
    CHECK(all.tables.at(BodyTable::man).statistics.at("weightkg").mean == Approx(85.52).margin(0.006));
    CHECK(all.tables.at(BodyTable::woman).statistics.at("weightkg").mean == Approx(67.76).margin(0.006));
}

TEST_CASE("a body of no stated size has the survey's means", "[body]") {
    const BodySize man = sized(BodyTable::man, {}), woman = sized(BodyTable::woman, {});
    for (const auto& row : survey) {
        INFO(row.name);
        CHECK(man.m(row.name) * 1000 == Approx(row.meanM).margin(0.11));  // rounding of the print and of a derived mean
        CHECK(woman.m(row.name) * 1000 == Approx(row.meanF).margin(0.11));
    }
    CHECK(man.m("weightkg") == Approx(85.52).margin(0.006));
    CHECK(man.dimensions.at("sittingheight").from.find("adult soldiers") != std::string::npos);
    CHECK(man.dimensions.at("sittingheight").basis == BasisKind::published);
}

TEST_CASE("5th, 50th and 95th percentile bodies have the survey's stature", "[body]") {
    CHECK(sized(BodyTable::man, 5).m("stature") * 1000 == Approx(1648.0).epsilon(1e-12));
    CHECK(sized(BodyTable::man, 50).m("stature") * 1000 == Approx(1755.0).epsilon(1e-12));
    CHECK(sized(BodyTable::man, 95).m("stature") * 1000 == Approx(1870.0).epsilon(1e-12));
    CHECK(sized(BodyTable::woman, 5).m("stature") * 1000 == Approx(1525.0).epsilon(1e-12));
    CHECK(sized(BodyTable::woman, 50).m("stature") * 1000 == Approx(1626.0).epsilon(1e-12));
    CHECK(sized(BodyTable::woman, 95).m("stature") * 1000 == Approx(1740.0).epsilon(1e-12));
    // Other dimensions of somebody of 95th percentile stature regress toward the mean: each lies
    // between the survey's mean and its own 95th percentile, and likewise below.
    for (const auto table : {BodyTable::man, BodyTable::woman}) {
        const BodySize low = sized(table, 5), high = sized(table, 95);
        const bool man = table == BodyTable::man;
        for (const auto& row : survey) {
            INFO(row.name);
            CHECK(low.m(row.name) * 1000 <= (man ? row.meanM : row.meanF) + 0.11);
            CHECK(low.m(row.name) * 1000 >= (man ? row.p5M : row.p5F) - 0.11);
            CHECK(high.m(row.name) * 1000 >= (man ? row.meanM : row.meanF) - 0.11);
            CHECK(high.m(row.name) * 1000 <= (man ? row.p95M : row.p95F) + 0.11);
        }
    }
    // Between tabulated percentiles: stature is close to normal, so mean + z sd is met within 4 mm
    // (z of 20 % = -0.8416, any table of the normal distribution; sd 68.6 mm, ANSUR II).
    CHECK(sized(BodyTable::man, 20).m("stature") * 1000 == Approx(1756.2 - 0.8416 * 68.6).margin(4));
}

TEST_CASE("a typed stature scales by the survey's regressions", "[body]") {
    // y = a + b stature; the coefficients are printed to 0.01 mm and 1e-5, so to 0.02 mm at 1.8 m.
    const BodySize man = sized(BodyTable::man, {}, {{"stature", 1800}});
    CHECK(man.m("sittingheight") * 1000 == Approx(205.80 + 0.40570 * 1800).margin(0.02));
    CHECK(man.m("eyeheightsitting") * 1000 == Approx(157.98 + 0.36814 * 1800).margin(0.02));
    CHECK(man.m("acromialheightsitting") * 1000 == Approx(78.91 + 0.29831 * 1800).margin(0.02));
    CHECK(man.m("shoulderelbowlength") * 1000 == Approx(-17.19 + 0.21689 * 1800).margin(0.02));
    CHECK(man.m("buttockkneelength") * 1000 == Approx(-9.03 + 0.35701 * 1800).margin(0.02));
    CHECK(man.m("kneeheightsitting") * 1000 == Approx(-83.82 + 0.36327 * 1800).margin(0.02));
    CHECK(man.m("footlength") * 1000 == Approx(30.13 + 0.13725 * 1800).margin(0.02));
    const BodySize woman = sized(BodyTable::woman, {}, {{"stature", 1500}});
    CHECK(woman.m("sittingheight") * 1000 == Approx(215.83 + 0.39349 * 1500).margin(0.02));
    CHECK(woman.m("acromialheightsitting") * 1000 == Approx(118.98 + 0.27282 * 1500).margin(0.02));
    CHECK(woman.m("poplitealheight") * 1000 == Approx(-94.08 + 0.29616 * 1500).margin(0.02));
    CHECK(woman.m("thumbtipreach") * 1000 == Approx(16.38 + 0.44682 * 1500).margin(0.02));
    CHECK(woman.dimensions.at("stature").basis == BasisKind::measured);
    CHECK(woman.dimensions.at("stature").from == "typed");
    CHECK(woman.dimensions.at("thumbtipreach").from == "survey of adult soldiers, scaled by stature");
}

TEST_CASE("stature and mass scale breadths and depths by the survey's regressions", "[body]") {
    // y = a + b stature + c mass; the printed coefficients are good for 0.04 mm here. Some of these
    // come from the covariance, the others from the regression: both agree with the table.
    const BodySize man = sized(BodyTable::man, {}, {{"stature", 1700}, {"weightkg", 100}});
    CHECK(man.m("bideltoidbreadth") * 1000 == Approx(433.46 - 0.06100 * 1700 + 2.1526 * 100).margin(0.04));
    CHECK(man.m("hipbreadthsitting") * 1000 == Approx(261.42 - 0.02716 * 1700 + 1.9359 * 100).margin(0.04));
    CHECK(man.m("thighclearance") * 1000 == Approx(165.93 - 0.04044 * 1700 + 1.0002 * 100).margin(0.04));
    CHECK(man.m("abdominalextensiondepthsitting") * 1000 == Approx(335.30 - 0.17072 * 1700 + 2.5626 * 100).margin(0.04));
    CHECK(man.m("chestdepth") * 1000 == Approx(258.13 - 0.08938 * 1700 + 1.7853 * 100).margin(0.04));
    CHECK(man.m("neckcircumference") * 1000 == Approx(407.76 - 0.08508 * 1700 + 1.6290 * 100).margin(0.04));
    CHECK(man.dimensions.at("neckcircumference").from == "survey of adult soldiers, scaled by stature and mass");
    const BodySize woman = sized(BodyTable::woman, {}, {{"stature", 1650}, {"weightkg", 50}});
    CHECK(woman.m("buttockkneelength") * 1000 == Approx(86.40 + 0.25083 * 1650 + 1.4126 * 50).margin(0.04));
    CHECK(woman.m("elbowrestheight") * 1000 == Approx(178.90 + 0.02092 * 1650 + 0.2870 * 50).margin(0.04));
    CHECK(woman.m("hipbreadthsitting") * 1000 == Approx(305.58 - 0.05240 * 1650 + 2.6375 * 50).margin(0.04));
    CHECK(woman.m("chestdepth") * 1000 == Approx(277.81 - 0.11634 * 1650 + 2.3473 * 50).margin(0.04));
}

TEST_CASE("a child's body follows the published segment proportions", "[body]") {
    const BodySize child = sized(BodyTable::child, {}, {{"stature", 1200}});
    // Winter (2009) Fig. 4.1 after Drillis and Contini (1966), fractions of stature.
    CHECK(child.m("acromionradialelength") * 1000 == Approx(0.186 * 1200));
    CHECK(child.m("radialestylionlength") * 1000 == Approx(0.146 * 1200));
    CHECK(child.m("handlength") * 1000 == Approx(0.108 * 1200));
    CHECK(child.m("sittingheight") * 1000 == Approx(0.520 * 1200));
    CHECK(child.m("eyeheightsitting") * 1000 == Approx((0.936 - (1 - 0.520)) * 1200));
    CHECK(child.m("acromialheightsitting") * 1000 == Approx((0.818 - (1 - 0.520)) * 1200));
    CHECK(child.m("hipbreadthsitting") * 1000 == Approx(0.191 * 1200));
    CHECK(child.m("footlength") * 1000 == Approx(0.152 * 1200));
    CHECK(child.m("footbreadthhorizontal") * 1000 == Approx(0.055 * 1200));
    CHECK(child.m("lateralmalleolusheight") * 1000 == Approx(0.039 * 1200));
    // ANSUR II ratio of means, women and men (the 0.259 of the proportions is wider than surveys find).
    CHECK(child.m("biacromialbreadth") / 1.2 == Approx((0.22435 + 0.23669) / 2).margin(1e-4));
    for (const auto& [name, dimension] : child.dimensions) {
        INFO(name);
        if (name == "stature") continue;
        CHECK(dimension.basis == BasisKind::assumed);
        CHECK(dimension.from.find("segment proportions: a child; check by measuring") == 0);
    }
}
