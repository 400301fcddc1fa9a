#include "core/geometry/solid_tree.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace hither {
namespace {

using Box = Eigen::AlignedBox3d;

// A lower bound of the signed distance of anything inside the two boxes: the boxes' own signed distance.
double lowerBound(const Box& a, const Box& b) {
    const Eigen::Array3d gap = (b.min() - a.max()).array().max((a.min() - b.max()).array());
    const double most = gap.maxCoeff();
    return most <= 0 ? most : gap.max(0.0).matrix().norm();
}

// Where the ray enters the box, infinity when it misses it.
double entry(const Box& box, const Vec3& origin, const Vec3& u) {
    double enter = 0;
    double leave = std::numeric_limits<double>::infinity();
    for (int i = 0; i < 3; ++i) {
        if (u[i] == 0) {
            if (origin[i] < box.min()[i] || origin[i] > box.max()[i]) return std::numeric_limits<double>::infinity();
            continue;
        }
        const double t0 = (box.min()[i] - origin[i]) / u[i];
        const double t1 = (box.max()[i] - origin[i]) / u[i];
        enter = std::max(enter, std::min(t0, t1));
        leave = std::min(leave, std::max(t0, t1));
    }
    return enter <= leave ? enter : std::numeric_limits<double>::infinity();
}

// Bounds are widened by this share of the coordinates, so that rounding in them never hides a solid.
constexpr double slack = 1e-12;

}  // namespace

SolidTree::SolidTree(std::vector<Solid> solids_W) : solids_(std::move(solids_W)) {
    if (solids_.empty()) return;
    std::vector<Box> boxes;
    boxes.reserve(solids_.size());
    for (const Solid& s : solids_) {
        Box box = s.bounds(Pose::Identity());
        const Vec3 margin = Vec3::Constant(slack * (1.0 + box.min().cwiseAbs().cwiseMax(box.max().cwiseAbs()).maxCoeff()));
        box.min() -= margin;
        box.max() += margin;
        boxes.push_back(box);
    }
    order_.resize(solids_.size());
    for (std::size_t i = 0; i < order_.size(); ++i) order_[i] = static_cast<int>(i);
    nodes_.reserve(2 * solids_.size());
    Node root;
    root.count = static_cast<int>(solids_.size());
    nodes_.push_back(root);
    build(0, boxes);
}

// Halves at the median of the centres along the longest side of their bounds, down to two solids.
void SolidTree::build(int node, const std::vector<Box>& boxes) {
    const auto at = static_cast<std::size_t>(node);
    const int first = nodes_[at].first;
    const int count = nodes_[at].count;
    Box centres;
    for (int i = first; i < first + count; ++i) {
        const Box& b = boxes[static_cast<std::size_t>(order_[static_cast<std::size_t>(i)])];
        nodes_[at].box.extend(b);
        centres.extend(Vec3(b.center()));
    }
    if (count <= 2) return;
    Eigen::Index axis = 0;
    centres.sizes().maxCoeff(&axis);
    const int half = count / 2;
    std::nth_element(order_.begin() + first, order_.begin() + first + half, order_.begin() + first + count, [&](int i, int j) {
        const double a = boxes[static_cast<std::size_t>(i)].center()[axis];
        const double b = boxes[static_cast<std::size_t>(j)].center()[axis];
        return a < b || (a == b && i < j);
    });
    const int left = static_cast<int>(nodes_.size());
    nodes_[at].left = left;
    Node child;
    child.first = first;
    child.count = half;
    nodes_.push_back(child);
    child.first = first + half;
    child.count = count - half;
    nodes_.push_back(child);
    build(left, boxes);
    build(left + 1, boxes);
}

// Calls visit(i, j) for every pair whose bounds are at or below `upTo`, which may shrink meanwhile; nearer
// boxes first.
template <class Visit>
void SolidTree::visitPairs(const SolidTree& other, const double& upTo, const Visit& visit) const {
    if (nodes_.empty() || other.nodes_.empty()) return;
    struct Entry {
        int a;
        int b;
        double bound;
    };
    std::vector<Entry> stack;
    stack.reserve(64);
    stack.push_back({0, 0, lowerBound(nodes_[0].box, other.nodes_[0].box)});
    while (!stack.empty()) {
        const Entry e = stack.back();
        stack.pop_back();
        if (e.bound > upTo) continue;
        const Node& a = nodes_[static_cast<std::size_t>(e.a)];
        const Node& b = other.nodes_[static_cast<std::size_t>(e.b)];
        if (a.left < 0 && b.left < 0) {
            for (int i = a.first; i < a.first + a.count; ++i) {
                for (int j = b.first; j < b.first + b.count; ++j) {
                    visit(order_[static_cast<std::size_t>(i)], other.order_[static_cast<std::size_t>(j)]);
                }
            }
            continue;
        }
        const bool splitA = b.left < 0 || (a.left >= 0 && a.box.diagonal().squaredNorm() >= b.box.diagonal().squaredNorm());
        std::array<Entry, 2> child;
        for (int k = 0; k < 2; ++k) {
            Entry& c = child[static_cast<std::size_t>(k)];
            c.a = splitA ? a.left + k : e.a;
            c.b = splitA ? e.b : b.left + k;
            c.bound = lowerBound(nodes_[static_cast<std::size_t>(c.a)].box, other.nodes_[static_cast<std::size_t>(c.b)].box);
        }
        const bool firstNearer = child[0].bound <= child[1].bound;
        stack.push_back(child[firstNearer ? 1 : 0]);
        stack.push_back(child[firstNearer ? 0 : 1]);
    }
}

SolidTree::Nearest SolidTree::nearest(const SolidTree& other, double upTo, const std::function<bool(int, int)>& skip) const {
    Nearest best;
    double limit = upTo;
    visitPairs(other, limit, [&](int i, int j) {
        if (skip && skip(i, j)) return;
        const Distance d = distance(solids_[static_cast<std::size_t>(i)], other.solids_[static_cast<std::size_t>(j)]);
        if (!(d.distance < upTo) || d.distance > limit) return;
        // Of equal distances the lower indices win, so that the answer does not depend on the tree.
        if (best.mine >= 0 && d.distance == limit && std::pair(i, j) > std::pair(best.mine, best.theirs)) return;
        best = {i, j, d};
        limit = d.distance;
    });
    return best;
}

std::vector<SolidTree::Nearest> SolidTree::allWithin(const SolidTree& other, double upTo, const std::function<bool(int, int)>& skip) const {
    std::vector<Nearest> found;
    visitPairs(other, upTo, [&](int i, int j) {
        if (skip && skip(i, j)) return;
        const Distance d = distance(solids_[static_cast<std::size_t>(i)], other.solids_[static_cast<std::size_t>(j)]);
        if (d.distance <= upTo) found.push_back({i, j, d});
    });
    std::sort(found.begin(), found.end(), [](const Nearest& a, const Nearest& b) {
        return std::pair(a.mine, a.theirs) < std::pair(b.mine, b.theirs);
    });
    return found;
}

SolidTree::Hit SolidTree::castRay(const Ray& ray) const {
    Hit best;
    if (nodes_.empty()) return best;
    const Vec3 u = ray.direction_W.normalized();
    double limit = std::numeric_limits<double>::infinity();
    std::vector<int> stack{0};
    while (!stack.empty()) {
        const Node& node = nodes_[static_cast<std::size_t>(stack.back())];
        stack.pop_back();
        const double enter = entry(node.box, ray.origin_W, u);
        if (enter == std::numeric_limits<double>::infinity() || enter > limit) continue;
        if (node.left >= 0) {
            const double e0 = entry(nodes_[static_cast<std::size_t>(node.left)].box, ray.origin_W, u);
            const double e1 = entry(nodes_[static_cast<std::size_t>(node.left + 1)].box, ray.origin_W, u);
            stack.push_back(e0 <= e1 ? node.left + 1 : node.left);
            stack.push_back(e0 <= e1 ? node.left : node.left + 1);
            continue;
        }
        for (int i = node.first; i < node.first + node.count; ++i) {
            const int index = order_[static_cast<std::size_t>(i)];
            const auto hit = hither::castRay(ray, solids_[static_cast<std::size_t>(index)]);
            if (!hit || hit->along_m > limit || (hit->along_m == limit && best.index >= 0 && index > best.index)) continue;
            best = {index, *hit};
            limit = hit->along_m;
        }
    }
    return best;
}

}  // namespace hither
