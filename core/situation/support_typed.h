#pragma once
#include <string>
#include <vector>

#include "core/situation/support.h"
#include "core/units/parsed.h"

namespace hither {

/// What a person types about a support beside its kind's dimensions: tubes' sizes, groups, rails,
/// edges, faces, cloth, landmarks, solids. Each function adds what is right to the support and a
/// problem for each thing that is not; a problem's key is the place in the plan file's terms
/// ("rails/post/size").

/// Outside size of a tube as typed, refused below 3 mm and above 150 mm (common practice, no source:
/// nothing in the trade clamps outside that).
Parsed<double> tubeOutside_m(const std::string& text);

/// The tube of a rail as a solid: a capsule for a round one, a box with a flat toward `reference` for a square one.
Solid railSolid(const Attachment& rail);

/// Typed sizes in SupportSpec::tubes that name no rail of the support or cannot be read.
void checkTubes(const SupportSpec& spec, const Support& support, std::vector<SupportProblem>& problems);
void addTypedGroups(const SupportSpec& spec, Support& support, std::vector<SupportProblem>& problems);
void addTypedSolids(const SupportSpec& spec, Support& support, std::vector<SupportProblem>& problems);
/// Rails, edges, faces and cloth. One that lists no solids lists those of its group that it lies on;
/// when there are none, a rail, edge or face gets a solid of its own (a tube; a plate as thick as the
/// edge says; a face's plate as thick as an edge in its plane says, else 10 mm, assumed).
void addTypedAttachments(const SupportSpec& spec, Support& support, std::vector<SupportProblem>& problems);
void addTypedLandmarks(const SupportSpec& spec, Support& support, std::vector<SupportProblem>& problems);
/// Puts the moving groups at the settings typed.
void applySettings(const SupportSpec& spec, Support& support, std::vector<SupportProblem>& problems);

/// "430 mm", "12.5°", "not a number": how a found or allowed value is shown.
std::string shownValue(double value, bool angle);
std::string shownRange(double min, double max, bool angle);

}  // namespace hither
