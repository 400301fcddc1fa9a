#pragma once
#include <optional>
#include <string>

#include "core/plan/plan.h"

namespace hither {

/// How the values of a joint are written in a plan: angle_deg; swing_deg and twist_deg; slide_mm;
/// curvature_per_m.
enum class JointForm { angle, swingTwist, slide, curvature };
JointForm jointForm(const Element& element);

/// Values of a joint at home: 0, or the nearest value within its range.
std::vector<double> homeValues(const Element& element);

/// "rails", "edges", "faces", "cloths".
const char* attachmentList(AttachmentKind kind);

/// Whether a moving group of a support moves along its axis (mm) instead of turning (degrees), by
/// the groups typed in or those that its kind has. Null when the support has no such group.
std::optional<bool> groupSlidesIfKnown(const SupportSpec& support, const std::string& group);
inline bool groupSlides(const SupportSpec& support, const std::string& group) { return groupSlidesIfKnown(support, group).value_or(false); }

/// The keys of a support's settings: each moving group's id with _deg or _mm.
std::vector<std::string> groupKeys(const SupportSpec& support);

/// "seat_width_mm, seat_angle_deg": the keys of a kind's dimensions as they are written.
std::string dimensionKeys(const SupportKind& kind);
const SupportKind* supportKind(const std::string& kind);

// The words of the choices, each with its reader; null for any other word.
const char* word(UnitSystem v);
const char* word(BodyTable v);
const char* word(PersonSpec::Lying v);
const char* word(SiteGiven v);
const char* word(AttachmentKind v);
const char* word(Section v);
std::optional<UnitSystem> unitSystemFromWord(const std::string& text);
std::optional<BodyTable> bodyTableFromWord(const std::string& text);
std::optional<PersonSpec::Lying> lyingFromWord(const std::string& text);
std::optional<SiteGiven> siteGivenFromWord(const std::string& text);
std::optional<AttachmentKind> attachmentKindFromWord(const std::string& text);
std::optional<Section> sectionFromWord(const std::string& text);

}  // namespace hither
