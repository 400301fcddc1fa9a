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
/// Every name listed above, in that order ("weightkg" last).
const std::vector<std::string>& bodyDimensionNames();

/// Every dimension, each saying where it is from ("typed", "survey of adult soldiers, scaled by
/// stature", "estimated from the covariance of the survey of adult soldiers", "segment proportions:
/// a child; check by measuring"). A child's mass is there only when it was typed. Empty when
/// something typed cannot be used at all.
struct BodySize {
    std::map<std::string, BodyDimension> dimensions;
    double m(const std::string& name) const;  ///< asserts that the name is one of the above
};

/// The published survey's means, covariance and percentiles and the published segment proportions,
/// from resources/body/{woman,man,child}.json. The files name their sources. The survey is of adult
/// soldiers: its figures are a start for other people, and every one can be typed instead.
class BodyData {
public:
    /// Null, with one clause a problem that names the file, when a file is missing or not as documented in it.
    static std::optional<BodyData> read(const std::filesystem::path& folder, std::vector<std::string>& problems);

    /// Adult: what is typed is kept (basis measured). Without a typed stature a percentile gives it
    /// (between tabulated percentiles on a normal scale); with neither, and nothing else typed, it is
    /// the survey's mean. Dimensions measured together in the survey are the conditional mean of a
    /// normal distribution with its covariance, given stature and what is typed of them (given stature
    /// alone that is the regression on stature); the others follow by regression on stature, or on
    /// stature and mass when more than stature is known. A child: shares of stature, which must be typed.
    ///
    /// Problems, in words: an unknown name, a value that is not a positive number or far outside human
    /// size (nothing is made then); and a value more than six standard deviations from what the others
    /// let expect (it is kept as typed: bodies differ, but it is more often a slip of the tape).
    BodySize size(const BodySpec& spec, std::vector<std::string>& problems) const;

    struct Statistic { double mean = 0, sd = 0; std::map<int, double> percentiles; };  ///< SI
    /// y = a + stature b + mass c, SI (m, kg), with the standard deviation of what is left.
    struct Regression { double a = 0, b = 0, c = 0, residualSd = 0; };
    struct Table {
        std::map<std::string, Statistic> statistics;
        std::vector<std::string> covarianceNames;      ///< acromial height is the sitting one
        std::vector<double> covarianceMeans;           ///< SI, in the order of the names
        std::vector<std::vector<double>> covariance;   ///< SI
        std::map<std::string, Regression> onStature, onStatureAndMass;
    };
    std::map<BodyTable, Table> tables;
    struct Share { double ofStature = 0; std::string source; };
    std::map<std::string, Share> childProportions;
    std::map<std::string, Regression> childHead;       ///< head dimensions, on stature
};

}  // namespace hither
