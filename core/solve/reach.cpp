#include "core/solve/reach.h"

#include <algorithm>
#include <cmath>

#include "core/chain/swing.h"

namespace hither {
namespace {

using Kind = ChainStep::Kind;

/// One stiff link between two turning joints: a fixed offset plus slides, in the frame of its start.
struct Link {
    Mat3 R = Mat3::Identity();
    Vec3 offset = Vec3::Zero();
    struct Slide { Vec3 axis; double min, max; };
    std::vector<Slide> slides;

    void fixed(const Pose& X) {
        offset += R * X.translation();
        R = (R * X.linear()).eval();
    }
    /// Farthest from its start: the norm is convex, so an end of each slide; beyond a few slides their
    /// lengths are simply added.
    double longest() const {
        constexpr std::size_t exact = 6;
        const std::size_t n = std::min(slides.size(), exact);
        double most = 0;
        for (unsigned corner = 0; corner < (1u << n); ++corner) {
            Vec3 v = offset;
            for (std::size_t i = 0; i < n; ++i) v += ((corner >> i) & 1u ? slides[i].max : slides[i].min) * slides[i].axis;
            most = std::max(most, v.norm());
        }
        for (std::size_t i = n; i < slides.size(); ++i) most += std::max(std::abs(slides[i].min), std::abs(slides[i].max));
        return most;
    }
};

}  // namespace

double reachShort_m(const Chain& chain, const Eigen::VectorXd& q, const std::vector<char>& fixed, const Vec3& p_W) {
    Link link;
    double reach = 0, apart = -1;
    const auto closeLink = [&] {
        if (apart < 0) {
            // The first link starts in W: the target's distance from what its slides can cover.
            Vec3 left = p_W - link.offset;
            std::vector<Vec3> used;
            for (const Link::Slide& s : link.slides) {
                const bool square = std::all_of(used.begin(), used.end(), [&s](const Vec3& u) { return std::abs(u.dot(s.axis)) < 1e-9; });
                if (!square) {
                    reach += std::max(std::abs(s.min), std::abs(s.max));
                    continue;
                }
                left -= std::clamp(left.dot(s.axis), s.min, std::max(s.min, s.max)) * s.axis;
                used.push_back(s.axis);
            }
            apart = left.norm();
        } else {
            reach += link.longest();
        }
        link = Link();
    };
    for (const ChainStep& step : chain.steps) {
        const bool moves = step.kind != Kind::fixed && !fixed[static_cast<std::size_t>(step.q0)];
        switch (step.kind) {
            case Kind::fixed: link.fixed(step.X); break;
            case Kind::slide:
                if (moves) {
                    const Freedom& f = chain.freedoms[static_cast<std::size_t>(step.q0)];
                    link.slides.push_back({link.R * step.axis, f.min, f.max});
                } else {
                    link.fixed(translation(q[step.q0] * step.axis));
                }
                break;
            case Kind::turn:
                if (moves) closeLink();
                else link.fixed(pose(Eigen::AngleAxisd(q[step.q0], step.axis).toRotationMatrix(), Vec3::Zero()));
                break;
            case Kind::ball:
                if (moves) closeLink();
                else link.fixed(pose(Swing(q[step.q0], q[step.q0 + 1]).rotation() * Eigen::AngleAxisd(q[step.q0 + 2], Vec3::UnitZ()).toRotationMatrix(), Vec3::Zero()));
                break;
            case Kind::bend:
                if (moves) {
                    closeLink();
                    reach += step.arc;
                } else {
                    const Swing swing(step.arc * q[step.q0], step.arc * q[step.q0 + 1]);
                    link.fixed(pose(swing.rotation(), step.arc * swing.arcEnd()));
                }
                break;
        }
    }
    closeLink();
    return std::max(0.0, apart - reach);
}

}  // namespace hither
