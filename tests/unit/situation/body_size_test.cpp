#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <limits>

#include <Eigen/Dense>

#include "core/situation/body_table.h"

using namespace hither;

namespace {

const BodyData& data() {
    static const BodyData read = [] {
        std::vector<std::string> problems;
        auto found = BodyData::read(std::string(HITHER_SOURCE_DIR) + "/resources/body", problems);
        REQUIRE(found);
        return *found;
    }();
    return read;
}

/// Conditional mean another way: with P the inverse of the whole covariance, m_u = mu_u -
/// P_uu^-1 P_ug (x_g - mu_g) (precision-matrix form; no Schur complement, no LDLT).
std::map<std::string, double> byPrecision(const BodyData::Table& table, const std::map<std::string, double>& given) {
    const auto n = static_cast<Eigen::Index>(table.covarianceNames.size());
    Eigen::MatrixXd C(n, n);
    Eigen::VectorXd mean(n);
    std::vector<int> g, u;
    for (Eigen::Index i = 0; i < n; ++i) {
        const auto row = static_cast<std::size_t>(i);
        mean[i] = table.covarianceMeans[row];
        for (Eigen::Index j = 0; j < n; ++j) C(i, j) = table.covariance[row][static_cast<std::size_t>(j)];
        (given.count(table.covarianceNames[row]) ? g : u).push_back(static_cast<int>(i));
    }
    const Eigen::MatrixXd P = C.fullPivLu().inverse();
    const Eigen::MatrixXd Puu = P(u, u), Pug = P(u, g);
    Eigen::VectorXd d(static_cast<Eigen::Index>(g.size()));
    for (Eigen::Index b = 0; b < d.size(); ++b) {
        const int i = g[static_cast<std::size_t>(b)];
        d[b] = given.at(table.covarianceNames[static_cast<std::size_t>(i)]) - mean[i];
    }
    const Eigen::VectorXd m = -Puu.fullPivLu().solve(Pug * d);
    std::map<std::string, double> result;
    for (Eigen::Index a = 0; a < m.size(); ++a) {
        const int i = u[static_cast<std::size_t>(a)];
        result[table.covarianceNames[static_cast<std::size_t>(i)]] = mean[i] + m[a];
    }
    return result;
}

}  // namespace

TEST_CASE("typed dimensions are kept and the rest is their conditional mean", "[body]") {
    const std::vector<std::map<std::string, double>> cases{
        {{"stature", 1.71}, {"sittingheight", 0.84}},
        {{"sittingheight", 0.84}, {"kneeheightsitting", 0.53}, {"weightkg", 71}},
        {{"elbowrestheight", 0.21}},
        {{"stature", 1.66}, {"weightkg", 80}, {"acromialheightsitting", 0.58}, {"buttockkneelength", 0.61}, {"handlength", 0.18}},
    };
    for (const auto kind : {BodyTable::woman, BodyTable::man})
        for (const auto& typed : cases) {
            BodySpec spec;
            spec.table = kind;
            spec.typed = typed;
            std::vector<std::string> problems;
            const BodySize made = data().size(spec, problems);
            CHECK(problems.empty());
            for (const auto& [name, value] : typed) {
                CHECK(made.m(name) == value);
                CHECK(made.dimensions.at(name).basis == BasisKind::measured);
                CHECK(made.dimensions.at(name).from == "typed");
            }
            for (const auto& [name, value] : byPrecision(data().tables.at(kind), typed)) {
                INFO(name);
                CHECK(made.m(name) == Approx(value).margin(1e-7).epsilon(1e-7));
                CHECK(made.dimensions.at(name).from == "estimated from the covariance of the survey of adult soldiers");
            }
        }
}

TEST_CASE("the sitting acromial height's covariance agrees with the survey's derived measure", "[body]") {
    // ANSUR II, derived measure: sd 30.8 (men), 27.8 (women); slope on stature 0.29831, 0.27282.
    struct Expected { BodyTable kind; double sd_mm, slope; };
    for (const Expected& expected : {Expected{BodyTable::man, 30.8, 0.29831}, Expected{BodyTable::woman, 27.8, 0.27282}}) {
        const auto& table = data().tables.at(expected.kind);
        const auto& names = table.covarianceNames;
        const auto at = static_cast<std::size_t>(std::find(names.begin(), names.end(), "acromialheightsitting") - names.begin());
        REQUIRE(at < names.size());
        REQUIRE(names.front() == "stature");
        CHECK(std::sqrt(table.covariance[at][at]) * 1000 == Approx(expected.sd_mm).margin(0.06));
        CHECK(table.covariance[at][0] / table.covariance[0][0] == Approx(expected.slope).margin(1e-5));
    }
}

TEST_CASE("with the whole covariance set typed at its means the rest is at its means", "[body]") {
    BodySpec spec;
    spec.table = BodyTable::woman;
    const auto& table = data().tables.at(BodyTable::woman);
    for (std::size_t i = 0; i < table.covarianceNames.size(); ++i) spec.typed[table.covarianceNames[i]] = table.covarianceMeans[i];
    std::vector<std::string> problems;
    const BodySize made = data().size(spec, problems);
    CHECK(problems.empty());
    for (const auto& [name, value] : spec.typed) CHECK(made.m(name) == value);
    for (const auto& [name, dimension] : made.dimensions) {
        INFO(name);
        CHECK(dimension.value == Approx(table.statistics.at(name).mean).margin(0.0003));  // rounding of coefficients
    }
}

TEST_CASE("a given that repeats another does not blow up the rest", "[body]") {
    // A made-up table in which sitting height is an exact copy of stature and mass follows with slope 0.5.
    BodyData made = data();
    auto& table = made.tables[BodyTable::man];
    table.covarianceNames = {"stature", "sittingheight", "weightkg"};
    table.covarianceMeans = {1.75, 0.92, 80};
    table.covariance = {{0.0049, 0.0049, 0.00245}, {0.0049, 0.0049, 0.00245}, {0.00245, 0.00245, 100}};
    BodySpec spec;
    spec.table = BodyTable::man;
    spec.typed = {{"stature", 1.80}, {"sittingheight", 0.97}, {"handlength", 0.19}};
    for (const char* name : {"eyeheightsitting"}) spec.typed[name] = 0.85;
    const std::vector<std::string> rest = bodyDimensionNames();
    std::vector<std::string> problems;
    // Every other dimension keeps its regression; only the three above come from the made-up covariance.
    for (const auto& name : rest)
        if (!spec.typed.count(name) && name != "weightkg") spec.typed[name] = table.statistics.at(name).mean;
    const BodySize size = made.size(spec, problems);
    CHECK(size.m("weightkg") == Approx(80 + 0.5 * 0.05));
}

TEST_CASE("an upper arm measured one way carries the other", "[body]") {
    // Ratio of the ANSUR II means of women: 311.2 and 334.3 mm.
    BodySpec spec;
    spec.table = BodyTable::woman;
    spec.typed = {{"stature", 1.6285}, {"shoulderelbowlength", 0.31}};
    std::vector<std::string> problems;
    const BodySize made = data().size(spec, problems);
    CHECK(problems.empty());
    CHECK(made.m("shoulderelbowlength") == 0.31);
    CHECK(made.m("acromionradialelength") == Approx(0.31 * 311.2 / 334.3).epsilon(1e-3));
    spec.typed = {{"stature", 1.6285}, {"acromionradialelength", 0.30}};
    CHECK(data().size(spec, problems).m("shoulderelbowlength") == Approx(0.30 * 334.3 / 311.2).epsilon(1e-3));
    CHECK(problems.empty());
}

TEST_CASE("what cannot be used is refused in words", "[body]") {
    const auto refused = [](BodyTable table, std::map<std::string, double> typed, std::optional<double> percentile, const std::string& words) {
        BodySpec spec;
        spec.table = table;
        spec.typed = std::move(typed);
        spec.percentile = percentile;
        std::vector<std::string> problems;
        const BodySize made = data().size(spec, problems);
        INFO(words);
        REQUIRE(!problems.empty());
        CHECK(made.dimensions.empty());
        CHECK(problems.front().find(words) != std::string::npos);
    };
    const double nan = std::numeric_limits<double>::quiet_NaN(), infinite = std::numeric_limits<double>::infinity();
    refused(BodyTable::woman, {{"statur", 1.6}}, {}, "is not a body dimension; allowed are stature, sittingheight");
    refused(BodyTable::woman, {{"stature", 0}}, {}, "must be a number above zero");
    refused(BodyTable::woman, {{"stature", -1.6}}, {}, "must be a number above zero");
    refused(BodyTable::man, {{"handlength", nan}}, {}, "must be a number above zero");
    refused(BodyTable::man, {{"handlength", infinite}}, {}, "must be a number above zero");
    refused(BodyTable::man, {{"stature", 1750}}, {}, "cannot be");
    refused(BodyTable::man, {{"weightkg", 80000}}, {}, "cannot be");
    refused(BodyTable::man, {}, 0.0, "percentile must be between 1 and 99");
    refused(BodyTable::man, {}, nan, "percentile must be between 1 and 99");
    refused(BodyTable::child, {}, {}, "needs a typed \"stature\"");
    refused(BodyTable::child, {{"stature", 12}}, {}, "cannot be a child's");
    refused(BodyTable::child, {{"stature", 1.2}, {"handlength", 1.3}}, {}, "cannot be");
    refused(BodyTable::child, {{"stature", 1.2}, {"hand", 0.1}}, {}, "is not a body dimension");
}

TEST_CASE("an implausible value is kept and said", "[body]") {
    BodySpec spec;
    spec.table = BodyTable::man;
    // Residual standard deviation of sitting height on stature is 22.4 mm (ANSUR II): 5 of them pass, 7 do not.
    const double expected = 0.20580 + 0.40570 * 1.75;
    std::vector<std::string> problems;
    spec.typed = {{"stature", 1.75}, {"sittingheight", expected - 5 * 0.02238}};
    data().size(spec, problems);
    CHECK(problems.empty());
    spec.typed["sittingheight"] = expected - 7 * 0.02238;
    const BodySize made = data().size(spec, problems);
    REQUIRE(!problems.empty());
    CHECK(problems.front().find("\"sittingheight\"") == 0);
    CHECK(problems.front().find("7 standard deviations") != std::string::npos);
    CHECK(made.m("sittingheight") == spec.typed["sittingheight"]);
    // Outside the covariance set: a wrist of 300 mm round at 85 kg.
    problems.clear();
    spec.typed = {{"wristcircumference", 0.30}};
    CHECK(data().size(spec, problems).m("wristcircumference") == 0.30);
    REQUIRE(problems.size() == 1);
    CHECK(problems.front().find("\"wristcircumference\" of 300 mm") == 0);
}

TEST_CASE("a damaged body table is refused with its name", "[body]") {
    namespace fs = std::filesystem;
    const fs::path folder = fs::path(HITHER_BINARY_DIR) / "body table with a space";
    fs::create_directories(folder);
    for (const char* file : {"woman.json", "man.json", "child.json"})
        fs::copy_file(fs::path(HITHER_SOURCE_DIR) / "resources/body" / file, folder / file, fs::copy_options::overwrite_existing);
    std::vector<std::string> problems;
    CHECK(BodyData::read(folder, problems));
    const auto spoiled = [&](const std::string& text) {
        std::ofstream(folder / "man.json") << text;
        problems.clear();
        CHECK(!BodyData::read(folder, problems));
        REQUIRE(problems.size() == 1);
        CHECK(problems.front().find("man.json") != std::string::npos);
        return problems.front();
    };
    CHECK(spoiled("").find("not JSON") != std::string::npos);
    CHECK(spoiled("[1]").find("there is no \"dimensions\"") != std::string::npos);
    CHECK(spoiled("{\"dimensions\":{\"stature\":{\"mean_mm\":\"tall\"}}}").find("\"mean_mm\" is not a number") != std::string::npos);
    fs::remove(folder / "man.json");
    problems.clear();
    CHECK(!BodyData::read(folder, problems));
    REQUIRE(problems.size() == 1);
    CHECK(problems.front().find("cannot be opened") != std::string::npos);
    fs::remove_all(folder);
}
