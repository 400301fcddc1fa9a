#pragma once
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <Eigen/Core>

#include "core/catalogue/catalogue.h"
#include "core/catalogue/mating.h"
#include "core/chain/mount.h"
#include "core/situation/situation.h"

namespace hither {

/// One scalar freedom of a mount.
struct Freedom {
    enum class Of { along, around, x, y, yaw, clocking, joint };
    Of of = Of::joint;
    int part = 0;               ///< index in the mount (0 = the grip, which also owns the placement)
    std::string joint;          ///< element name for Of::joint
    int component = 0;          ///< of a ball or bend
    double min = 0, max = 0;    ///< SI; a ball's swing and a bend's curvature are bounded by their disc as well
    bool fullTurn = false;      ///< angle that wraps: no limit
    bool isAngle = true;        ///< rad, otherwise m (slides) or 1/m (bends)
    std::optional<double> step; ///< detent
    bool kept = false;
    double weight = 1;          ///< metres that a unit of it moves the far end, roughly: scales the solver's steps
    JointFigures figures;       ///< empty for placements
};
/// q[first], q[first + 1] together stay within a circle (ball swing: cone; bend arc: 1 / minimum radius).
struct DiscLimit { int first = 0; double radius = 0; };

/// The chain is walked step by step from W. Frame k is the frame before step k; the last frame is
/// the outlet or face frame.
struct ChainStep {
    enum class Kind { fixed, slide, turn, ball, bend };
    Kind kind = Kind::fixed;
    Pose X = Pose::Identity();  ///< fixed
    Vec3 axis = Vec3::UnitZ();  ///< slide, turn: unit, in the frame before the step
    double arc = 0;             ///< bend: length of one of its three arcs
    int q0 = -1;                ///< first freedom; -1 for fixed
    int part = 0, element = -1; ///< element -1: placement or mate
};
struct ChainSolid { Solid solid; int frame = 0; int part = 0; bool jaw = false; };  ///< jaw: the pieces of a grip that touch the support by design
struct ChainBend { int step = 0; int part = 0; double radius = 0; };  ///< one of a neck's three arcs; radius: half the neck's thickness
struct ChainMass { Figure kg; Vec3 at = Vec3::Zero(); int frame = 0; int part = 0; };  ///< bends: from the frame before their middle arc
struct ChainMate { Mate mate; int part = 0; int base = -1; };  ///< between part - 1 and part

/// A mount made into a kinematic chain: constant, apart from the joint values `q` that go with it.
struct Chain {
    std::string mount;
    std::vector<std::shared_ptr<const Part>> parts;  ///< in order, already reversed where asked
    std::vector<Freedom> freedoms;
    std::vector<DiscLimit> discs;
    std::vector<ChainStep> steps;
    std::vector<ChainSolid> solids;
    std::vector<ChainBend> bends;
    std::vector<ChainMass> masses;
    std::vector<ChainMate> mates;
    std::optional<Grip> grip;
    std::string support, attachment, group;          ///< what carries the whole mount
    std::vector<int> partFrame;                      ///< frame of each part's base port
    std::optional<SwitchFace> face;                  ///< of the last part, when it is a switch
    Vec3 operatingAxis{0, 0, -1};                    ///< in the last frame
    int freedomCount() const { return static_cast<int>(freedoms.size()); }
};

struct ChainMade { std::optional<Chain> chain; Eigen::VectorXd q; std::string problem; int part = -1; };
/// Compiles a mount; `q` holds its present values (home where none is given, not clamped).
/// Ports that do not mate still make a chain (Fit says so); an unknown support, attachment or part,
/// a first part that has no grip for that attachment, or a switch in the middle do not.
/// `find` looks a part up by id.
ChainMade makeChain(const Mount& mount, const Situation& situation,
                    const std::function<std::shared_ptr<const Part>(const std::string&)>& find);
/// Writes joint values back into the mount's definition.
Mount withValues(const Mount& mount, const Chain& chain, const Eigen::VectorXd& q);

/// Pose of every frame in W, size steps + 1.
struct ChainPoses { std::vector<Pose> X_WF; const Pose& last() const { return X_WF.back(); } };
void forward(const Chain& chain, const Eigen::Ref<const Eigen::VectorXd>& q, ChainPoses& out);
ChainPoses forward(const Chain& chain, const Eigen::Ref<const Eigen::VectorXd>& q);

/// Geometric Jacobian at the last frame's origin, W axes: rows 0-2 metres of the origin, rows 3-5
/// rotation vector, per unit of each freedom. Analytic for every element, bends included.
Eigen::Matrix<double, 6, Eigen::Dynamic> jacobian(const Chain& chain, const Eigen::Ref<const Eigen::VectorXd>& q, const ChainPoses& poses);

struct PlacedSolid { Solid solid_W; int part = 0; bool jaw = false; };
/// All solids of the mount in W; bends as capsules within tolerance::bendSagitta_m of the neck.
std::vector<PlacedSolid> placedSolids(const Chain& chain, const Eigen::Ref<const Eigen::VectorXd>& q, const ChainPoses& poses);

/// The value brought inside its limits: boxes clamped, discs scaled back, full turns wrapped to (-pi, pi].
Eigen::VectorXd clamped(const Chain& chain, Eigen::VectorXd q);
/// How far freedom i is outside its limits (0 inside), discs counted on their first component.
double outside(const Chain& chain, const Eigen::VectorXd& q, int i);
/// The n-th detent of a freedom that has steps: angles count from 0, slides from their shortest; and the n
/// of the detent nearest to a value that is within the limits.
double detentValue(const Freedom& freedom, int n);
int nearestDetent(const Freedom& freedom, double value);

}  // namespace hither
