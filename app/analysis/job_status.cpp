#include "app/analysis/job_status.h"

#include <algorithm>

#include <QCoreApplication>

namespace hither {
namespace {

using State = StepStatus::State;
struct Words {
    Q_DECLARE_TR_FUNCTIONS(JobStatus)
};

StepStatus supportStatus(const Plan& plan) {
    if (plan.supports.empty()) return {State::missing, Words::tr("Choose what the person sits or lies on")};
    QString names = QString::fromStdString(plan.supports.front().name);
    if (names.isEmpty()) names = QString::fromStdString(plan.supports.front().kind);
    if (plan.supports.size() > 1) names = Words::tr("%1 and %2 more").arg(names).arg(plan.supports.size() - 1);
    return {State::done, names};
}

StepStatus personStatus(const Plan& plan) {
    if (!plan.person) return {State::missing, Words::tr("Say who it is for (a pseudonym)")};
    return {State::done, plan.person->name.empty() ? Words::tr("No pseudonym yet") : QString::fromStdString(plan.person->name)};
}

StepStatus siteStatus(const Plan& plan) {
    if (plan.sites.empty()) return {State::missing, Words::tr("Say where the movement is")};
    QString names = QString::fromStdString(plan.sites.front().name);
    if (plan.sites.size() > 1) names = Words::tr("%1 and %2 more").arg(names).arg(plan.sites.size() - 1);
    return {State::done, names};
}

StepStatus buildStatus(const Plan& plan, const PlanOption* option) {
    if (!option || option->mounts.empty()) return {State::missing, Words::tr("Put a grip on the support")};
    int withoutSwitch = 0, withoutSite = 0;
    for (const Mount& m : option->mounts) {
        const Part* last = m.parts.empty() ? nullptr : plan.part(m.parts.back().part);
        if (!last || !last->face) ++withoutSwitch;
        else if (m.site.empty()) ++withoutSite;
    }
    if (withoutSwitch) return {State::attention, Words::tr("%n mount(s) end without a switch", nullptr, withoutSwitch)};
    if (withoutSite) return {State::attention, Words::tr("%n switch(es) serve no site yet", nullptr, withoutSite)};
    int parts = 0;
    for (const Mount& m : option->mounts) parts += static_cast<int>(m.parts.size());
    return {State::done, Words::tr("%n part(s)", nullptr, parts)};
}

StepStatus checkStatus(const PlanOption* option, const Analysis& analysis) {
    if (!option || option->mounts.empty()) return {State::missing, Words::tr("Nothing to check yet")};
    const auto latest = analysis.latest();
    if (!latest || latest->option != option->id) return {State::missing, Words::tr("Not computed yet")};
    if (!latest->setup) return {State::attention, Words::tr("Cannot be set up as it is")};
    int misses = 0, unknown = 0;
    for (const Finding& f : latest->findings) {
        misses += f.verdict == Verdict::misses;
        unknown += f.verdict == Verdict::unknown;
    }
    if (misses) return {State::attention, Words::tr("%n check(s) missed", nullptr, misses)};
    if (unknown) return {State::attention, Words::tr("%n check(s) unknown", nullptr, unknown)};
    return {State::done, Words::tr("Passes these checks")};
}

}  // namespace

QString stepName(JobStep step) {
    switch (step) {
        case JobStep::support: return Words::tr("Support");
        case JobStep::person: return Words::tr("Person");
        case JobStep::site: return Words::tr("Site");
        case JobStep::build: return Words::tr("Build");
        case JobStep::check: return Words::tr("Check");
        case JobStep::handOver: break;
    }
    return Words::tr("Hand over");
}

std::array<StepStatus, jobSteps> jobStatus(const Document& document, const ViewState& view, const Analysis& analysis) {
    const Plan& plan = document.plan();
    const PlanOption* option = view.planOption();
    StepStatus handOver{State::missing, Words::tr("Not saved yet")};
    if (document.readOnly()) handOver = {State::done, Words::tr("Open to read only")};
    else if (!document.path().isEmpty()) handOver = document.modified() ? StepStatus{State::attention, Words::tr("Changes not saved")} : StepStatus{State::done, Words::tr("Saved")};
    return {supportStatus(plan), personStatus(plan), siteStatus(plan), buildStatus(plan, option), checkStatus(option, analysis), handOver};
}

}  // namespace hither
