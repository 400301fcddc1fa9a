#pragma once
#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/units/basis.h"

namespace hither {

/// Names of the body dimensions used here with their ISO 7250-1 titles where it has one: stature,
/// sittingheight, eyeheightsitting, acromialheightsitting, elbowrestheight, acromionradialelength,
/// shoulderelbowlength, radialestylionlength, handlength, handbreadth, biacromialbreadth,
/// bideltoidbreadth, hipbreadthsitting, buttockkneelength, buttockpopliteallength, poplitealheight,
/// kneeheightsitting, thighclearance, abdominalextensiondepthsitting, chestdepth, chestbreadth,
/// footlength, footbreadthhorizontal, lateralmalleolusheight, headbreadth, headlength,
/// tragiontopofhead, neckcircumference, wristcircumference, forearmcircumferenceflexed,
/// bicepscircumferenceflexed, thumbtipreach. All m; `weightkg` in kg.
enum class BodyTable { woman, man, child };

/// What is known of a person's size. Dimensions typed are kept; the rest follow from them.
struct BodySpec {
    BodyTable table = BodyTable::woman;
    std::optional<double> percentile;          ///< 5, 50, 95 ...: of stature, when no stature is typed
    std::map<std::string, double> typed;       ///< by the names above, m (kg for weightkg)
    bool operator==(const BodySpec&) const = default;
};
struct BodyDimension { double value = 0; BasisKind basis = BasisKind::assumed; std::string from; };
/// Every dimension, each saying where it is from ("typed", "survey, scaled by stature",
/// "estimated from the survey's covariance", "segment proportions: a child, check by measuring").
struct BodySize {
    std::map<std::string, BodyDimension> dimensions;
    double m(const std::string& name) const;  ///< asserts that the name is one of the above
};

/// The published survey's means, covariance and percentiles and the published segment proportions,
/// from resources/body. See the files for their sources.
class BodyData {
public:
    static std::optional<BodyData> read(const std::filesystem::path& folder, std::vector<std::string>& problems);
    BodySize size(const BodySpec& spec, std::vector<std::string>& problems) const;

    struct Statistic { double mean = 0, sd = 0; std::map<int, double> percentiles; };  ///< SI
    struct Table { std::map<std::string, Statistic> statistics; std::vector<std::string> covarianceNames; std::vector<std::vector<double>> covariance; std::map<std::string, std::pair<double, double>> onStature; };
    std::map<BodyTable, Table> tables;
    std::map<std::string, double> childProportions;  ///< length / stature
};

}  // namespace hither
