#include "app/panels/finding_words.h"

#include <algorithm>
#include <cmath>

#include <QStringList>

#include "app/widgets/verdict_mark.h"

namespace hither {

LimitIs limitOf(const Finding& f) {
    if (!f.value || !f.limit || *f.value == *f.limit || f.verdict == Verdict::unknown) return LimitIs::unclear;
    const bool above = *f.value > *f.limit;
    return above == (f.verdict == Verdict::misses) ? LimitIs::most : LimitIs::least;
}

QString FindingWords::heading(Verdict verdict) {
    switch (verdict) {
        case Verdict::misses: return tr("Missed");
        case Verdict::unknown: return tr("Unknown");
        case Verdict::close: return tr("Close");
        case Verdict::meets: break;
    }
    return tr("Met");
}

QString FindingWords::basis(BasisKind kind) {
    switch (kind) {
        case BasisKind::measured: return tr("measured");
        case BasisKind::published: return tr("published");
        case BasisKind::assumed: return tr("assumed");
        case BasisKind::unknown: break;
    }
    return tr("unknown");
}

QString FindingWords::valueAgainstLimit(const Finding& f, UnitSystem units) {
    const QString value = QString::fromStdString(valueWords(f, units)), limit = QString::fromStdString(limitWords(f, units));
    if (value.isEmpty()) return limit.isEmpty() ? QString() : tr("limit %1").arg(limit);
    if (limit.isEmpty()) return value;
    switch (limitOf(f)) {
        case LimitIs::most: return tr("%1, at most %2").arg(value, limit);
        case LimitIs::least: return tr("%1, at least %2").arg(value, limit);
        case LimitIs::unclear: break;
    }
    return tr("%1, limit %2").arg(value, limit);
}

QString FindingWords::overall(const std::vector<Finding>& findings, const Plan& plan, const std::string& option) {
    int missed = 0, unknown = 0, close = 0, accepted = 0;
    for (const Finding& f : findings) {
        if (f.verdict == Verdict::misses) ++missed;
        if (f.verdict == Verdict::unknown) ++unknown;
        if (f.verdict == Verdict::close) ++close;
        if ((f.verdict == Verdict::misses || f.verdict == Verdict::unknown) && acceptanceOf(plan, option, f.id)) ++accepted;
    }
    QStringList parts;
    if (missed) parts << tr("%n missed", nullptr, missed);
    if (unknown) parts << tr("%n unknown", nullptr, unknown);
    if (accepted) parts << tr("%n of them accepted with a note", nullptr, accepted);
    if (missed + unknown == 0) return close ? tr("Passes these checks, %n of them closely", nullptr, close) : tr("Passes these checks");
    const QString list = parts.join(tr(", "));
    return missed + unknown > accepted ? tr("%1 – not ready").arg(list) : tr("%1 – read the notes").arg(list);
}

QString FindingWords::accepted(const AcceptedFinding& a) {
    return tr("Accepted by %1 on %2: %3").arg(QString::fromStdString(a.who), QString::fromStdString(a.when_utc).left(10), QString::fromStdString(a.note));
}

QString FindingWords::problem(const PlanProblem& problem, const Plan& plan) {
    QString what = QString::fromStdString(problem.what);
    if (!what.isEmpty()) what[0] = what[0].toUpper();
    if (!what.endsWith('.')) what += '.';
    const QStringList at = QString::fromStdString(problem.where).split('/');
    const auto number = [&](qsizetype i) { return i < at.size() ? at[i].toInt() : -1; };
    const auto name = [](const std::string& named, const std::string& id) { return QString::fromStdString(named.empty() ? id : named); };
    const auto inside = [](int i, std::size_t count) { return i >= 0 && static_cast<std::size_t>(i) < count; };
    QString where;
    if (at.first() == "options" && inside(number(1), plan.options.size())) {
        const PlanOption& option = plan.options[static_cast<std::size_t>(number(1))];
        if (at.value(2) == "mounts" && inside(number(3), option.mounts.size())) {
            const Mount& mount = option.mounts[static_cast<std::size_t>(number(3))];
            where = name(mount.name, mount.id);
            if (at.value(4) == "parts" && inside(number(5), mount.parts.size())) {
                const std::string& id = mount.parts[static_cast<std::size_t>(number(5))].part;
                const Part* part = plan.part(id);
                where += tr(", ") + name(part ? part->name : std::string(), id);
            }
        } else {
            where = name(option.name, option.id);
        }
    } else if (at.first() == "supports" && inside(number(1), plan.supports.size())) {
        const SupportSpec& support = plan.supports[static_cast<std::size_t>(number(1))];
        where = name(support.name, support.id);
    } else if (at.first() == "sites" && inside(number(1), plan.sites.size())) {
        const SiteSpec& site = plan.sites[static_cast<std::size_t>(number(1))];
        where = name(site.name, site.id);
    } else if (at.first() == "person") {
        where = tr("The person");
    }
    return where.isEmpty() ? what : tr("%1: %2").arg(where, what);
}

QString FindingWords::spoken(const Finding& f, const AcceptedFinding* accepted, UnitSystem units) {
    QString out = tr("%1, %2. %3").arg(verdictWord(f.verdict), checkWord(f.check), QString::fromStdString(sentence(f, units)));
    if (const QString value = valueAgainstLimit(f, units); !value.isEmpty()) out += ' ' + tr("Value %1.").arg(value);
    out += ' ' + tr("Figures: %1.").arg(basis(f.basis));
    if (const std::string remedy = remedySentence(f, units); !remedy.empty()) out += ' ' + tr("Remedy: %1").arg(QString::fromStdString(remedy));
    if (accepted) out += ' ' + FindingWords::accepted(*accepted);
    return out;
}

const AcceptedFinding* acceptanceOf(const Plan& plan, const std::string& option, const std::string& finding) {
    const auto found = std::find_if(plan.accepted.begin(), plan.accepted.end(), [&](const AcceptedFinding& a) { return a.option == option && a.finding == finding; });
    return found == plan.accepted.end() ? nullptr : &*found;
}

Picked pickedOf(const Subject& s, const Situation* situation) {
    switch (s.kind) {
        case Subject::Kind::mount: return Picked::mount(s.id);
        case Subject::Kind::part: return Picked::partOf(s.id, s.part);
        case Subject::Kind::body: return Picked::person(s.id);
        case Subject::Kind::keepOut: return Picked::keepOut(s.id);
        case Subject::Kind::site: return Picked::site(s.id);
        case Subject::Kind::support: break;
    }
    if (situation)
        for (const Support& support : situation->supports)
            if (support.id == s.id)
                for (const Attachment& a : support.attachments)
                    if (a.id == s.piece) return Picked::attachment(s.id, s.piece);
    return Picked::support(s.id, s.piece);
}

}  // namespace hither
