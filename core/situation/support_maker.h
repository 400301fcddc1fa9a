#pragma once
#include <string>
#include <vector>

#include "core/situation/support.h"

namespace hither {

/// Gathers the pieces of one support while its kind is made: reads the dimensions (typed, else the
/// kind's standard), makes a solid for every rail so that rail and solid cannot disagree, and names
/// twins. Everything in S with every moving group at zero. Whatever is wrong with the typed values
/// goes into `problems`; while there are any, the geometry made so far must not be used.
class SupportMaker {
public:
    SupportMaker(const SupportSpec& spec, const SupportKind& kind, std::vector<SupportProblem>& problems);

    /// The dimension by its key, m or rad: as typed, or the kind's standard.
    double value(const std::string& key) const;
    bool typed(const std::string& key) const { return spec_.dimensions.count(key) != 0; }
    BasisKind basis(const std::string& key) const { return typed(key) ? BasisKind::measured : BasisKind::assumed; }
    /// Whether every dimension of the kind was typed.
    bool allTyped() const;

    /// A moving group, unless its range is nothing; returns the id that its pieces belong to: its own,
    /// or the parent's when it does not move.
    std::string turn(const std::string& id, const std::string& name, const std::string& parent, const Vec3& pivot, const Vec3& axis, double max_rad);
    std::string slide(const std::string& id, const std::string& name, const std::string& parent, const Vec3& axis, double max_m);

    /// Outside size of a rail: as typed for that rail id in SupportSpec::tubes, else the size given.
    Figure tube_m(const std::string& railId, const std::string& standard);
    double tubeRadius_m(const std::string& railId, const std::string& standard) { return 0.5 * tube_m(railId, standard).value.value_or(0.02); }
    /// A tube from a to b with the solid that goes with it (of the rail's own id). `reference` is where
    /// "around" counts from, `standard` the outside size when none is typed.
    void rail(const std::string& id, const std::string& name, const std::string& group, const Vec3& a, const Vec3& b, const Vec3& reference,
              const std::string& standard, Section section = Section::round);
    void edge(const std::string& id, const std::string& name, const std::string& group, const Vec3& a, const Vec3& b, const Vec3& up,
              double thickness_m, BasisKind basis, double depth_m, const std::vector<std::string>& solids);
    void face(const std::string& id, const std::string& name, const std::string& group, const Vec3& middle, const Vec3& xAxis, const Vec3& up,
              double sizeX_m, double sizeY_m, const std::vector<std::string>& solids);
    void cloth(const std::string& id, const std::string& name, const std::string& group, const Vec3& a, const Vec3& b, const Vec3& up,
               double thickness_m, const std::vector<std::string>& solids);
    /// Closes a stretch of an attachment, all round. Cut to the attachment; nothing when nothing is left.
    void block(const std::string& attachment, double from_m, double to_m, const std::string& why);
    /// Closes the stretch of a rail (cut to it) whose line comes within `reach_m` of a point.
    void blockNear(const std::string& attachment, const Vec3& point, double reach_m, const std::string& why);
    /// Closes a sector of a rail about a direction, by half its opening on either side.
    void blockSector(const std::string& attachment, double from_m, double to_m, const Vec3& direction, double half_rad, const std::string& why);
    /// Another solid that the grip on this attachment may touch.
    void alsoTouches(const std::string& attachment, const std::string& solid);

    void solid(const std::string& name, const std::string& group, const Solid& solid);
    /// A box whose x axis runs along `x` and whose z axis is as near `z` as that allows.
    void box(const std::string& name, const std::string& group, const Vec3& centre, const Vec3& size, const Vec3& x = Vec3::UnitX(), const Vec3& z = Vec3::UnitZ());
    void bar(const std::string& name, const std::string& group, const Vec3& a, const Vec3& b, double radius_m);
    void landmark(const std::string& id, const std::string& name, const std::string& group, const Vec3& p_S);

    Support support;

private:
    Attachment& find(const std::string& id);

    const SupportSpec& spec_;
    const SupportKind& kind_;
    std::vector<SupportProblem>& problems_;
};

/// "_left" for +1 (the person's left, +y), "_right" for -1; and the words for names.
inline std::string sideId(const std::string& id, int side) { return id + (side > 0 ? "_left" : "_right"); }
inline std::string sideName(const std::string& name, int side) { return name + (side > 0 ? ", left" : ", right"); }

/// A kind of support and the function that makes its geometry.
struct SupportRecipe {
    SupportKind kind;
    void (*make)(SupportMaker&);
};
SupportRecipe chairManualRecipe();
SupportRecipe chairTiltRecipe();
SupportRecipe chairPowerRecipe();
SupportRecipe bedRecipe();
SupportRecipe trayRecipe();
SupportRecipe tableRecipe();
SupportRecipe pushchairRecipe();
SupportRecipe poleRecipe();
SupportRecipe customRecipe();

/// A dimension in mm or degrees, as the lists of the kinds are written.
SupportDimension lengthDimension_mm(const char* key, const char* means, double standard, double min, double max);
SupportDimension angleDimension_deg(const char* key, const char* means, double standard, double min, double max);

}  // namespace hither
