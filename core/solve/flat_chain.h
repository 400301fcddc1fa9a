#pragma once
#include <vector>

#include "core/chain/chain.h"

namespace hither {

/// Scalar freedoms of one step: a bend step is one of its neck's three arcs.
int freedomsOf(ChainStep::Kind kind);

/// A chain boiled down for the solver's inner loop: only the freedoms that may move are left, each
/// turn and slide about or along the z of its own frame, everything else merged into the fixed
/// poses between them. Walking it allocates nothing.
class FlatChain {
public:
    /// `fixed[i]`: freedom i keeps its value from `q`. The freedoms of one ball or bend are fixed together.
    FlatChain(const Chain& chain, const Eigen::VectorXd& q, const std::vector<char>& fixed);

    int size() const { return static_cast<int>(freedom_.size()); }
    int freedom(int variable) const { return freedom_[static_cast<std::size_t>(variable)]; }  ///< which freedom of the chain a variable is
    double weight(int variable) const { return weight_[static_cast<std::size_t>(variable)]; }
    /// Radians that a unit of it turns what follows: 1 for angles, 0 for slides, the arc for a bend.
    double turnPerUnit(int variable) const { return turns_[static_cast<std::size_t>(variable)]; }

    struct Box { double min = 0, max = 0; bool bounded = false; };  ///< full turns and disc members are not bounded by a box
    struct Disc { int first = 0; double radius = 0; };
    const std::vector<Box>& boxes() const { return box_; }
    const std::vector<Disc>& discs() const { return disc_; }

    /// Where the last frame is, and for each variable how it moves: turning w_W and the speed of
    /// the point at W's origin, so that the end at p_W moves by v + w x p.
    struct State {
        Mat3 R = Mat3::Identity();
        Vec3 p = Vec3::Zero();
        Eigen::Matrix<double, 3, Eigen::Dynamic> w, v;
    };
    State makeState() const;
    void walk(const Eigen::VectorXd& x, State& state) const;

    Eigen::VectorXd values(const Eigen::VectorXd& q) const;                 ///< variables out of all freedoms
    void putValues(const Eigen::VectorXd& x, Eigen::VectorXd& q) const;     ///< and back, full turns wrapped to (-pi, pi]

private:
    struct Step {
        ChainStep::Kind kind = ChainStep::Kind::fixed;
        Mat3 R = Mat3::Identity();  ///< fixed pose before the joint
        Vec3 p = Vec3::Zero();
        double arc = 0;
        int x0 = 0;
    };
    std::vector<Step> steps_;
    Mat3 lastR_ = Mat3::Identity();
    Vec3 lastP_ = Vec3::Zero();
    std::vector<int> freedom_;
    std::vector<double> weight_, turns_;
    std::vector<char> wraps_;
    std::vector<Box> box_;
    std::vector<Disc> disc_;
};

}  // namespace hither
