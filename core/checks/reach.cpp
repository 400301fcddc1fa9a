#include <algorithm>
#include <cmath>

#include "core/checks/checks.h"
#include "core/checks/serving.h"
#include "core/checks/subjects.h"
#include "core/units/tolerances.h"

namespace hither {
namespace {

/// Share of a joint's range that must be left on the near side before it counts as standing at its
/// end. Common practice, no source.
constexpr double endShare = 0.05;

std::string spokenFreedom(const Freedom& f) {
    switch (f.of) {
        case Freedom::Of::along: return "the place along the rail or edge";
        case Freedom::Of::around: return "the turn round the rail";
        case Freedom::Of::x: return "the place on the face, forward";
        case Freedom::Of::y: return "the place on the face, sideways";
        case Freedom::Of::yaw: return "the turn on the face";
        case Freedom::Of::clocking: return "the turn on its thread";
        case Freedom::Of::joint: break;
    }
    std::string name = f.joint;
    for (char& c : name) if (c == '_' || c == '-') c = ' ';
    return name;
}

Measure measureOf(const Freedom& f) {
    if (f.isAngle) return Measure::angle;
    return f.of == Freedom::Of::joint && f.component > 0 ? Measure::none : Measure::length;
}

/// What is left of a freedom's range on its nearer side, as a share of the range (of the radius for
/// a disc): negative outside. Not for full turns.
double shareLeft(const Chain& chain, const Eigen::VectorXd& q, int i) {
    for (const DiscLimit& disc : chain.discs)
        if (i == disc.first || i == disc.first + 1)
            return disc.radius > 0 ? (disc.radius - std::hypot(q[disc.first], q[disc.first + 1])) / disc.radius : 0.0;
    const Freedom& f = chain.freedoms[static_cast<std::size_t>(i)];
    const double range = f.max - f.min;
    return range > 0 ? std::min(q[i] - f.min, f.max - q[i]) / range : 0.0;
}

bool isSecondOfDisc(const Chain& chain, int i) {
    return std::any_of(chain.discs.begin(), chain.discs.end(), [i](const DiscLimit& d) { return i == d.first + 1; });
}
bool isFirstOfDisc(const Chain& chain, int i) {
    return std::any_of(chain.discs.begin(), chain.discs.end(), [i](const DiscLimit& d) { return i == d.first; });
}

void checkRanges(const SetupMount& m, std::vector<Finding>& out) {
    const Chain& chain = m.chain;
    double least = 1.0;
    int leastFreedom = -1;
    for (int i = 0; i < chain.freedomCount(); ++i) {
        const Freedom& f = chain.freedoms[static_cast<std::size_t>(i)];
        if (isSecondOfDisc(chain, i)) continue;
        // Where a grip stands on its rail, edge or face is judged by Fit.
        if (f.of == Freedom::Of::along || f.of == Freedom::Of::x || f.of == Freedom::Of::y) continue;
        const double over = outside(chain, m.q, i);
        const bool bend = isFirstOfDisc(chain, i) && !f.isAngle;
        if (over > tolerance::limitSlack) {
            Finding g = makeFinding(CheckKind::reach, "reach.range", {partSubject(m, f.part)});
            g.id += "/" + f.joint + "/" + std::to_string(i);
            g.verdict = Verdict::misses;
            g.basis = chain.parts[static_cast<std::size_t>(f.part)]->dimensionsBasis.kind;
            g.words["joint"] = spokenFreedom(f);
            if (bend) {
                // A gooseneck says its limit as a radius: too tight, by how much.
                g.key = "reach.range.bend";
                g.measure = Measure::length;
                g.value = 1.0 / std::hypot(m.q[i], m.q[i + 1]);
                for (const DiscLimit& d : chain.discs) if (d.first == i) g.limit = 1.0 / d.radius;
            } else {
                g.measure = measureOf(f);
                g.value = isFirstOfDisc(chain, i) ? std::hypot(m.q[i], m.q[i + 1]) : m.q[i];
                g.limit = isFirstOfDisc(chain, i) ? *g.value - over : (m.q[i] < f.min ? f.min : f.max);
            }
            out.push_back(g);
            continue;
        }
        if (f.fullTurn || f.of != Freedom::Of::joint || f.max <= f.min) continue;
        const double share = shareLeft(chain, m.q, i);
        if (share < least) { least = share; leastFreedom = i; }
        if (f.step && *f.step > 0 && !isFirstOfDisc(chain, i)) {
            const double nearest = detentValue(f, nearestDetent(f, m.q[i]));
            const double off = std::abs(m.q[i] - nearest);
            const double most = f.isAngle ? radians(0.5) : 0.0005;
            if (off > most) {
                Finding g = makeFinding(CheckKind::reach, "reach.detent", {partSubject(m, f.part)});
                g.id += "/" + f.joint;
                g.verdict = Verdict::misses;
                g.basis = chain.parts[static_cast<std::size_t>(f.part)]->dimensionsBasis.kind;
                g.measure = measureOf(f);
                g.value = m.q[i];
                g.limit = nearest;
                g.words["joint"] = spokenFreedom(f);
                g.facts["step"] = {*f.step, g.measure};
                Remedy remedy;
                remedy.kind = Remedy::Kind::solve;
                remedy.mount = m.mount.id;
                remedy.key = "remedy.solve";
                g.remedy = remedy;
                out.push_back(g);
            }
        }
    }
    if (leastFreedom < 0) return;
    const Freedom& f = chain.freedoms[static_cast<std::size_t>(leastFreedom)];
    Finding g = makeFinding(CheckKind::reach, "reach.range_end", {partSubject(m, f.part)});
    g.id = findingId("reach.range_end", {mountSubject(m)});
    g.measure = Measure::ratio;
    g.value = least;
    g.limit = endShare;
    g.verdict = least < endShare ? Verdict::close : Verdict::meets;
    g.key += least < endShare ? ".near" : ".away";
    g.basis = chain.parts[static_cast<std::size_t>(f.part)]->dimensionsBasis.kind;
    g.words["joint"] = spokenFreedom(f);
    out.push_back(g);
}

}  // namespace

std::vector<Finding> checkReach(const Setup& setup, const CheckContext&) {
    std::vector<Finding> out;
    for (const SetupMount& m : setup.mounts) {
        const Site* site = setup.situation.site(m.mount.site);
        if (m.chain.face && site) {
            const ChainPoses poses = forward(m.chain, m.q);
            const double off = faceToPoint(m, poses.last(), site->p_W);
            Finding f = makeFinding(CheckKind::reach, "reach.site",
                                    {partSubject(m, static_cast<int>(m.chain.parts.size()) - 1), siteSubject(*site)});
            f.id = findingId("reach.site", {mountSubject(m)});
            f.measure = Measure::length;
            f.value = off;
            f.limit = site->tolerance_m;
            f.verdict = judgeAtMost(off, site->tolerance_m);
            f.basis = weakest(placingBasis(m, setup.situation), site->basis);
            f.key += f.verdict == Verdict::misses ? ".short" : ".there";
            f.witness = Witness{poses.last().translation(), site->p_W};
            if (f.verdict != Verdict::meets) {
                Remedy remedy;
                remedy.kind = Remedy::Kind::solve;
                remedy.mount = m.mount.id;
                remedy.key = "remedy.solve";
                f.remedy = remedy;
            }
            out.push_back(f);
        } else if (m.chain.face) {
            Finding f = makeFinding(CheckKind::reach, "reach.no_site", {mountSubject(m)});
            f.verdict = Verdict::unknown;
            f.basis = BasisKind::unknown;
            out.push_back(f);
        }
        checkRanges(m, out);
    }
    return out;
}

}  // namespace hither
