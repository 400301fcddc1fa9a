#include "app/panels/finding_figures.h"

#include <algorithm>
#include <functional>

#include <QCoreApplication>

#include "app/dialogs/part_figures_words.h"
#include "core/plan/edits/part_figures.h"

namespace hither {
namespace {

bool begins(const std::string& text, const char* with) { return text.rfind(with, 0) == 0; }
bool ends(const std::string& text, const std::string& with) { return text.size() >= with.size() && text.compare(text.size() - with.size(), with.size(), with) == 0; }

/// Collects the figures of one part that `wanted` names and that are not measured.
void collect(std::vector<FigureBehind>& out, const Plan& plan, const std::string& id, const std::function<bool(const std::string&)>& wanted) {
    const Part* part = plan.part(id);
    if (!part) return;
    for (const NamedFigure& f : figuresOf(*part)) {
        if (f.figure.basis.kind == BasisKind::measured || !wanted(f.place)) continue;
        if (std::any_of(out.begin(), out.end(), [&](const FigureBehind& b) { return b.part == id && b.place == f.place; })) continue;
        out.push_back({id, f.place, QCoreApplication::translate("hither::FindingFigures", "%1, %2").arg(figureWords(*part, f.place).name, QString::fromStdString(part->name)), f.figure.basis.kind});
    }
}

bool isMass(const std::string& place) { return ends(place, "/mass"); }

void collectMassesBeyond(std::vector<FigureBehind>& out, const Plan& plan, const PlanOption& option, const Subject& from) {
    for (const Mount& m : option.mounts)
        if (m.id == from.id)
            for (std::size_t i = static_cast<std::size_t>(std::max(from.part, 0)) + 1; i < m.parts.size(); ++i) collect(out, plan, m.parts[i].part, isMass);
}

}  // namespace

std::vector<FigureBehind> figuresBehind(const Finding& f, const Plan& plan, const std::string& optionId) {
    std::vector<FigureBehind> out;
    const PlanOption* option = plan.option(optionId);
    std::vector<const Subject*> parts;
    for (const Subject& s : f.subjects) if (s.kind == Subject::Kind::part) parts.push_back(&s);
    if (!option || parts.empty()) return out;
    const Subject& a = *parts.front();
    if (begins(f.key, "fit.tube") || begins(f.key, "fit.plate") || begins(f.key, "fit.cloth")) {
        collect(out, plan, a.piece, [](const std::string& p) { return begins(p, "grips/") && (ends(p, "/min") || ends(p, "/max")); });
    } else if (begins(f.key, "fit.mate") || begins(f.key, "fit.thread_strength")) {
        // The screw and its socket: the first part's outlet, the second's base.
        collect(out, plan, a.piece, [](const std::string& p) { return p == "outlet/length"; });
        if (parts.size() > 1) collect(out, plan, parts[1]->piece, [](const std::string& p) { return begins(p, "bases/"); });
        if (begins(f.key, "fit.thread_strength")) collectMassesBeyond(out, plan, *option, a);
    } else if (begins(f.key, "fit.rated_load")) {
        collect(out, plan, a.piece, [](const std::string& p) { return p == "rated_load"; });
        collectMassesBeyond(out, plan, *option, a);
    } else if (begins(f.key, "aim.")) {
        for (const Subject* s : parts) collect(out, plan, s->piece, [](const std::string& p) { return p == "face/angle_tolerance"; });
    }
    std::stable_partition(out.begin(), out.end(), [](const FigureBehind& b) { return b.basis == BasisKind::unknown; });
    return out;
}

}  // namespace hither
