#include <algorithm>
#include <cmath>
#include <fstream>
#include <stdexcept>

#include <nlohmann/json.hpp>

#include "core/situation/body_table.h"

namespace hither {
namespace {

using Json = nlohmann::json;
constexpr double mm = 0.001;

/// A file that is not as documented; caught in read() and worded with the file's name.
struct NotAsDocumented : std::runtime_error { using std::runtime_error::runtime_error; };

const Json& at(const Json& object, const std::string& key) {
    if (!object.is_object() || !object.contains(key)) throw NotAsDocumented("there is no \"" + key + "\"");
    return object.at(key);
}

double number(const Json& value, const std::string& key) {
    if (!value.is_number() || !std::isfinite(value.get<double>())) throw NotAsDocumented("\"" + key + "\" is not a number");
    return value.get<double>();
}

double numberAt(const Json& object, const std::string& key) { return number(at(object, key), key); }

Json readJson(const std::filesystem::path& path) {
    std::ifstream in(path);
    if (!in) throw NotAsDocumented("the file cannot be opened");
    const Json json = Json::parse(in, nullptr, false);
    if (json.is_discarded()) throw NotAsDocumented("the file is not JSON");
    return json;
}

/// Scale from the file's unit of a dimension to SI.
double scaleOf(const std::string& name) { return name == "weightkg" ? 1.0 : mm; }

BodyData::Statistic readStatistic(const Json& entry, const std::string& name) {
    const std::string unit = name == "weightkg" ? "kg" : "mm";
    const double scale = scaleOf(name);
    BodyData::Statistic statistic;
    statistic.mean = numberAt(entry, "mean_" + unit) * scale;
    statistic.sd = numberAt(entry, "sd_" + unit) * scale;
    if (!(statistic.mean > 0) || !(statistic.sd > 0)) throw NotAsDocumented("mean and standard deviation of \"" + name + "\" must be above zero");
    double before = 0;
    std::map<int, double> sorted;
    for (const auto& [percent, value] : at(entry, "percentiles_" + unit).items()) {
        if (percent.empty() || percent.size() > 2 || !std::all_of(percent.begin(), percent.end(), [](unsigned char c) { return c >= '0' && c <= '9'; }))
            throw NotAsDocumented("\"" + percent + "\" is not a percentile");
        sorted[std::stoi(percent)] = number(value, percent) * scale;
    }
    for (const auto& [percent, value] : sorted) {
        if (!(value > before)) throw NotAsDocumented("the percentiles of \"" + name + "\" do not rise");
        before = value;
    }
    statistic.percentiles = std::move(sorted);
    return statistic;
}

BodyData::Regression readRegression(const Json& entry, bool withMass) {
    BodyData::Regression regression;
    regression.a = numberAt(entry, "a_mm") * mm;
    regression.b = numberAt(entry, "b");
    if (withMass) regression.c = numberAt(entry, "c_mm_per_kg") * mm;
    if (entry.contains("residual_sd_mm")) regression.residualSd = numberAt(entry, "residual_sd_mm") * mm;
    return regression;
}

/// The survey measured the standing acromial height; the sitting one is
/// sitting height - stature + acromial height, so its means and covariances follow exactly from
/// y = T x with T the identity but for that one row: C_y = T C_x T'.
void makeAcromialSitting(BodyData::Table& table) {
    const auto indexOf = [&](const std::string& name) {
        const auto found = std::find(table.covarianceNames.begin(), table.covarianceNames.end(), name);
        if (found == table.covarianceNames.end()) throw NotAsDocumented("\"covariance\" lacks \"" + name + "\"");
        return static_cast<std::size_t>(found - table.covarianceNames.begin());
    };
    const std::size_t stature = indexOf("stature"), sitting = indexOf("sittingheight"), acromial = indexOf("acromialheight");
    auto& C = table.covariance;
    auto& mean = table.covarianceMeans;
    mean[acromial] += mean[sitting] - mean[stature];
    for (std::size_t j = 0; j < C.size(); ++j) C[acromial][j] += C[sitting][j] - C[stature][j];
    for (auto& row : C) row[acromial] += row[sitting] - row[stature];
    table.covarianceNames[acromial] = "acromialheightsitting";
}

BodyData::Table readTable(const Json& json) {
    BodyData::Table table;
    const Json& dimensions = at(json, "dimensions");
    for (const auto& name : bodyDimensionNames()) {
        const Json& entry = at(dimensions, name);
        table.statistics[name] = readStatistic(entry, name);
        if (name == "stature" || name == "weightkg") continue;
        table.onStature[name] = readRegression(at(entry, "on_stature"), false);
        table.onStatureAndMass[name] = readRegression(at(entry, "on_stature_and_weight"), true);
    }
    const Json& covariance = at(json, "covariance");
    for (const Json& name : at(covariance, "names")) {
        if (!name.is_string()) throw NotAsDocumented("\"names\" must be words");
        table.covarianceNames.push_back(name.get<std::string>());
    }
    const std::size_t n = table.covarianceNames.size();
    const Json& means = at(covariance, "means");
    const Json& rows = at(covariance, "matrix");
    if (means.size() != n || rows.size() != n) throw NotAsDocumented("\"covariance\" must have as many means and rows as names");
    for (std::size_t i = 0; i < n; ++i) {
        const double si = scaleOf(table.covarianceNames[i]);
        table.covarianceMeans.push_back(number(means[i], "means") * si);
        if (!rows[i].is_array() || rows[i].size() != n) throw NotAsDocumented("the rows of \"matrix\" must have as many numbers as names");
        std::vector<double> row;
        for (std::size_t j = 0; j < n; ++j) row.push_back(number(rows[i][j], "matrix") * si * scaleOf(table.covarianceNames[j]));
        table.covariance.push_back(std::move(row));
    }
    makeAcromialSitting(table);
    for (std::size_t i = 0; i < n; ++i) {
        if (!(table.covariance[i][i] > 0)) throw NotAsDocumented("a variance in \"matrix\" is not above zero");
        if (!table.statistics.count(table.covarianceNames[i])) throw NotAsDocumented("\"covariance\" names \"" + table.covarianceNames[i] + "\", which \"dimensions\" lacks");
        for (std::size_t j = 0; j < i; ++j)
            if (std::abs(table.covariance[i][j] - table.covariance[j][i]) > 1e-9) throw NotAsDocumented("\"matrix\" is not symmetric");
    }
    return table;
}

}  // namespace

std::optional<BodyData> BodyData::read(const std::filesystem::path& folder, std::vector<std::string>& problems) {
    BodyData data;
    const std::size_t before = problems.size();
    const auto from = [&](const char* file, const auto& take) {
        try {
            take(readJson(folder / file));
        } catch (const NotAsDocumented& problem) {
            problems.push_back((folder / file).string() + ": " + problem.what());
        }
    };
    from("woman.json", [&](const Json& json) { data.tables[BodyTable::woman] = readTable(json); });
    from("man.json", [&](const Json& json) { data.tables[BodyTable::man] = readTable(json); });
    from("child.json", [&](const Json& json) {
        const Json& proportions = at(json, "proportions");
        const Json& head = at(json, "head_mm");
        for (const auto& name : bodyDimensionNames()) {
            if (name == "weightkg") continue;
            if (head.contains(name)) {
                data.childHead[name] = readRegression(at(head, name), false);
                continue;
            }
            const Json& entry = at(proportions, name);
            const Json& source = at(entry, "source");
            if (!source.is_string()) throw NotAsDocumented("a \"source\" must be words");
            data.childProportions[name] = {numberAt(entry, "of_stature"), source.get<std::string>()};
        }
    });
    if (problems.size() > before) return std::nullopt;
    return data;
}

}  // namespace hither
