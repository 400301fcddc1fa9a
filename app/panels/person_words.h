#pragma once
#include <string>
#include <vector>

#include <QString>

#include "core/situation/person.h"

namespace hither {

/// "Sitting height" of "sittingheight".
QString bodyDimensionName(const std::string& dimension);
/// Body dimensions that shape the body, by part of the body; stature and mass are not among them.
struct BodyRegion { QString name; std::vector<std::string> dimensions; };
std::vector<BodyRegion> bodyRegions();

/// The joints of one limb, as posture and ranges name them.
struct Limb { QString name; std::vector<std::string> joints; };
std::vector<Limb> limbs();
/// "Elbow flexion" of "elbow_flexion_right"; with the side: "Elbow flexion, right".
QString jointName(const std::string& joint, bool withSide);
/// Which way positive angles go, for whom the term says little.
QString jointMeaning(const std::string& joint);

QString tableName(BodyTable table);
QString lyingName(PersonSpec::Lying lying);

/// What a problem of a body is about: a body dimension, a joint, "cushion", "percentile", or nothing known.
std::string problemKey(const std::string& problem);
/// A problem as a sentence, with names in words.
QString problemWords(const std::string& problem);

}  // namespace hither
