#pragma once
#include <functional>
#include <limits>
#include <vector>

#include "core/geometry/distance.h"

namespace hither {

/// A tree of bounding boxes over posed solids, so that a scene query does not test all pairs.
/// Indices are those of the vector it was built from. It keeps a copy of the solids.
class SolidTree {
public:
    explicit SolidTree(std::vector<Solid> solids_W);
    const std::vector<Solid>& solids() const { return solids_; }

    struct Nearest { int mine = -1; int theirs = -1; Distance distance; };  ///< mine/theirs -1: nothing within reach
    /// Least distance between this tree's solids and another's; only distances below `upTo` matter.
    /// Pairs for which `skip(mine, theirs)` says true are left out.
    Nearest nearest(const SolidTree& other, double upTo = std::numeric_limits<double>::infinity(),
                    const std::function<bool(int, int)>& skip = {}) const;
    /// Every pair at or below `upTo`, in index order.
    std::vector<Nearest> allWithin(const SolidTree& other, double upTo, const std::function<bool(int, int)>& skip = {}) const;

    struct Hit { int index = -1; RayHit hit; };
    Hit castRay(const Ray& ray) const;  ///< the nearest hit, index -1 when there is none

private:
    /// `left` >= 0: an inner node whose children are `left` and `left` + 1; otherwise a leaf that
    /// holds the solids order_[first .. first + count).
    struct Node {
        Eigen::AlignedBox3d box;
        int left = -1;
        int first = 0;
        int count = 0;
    };
    void build(int node, const std::vector<Eigen::AlignedBox3d>& boxes);
    template <class Visit>
    void visitPairs(const SolidTree& other, const double& upTo, const Visit& visit) const;

    std::vector<Solid> solids_;
    std::vector<int> order_;
    std::vector<Node> nodes_;
};

}  // namespace hither
