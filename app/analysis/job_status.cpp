#include "app/analysis/job_status.h"

#include <algorithm>

#include <QCoreApplication>

namespace hither {
namespace {

using State = StepStatus::State;
QString tr(const char* text) { return QCoreApplication::translate("JobStatus", text); }
QString counted(const char* text, int n) { return QCoreApplication::translate("JobStatus", text, nullptr, n); }

StepStatus supportStatus(const Plan& plan) {
    if (plan.supports.empty()) return {State::missing, tr("Choose what the person sits or lies on")};
    QString names = QString::fromStdString(plan.supports.front().name);
    if (names.isEmpty()) names = QString::fromStdString(plan.supports.front().kind);
    if (plan.supports.size() > 1) names = tr("%1 and %2 more").arg(names).arg(plan.supports.size() - 1);
    return {State::done, names};
}

StepStatus personStatus(const Plan& plan) {
    if (!plan.person) return {State::missing, tr("Say who it is for (a pseudonym)")};
    return {State::done, plan.person->name.empty() ? tr("No pseudonym yet") : QString::fromStdString(plan.person->name)};
}

StepStatus siteStatus(const Plan& plan) {
    if (plan.sites.empty()) return {State::missing, tr("Say where the movement is")};
    QString names = QString::fromStdString(plan.sites.front().name);
    if (plan.sites.size() > 1) names = tr("%1 and %2 more").arg(names).arg(plan.sites.size() - 1);
    return {State::done, names};
}

StepStatus buildStatus(const Plan& plan, const PlanOption* option) {
    if (!option || option->mounts.empty()) return {State::missing, tr("Put a grip on the support")};
    int withoutSwitch = 0, withoutSite = 0;
    for (const Mount& m : option->mounts) {
        const Part* last = m.parts.empty() ? nullptr : plan.part(m.parts.back().part);
        if (!last || !last->face) ++withoutSwitch;
        else if (m.site.empty()) ++withoutSite;
    }
    if (withoutSwitch) return {State::attention, counted("%n mount(s) end without a switch", withoutSwitch)};
    if (withoutSite) return {State::attention, counted("%n switch(es) serve no site yet", withoutSite)};
    int parts = 0;
    for (const Mount& m : option->mounts) parts += static_cast<int>(m.parts.size());
    return {State::done, counted("%n part(s)", parts)};
}

StepStatus checkStatus(const PlanOption* option, const Analysis& analysis) {
    if (!option || option->mounts.empty()) return {State::missing, tr("Nothing to check yet")};
    const auto latest = analysis.latest();
    if (!latest || latest->option != option->id) return {State::missing, tr("Not computed yet")};
    if (!latest->setup) return {State::attention, tr("Cannot be set up as it is")};
    int misses = 0, unknown = 0;
    for (const Finding& f : latest->findings) {
        misses += f.verdict == Verdict::misses;
        unknown += f.verdict == Verdict::unknown;
    }
    if (misses) return {State::attention, counted("%n check(s) missed", misses)};
    if (unknown) return {State::attention, counted("%n check(s) unknown", unknown)};
    return {State::done, tr("Passes these checks")};
}

}  // namespace

QString stepName(JobStep step) {
    switch (step) {
        case JobStep::support: return tr("Support");
        case JobStep::person: return tr("Person");
        case JobStep::site: return tr("Site");
        case JobStep::build: return tr("Build");
        case JobStep::check: return tr("Check");
        case JobStep::handOver: break;
    }
    return tr("Hand over");
}

std::array<StepStatus, jobSteps> jobStatus(const Document& document, const ViewState& view, const Analysis& analysis) {
    const Plan& plan = document.plan();
    const PlanOption* option = view.planOption();
    StepStatus handOver{State::missing, QCoreApplication::translate("JobStatus", "Not saved yet")};
    if (document.readOnly()) handOver = {State::done, tr("Open to read only")};
    else if (!document.path().isEmpty()) handOver = document.modified() ? StepStatus{State::attention, tr("Changes not saved")} : StepStatus{State::done, tr("Saved")};
    return {supportStatus(plan), personStatus(plan), siteStatus(plan), buildStatus(plan, option), checkStatus(option, analysis), handOver};
}

}  // namespace hither
