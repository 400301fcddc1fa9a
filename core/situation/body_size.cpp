#include <algorithm>
#include <cmath>
#include <cstdio>

#include <Eigen/Dense>

#include "core/situation/body_table.h"

namespace hither {
namespace {

constexpr double implausibleDeviations = 6.0;
/// A typed length outside these multiples of what is usual is a slip (a wrong unit, a missing digit).
constexpr double leastShare = 0.3, mostShare = 2.5;
/// Body mass varies more than lengths do.
constexpr double leastMass_kg = 5.0, mostMass_kg = 400.0;
constexpr double leastChildStature_m = 0.7, mostChildStature_m = 2.0;

const char* const fromTyped = "typed";
const char* const fromMean = "mean of the survey of adult soldiers";
const char* const fromPercentile = "percentile of the survey of adult soldiers";
const char* const fromStature = "survey of adult soldiers, scaled by stature";
const char* const fromStatureAndMass = "survey of adult soldiers, scaled by stature and mass";
const char* const fromCovariance = "estimated from the covariance of the survey of adult soldiers";

std::string print(const std::string& name, double value) {
    char text[64];
    if (name == "weightkg") std::snprintf(text, sizeof text, "%.1f kg", value);
    else std::snprintf(text, sizeof text, "%.0f mm", value * 1000);
    return text;
}

/// Normal score of a share p in (0, 1): inverse of the normal distribution function by bisection of erfc.
double normalScore(double p) {
    double low = -9, high = 9;
    for (int i = 0; i < 80; ++i) {
        const double middle = 0.5 * (low + high);
        (0.5 * std::erfc(-middle / std::sqrt(2.0)) < p ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

/// The value at a percentile between the first and last tabulated: tabulated ones as they are, others
/// linear in the normal score between their neighbours.
std::optional<double> atPercentile(const std::map<int, double>& table, double percentile) {
    if (table.empty() || !std::isfinite(percentile)) return std::nullopt;
    if (percentile < table.begin()->first || percentile > table.rbegin()->first) return std::nullopt;
    auto above = std::find_if(table.begin(), table.end(), [&](const auto& entry) { return entry.first >= percentile; });
    if (above->first == percentile) return above->second;
    const auto below = std::prev(above);
    const double low = normalScore(below->first / 100.0), high = normalScore(above->first / 100.0);
    const double share = (normalScore(percentile / 100.0) - low) / (high - low);
    return below->second + share * (above->second - below->second);
}

/// Conditional mean and standard deviation of a normal vector given some of its components, by the
/// Schur complement: m = mu_u + C_ug C_gg^-1 (x_g - mu_g), C = C_uu - C_ug C_gg^-1 C_gu. C_gg is
/// scaled to unit diagonal before LDLT, and a pivot below `nearDuplicate` counts as a repetition of
/// what is already given: its direction is left out, so that givens that nearly repeat each other
/// cannot blow up the rest.
class Conditional {
public:
    Conditional(const BodyData::Table& table, const std::map<std::string, double>& given) : table_(table) {
        for (std::size_t i = 0; i < table.covarianceNames.size(); ++i)
            if (given.count(table.covarianceNames[i])) index_.push_back(i);
        const auto n = static_cast<Eigen::Index>(index_.size());
        scale_.resize(n);
        Eigen::VectorXd deviation(n);
        Eigen::MatrixXd R(n, n);
        for (Eigen::Index a = 0; a < n; ++a) {
            const std::size_t i = index_[static_cast<std::size_t>(a)];
            scale_[a] = std::sqrt(table.covariance[i][i]);
            deviation[a] = (given.at(table.covarianceNames[i]) - table.covarianceMeans[i]) / scale_[a];
        }
        for (Eigen::Index a = 0; a < n; ++a)
            for (Eigen::Index b = 0; b < n; ++b)
                R(a, b) = table.covariance[index_[static_cast<std::size_t>(a)]][index_[static_cast<std::size_t>(b)]] / (scale_[a] * scale_[b]);
        if (n > 0) {
            ldlt_.compute(R);
            weights_ = solve(deviation);
        }
    }

    double mean(std::size_t unknown) const {
        double m = table_.covarianceMeans[unknown];
        if (!index_.empty()) m += towards(unknown).dot(weights_);
        return m;
    }
    double sd(std::size_t unknown) const {
        double variance = table_.covariance[unknown][unknown];
        if (!index_.empty()) {
            const Eigen::VectorXd c = towards(unknown);
            variance -= c.dot(solve(c));
        }
        return std::sqrt(std::max(variance, 0.0));
    }

private:
    static constexpr double nearDuplicate = 1e-7;

    Eigen::VectorXd towards(std::size_t unknown) const {
        Eigen::VectorXd c(scale_.size());
        for (Eigen::Index a = 0; a < c.size(); ++a) c[a] = table_.covariance[unknown][index_[static_cast<std::size_t>(a)]] / scale_[a];
        return c;
    }
    Eigen::VectorXd solve(const Eigen::VectorXd& right) const {
        Eigen::VectorXd x = ldlt_.transpositionsP() * right;
        ldlt_.matrixL().solveInPlace(x);
        const Eigen::VectorXd d = ldlt_.vectorD();
        for (Eigen::Index a = 0; a < x.size(); ++a) x[a] = d[a] > nearDuplicate ? x[a] / d[a] : 0.0;
        ldlt_.matrixU().solveInPlace(x);
        return ldlt_.transpositionsP().transpose() * x;
    }

    const BodyData::Table& table_;
    std::vector<std::size_t> index_;
    Eigen::VectorXd scale_, weights_;
    Eigen::LDLT<Eigen::MatrixXd> ldlt_;
};

bool inCovariance(const BodyData::Table& table, const std::string& name) {
    return std::find(table.covarianceNames.begin(), table.covarianceNames.end(), name) != table.covarianceNames.end();
}

/// Unknown names and values that are no size at all; true when nothing of that kind was found.
bool usable(const std::map<std::string, double>& typed, std::vector<std::string>& problems) {
    const auto& names = bodyDimensionNames();
    bool fine = true;
    for (const auto& [name, value] : typed) {
        if (std::find(names.begin(), names.end(), name) == names.end()) {
            std::string allowed;
            for (const auto& each : names) allowed += (allowed.empty() ? "" : ", ") + each;
            problems.push_back("\"" + name + "\" is not a body dimension; allowed are " + allowed);
            fine = false;
        } else if (!std::isfinite(value) || value <= 0) {
            problems.push_back("\"" + name + "\" must be a number above zero");
            fine = false;
        }
    }
    return fine;
}

bool humanSize(const std::string& name, double value, double usual, std::vector<std::string>& problems) {
    const double least = name == "weightkg" ? leastMass_kg : leastShare * usual;
    const double most = name == "weightkg" ? mostMass_kg : mostShare * usual;
    if (value >= least && value <= most) return true;
    problems.push_back("\"" + name + "\" of " + print(name, value) + " cannot be: it must be between " + print(name, least) + " and " + print(name, most));
    return false;
}

std::string implausible(const std::string& name, double value, double expected, double sd) {
    char deviations[32];
    std::snprintf(deviations, sizeof deviations, "%.0f", std::abs(value - expected) / sd);
    return "\"" + name + "\" of " + print(name, value) + " is " + deviations + " standard deviations from the " + print(name, expected) +
           " that goes with the rest; it is kept as typed: measure again";
}

BodySize adult(const BodySpec& spec, const BodyData::Table& table, std::vector<std::string>& problems) {
    bool fine = usable(spec.typed, problems);
    std::map<std::string, double> given;  // what conditions the rest
    if (fine)
        for (const auto& [name, value] : spec.typed) {
            fine = humanSize(name, value, table.statistics.at(name).mean, problems) && fine;
            if (inCovariance(table, name)) given[name] = value;
        }
    const bool statureTyped = spec.typed.count("stature") > 0;
    const char* statureFrom = fromCovariance;
    if (!statureTyped && spec.percentile) {
        const auto& percentiles = table.statistics.at("stature").percentiles;
        if (const auto stature = atPercentile(percentiles, *spec.percentile)) {
            given["stature"] = *stature;
            statureFrom = fromPercentile;
        } else {
            problems.push_back("the percentile must be between " + std::to_string(percentiles.begin()->first) + " and " + std::to_string(percentiles.rbegin()->first));
            fine = false;
        }
    }
    if (!fine) return {};
    if (given.empty()) {
        given["stature"] = table.statistics.at("stature").mean;
        statureFrom = fromMean;
    }
    // The upper arm is measured to the radiale and to the underside of the elbow; whichever is typed
    // carries the other, so that the elbow keeps its size.
    const auto upperArmRatio = [&] { return table.statistics.at("acromionradialelength").mean / table.statistics.at("shoulderelbowlength").mean; };
    const auto shoulderElbow = spec.typed.find("shoulderelbowlength");
    if (shoulderElbow != spec.typed.end() && !given.count("acromionradialelength"))
        given["acromionradialelength"] = shoulderElbow->second * upperArmRatio();

    const Conditional conditional(table, given);
    const bool statureAlone = given.size() == 1 && given.count("stature");
    std::map<std::string, double> estimated;
    for (std::size_t i = 0; i < table.covarianceNames.size(); ++i) estimated[table.covarianceNames[i]] = conditional.mean(i);
    const auto known = [&](const std::string& name) { return given.count(name) ? given.at(name) : estimated.at(name); };
    const double stature = known("stature"), mass = known("weightkg");

    BodySize size;
    for (const auto& name : bodyDimensionNames()) {
        BodyDimension& dimension = size.dimensions[name];
        dimension.basis = BasisKind::published;
        if (const auto typed = spec.typed.find(name); typed != spec.typed.end()) {
            dimension = {typed->second, BasisKind::measured, fromTyped};
        } else if (name == "stature") {
            dimension.value = stature;
            dimension.from = statureFrom;
        } else if (name == "weightkg") {
            dimension.value = mass;
            dimension.from = statureAlone ? fromStature : fromCovariance;
        } else if (statureAlone) {
            const auto& regression = table.onStature.at(name);
            dimension.value = regression.a + regression.b * stature;
            dimension.from = fromStature;
        } else if (inCovariance(table, name)) {
            dimension.value = known(name);
            dimension.from = fromCovariance;
        } else {
            const auto& regression = table.onStatureAndMass.at(name);
            dimension.value = regression.a + regression.b * stature + regression.c * mass;
            dimension.from = fromStatureAndMass;
        }
    }
    if (shoulderElbow == spec.typed.end() && spec.typed.count("acromionradialelength")) {
        auto& dimension = size.dimensions["shoulderelbowlength"];
        dimension.value = spec.typed.at("acromionradialelength") / upperArmRatio();
        dimension.from = "survey of adult soldiers, scaled by the upper arm";
    }

    // Each typed value against what the other givens let expect.
    for (const auto& [name, value] : spec.typed) {
        double expected = 0, sd = 0;
        if (inCovariance(table, name)) {
            auto others = given;
            others.erase(name);
            if (name == "acromionradialelength" || name == "shoulderelbowlength") others.erase("acromionradialelength");
            const Conditional rest(table, others);
            const auto i = static_cast<std::size_t>(std::find(table.covarianceNames.begin(), table.covarianceNames.end(), name) - table.covarianceNames.begin());
            expected = rest.mean(i);
            sd = rest.sd(i);
        } else {
            const auto& regression = table.onStatureAndMass.at(name);
            expected = regression.a + regression.b * stature + regression.c * mass;
            sd = regression.residualSd;
        }
        // Given values that nearly determine this one: a tape reads to some millimetres, not finer.
        sd = std::max(sd, name == "weightkg" ? 0.5 : 0.004);
        if (std::abs(value - expected) > implausibleDeviations * sd) problems.push_back(implausible(name, value, expected, sd));
    }
    for (const auto& [name, dimension] : size.dimensions)
        if (!(dimension.value > 0)) {
            problems.push_back("what is typed leads to no possible \"" + name + "\"; measure and type it");
            fine = false;
        }
    return fine ? size : BodySize{};
}

BodySize child(const BodySpec& spec, const BodyData& data, std::vector<std::string>& problems) {
    if (!usable(spec.typed, problems)) return {};
    const auto typedStature = spec.typed.find("stature");
    if (typedStature == spec.typed.end()) {
        problems.push_back("a child's body needs a typed \"stature\": there are no percentiles for children here");
        return {};
    }
    const double stature = typedStature->second;
    if (stature < leastChildStature_m || stature > mostChildStature_m) {
        problems.push_back("\"stature\" of " + print("stature", stature) + " cannot be a child's: it must be between " + print("stature", leastChildStature_m) + " and " + print("stature", mostChildStature_m));
        return {};
    }
    BodySize size;
    bool fine = true;
    for (const auto& name : bodyDimensionNames()) {
        double usual = 0;
        std::string from;
        if (const auto share = data.childProportions.find(name); share != data.childProportions.end()) {
            usual = share->second.ofStature * stature;
            from = "segment proportions: a child; check by measuring (" + share->second.source + ")";
        } else if (const auto head = data.childHead.find(name); head != data.childHead.end()) {
            usual = head->second.a + head->second.b * stature;
            from = "segment proportions: a child; check by measuring (head: survey of adult soldiers, carried down to this stature)";
        }
        if (const auto typed = spec.typed.find(name); typed != spec.typed.end()) {
            fine = humanSize(name, typed->second, usual, problems) && fine;
            size.dimensions[name] = {typed->second, BasisKind::measured, fromTyped};
        } else if (usual > 0) {
            size.dimensions[name] = {usual, BasisKind::assumed, from};
        }
    }
    return fine ? size : BodySize{};
}

}  // namespace

BodySize BodyData::size(const BodySpec& spec, std::vector<std::string>& problems) const {
    return spec.table == BodyTable::child ? child(spec, *this, problems) : adult(spec, tables.at(spec.table), problems);
}

}  // namespace hither
