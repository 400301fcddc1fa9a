#include "core/ways/room.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "core/ways/ways.h"

namespace hither {
namespace {

std::vector<Solid> solidsOf(const std::vector<Obstacle>& obstacles) {
    std::vector<Solid> out;
    for (const Obstacle& o : obstacles) out.push_back(o.solid_W);
    return out;
}

}  // namespace

Room::Room(const Setup& setup, std::size_t index, const CheckLimits& limits)
    : setup_(setup), index_(index), limits_(limits), obstacles_(obstaclesOf(setup, index)), tree_(solidsOf(obstacles_)) {
    for (const Obstacle& o : obstacles_) margins_.insert(o.keepOutMargin_m);
    margins_.insert({limits.clearanceBody_m, limits.clearanceSupport_m, limits.clearanceMount_m, 0.0});
}

double Room::operator()(const Eigen::VectorXd& q) const {
    const SetupMount& m = setup_.mounts[index_];
    const std::vector<PlacedSolid> pieces = placedSolids(m.chain, q, forward(m.chain, q));
    std::vector<Solid> mine;
    for (const PlacedSolid& piece : pieces) mine.push_back(piece.solid_W);
    if (mine.empty() || obstacles_.empty()) return enoughRoom_m;
    const SolidTree tree(std::move(mine));
    double room = enoughRoom_m;
    for (const double need : margins_) {
        const SolidTree::Nearest near = tree.nearest(tree_, room + need, [&](int a, int b) {
            const PlacedSolid& piece = pieces[static_cast<std::size_t>(a)];
            const Obstacle& o = obstacles_[static_cast<std::size_t>(b)];
            const std::optional<double> asked = requiredMargin(setup_, index_, piece, o, limits_);
            return !asked || *asked != need || meetsOnPurpose(setup_, index_, piece, o);
        });
        if (near.mine >= 0) room = std::min(room, near.distance.distance - need);
    }
    return room;
}

}  // namespace hither
