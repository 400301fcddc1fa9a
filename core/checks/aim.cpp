#include <algorithm>
#include <cmath>

#include "core/checks/checks.h"
#include "core/checks/subjects.h"

namespace hither {

std::vector<Finding> checkAim(const Setup& setup, const CheckContext&) {
    std::vector<Finding> out;
    for (const SetupMount& m : setup.mounts) {
        const Site* site = setup.situation.site(m.mount.site);
        if (!m.chain.face || !site) continue;
        const SwitchFace& face = *m.chain.face;
        const Pose X_WFace = forward(m.chain, m.q).last();
        const Vec3 axis_W = (X_WFace.linear() * m.chain.operatingAxis).normalized();
        const double angle = std::atan2(axis_W.cross(site->d_W).norm(), axis_W.dot(site->d_W));
        Finding f = makeFinding(CheckKind::aim, "aim",
                                {partSubject(m, static_cast<int>(m.chain.parts.size()) - 1), siteSubject(*site)});
        f.id = findingId("aim", {mountSubject(m)});
        f.measure = Measure::angle;
        f.value = angle;
        f.limit = site->angleTolerance_rad;
        f.basis = site->basis;
        f.words["whose"] = "the site allows";
        if (face.angleTolerance_rad.known()) {
            f.basis = weakest(f.basis, face.angleTolerance_rad.basis.kind);
            if (*face.angleTolerance_rad.value < *f.limit) {
                f.limit = *face.angleTolerance_rad.value;
                f.words["whose"] = "the switch allows";
            }
        }
        for (const auto& part : m.chain.parts) f.basis = weakest(f.basis, part->dimensionsBasis.kind);
        f.verdict = judgeAtMost(angle, *f.limit);
        f.key = f.verdict == Verdict::misses ? "aim.off" : "aim.faces";
        if (site->force_N.known() && face.action != SwitchFace::Action::sense) {
            f.facts["arrives"] = {*site->force_N.value * std::max(0.0, std::cos(angle)), Measure::force};
            f.facts["force"] = {*site->force_N.value, Measure::force};
            f.key += ".force";
        }
        f.witness = Witness{X_WFace.translation(), X_WFace.translation() + 0.1 * axis_W};
        if (f.verdict == Verdict::misses) {
            Remedy remedy;
            remedy.kind = Remedy::Kind::solve;
            remedy.mount = m.mount.id;
            remedy.key = "remedy.solve";
            f.remedy = remedy;
        }
        out.push_back(f);
    }
    return out;
}

}  // namespace hither
