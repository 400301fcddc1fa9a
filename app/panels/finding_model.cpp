#include "app/panels/finding_model.h"

#include <algorithm>
#include <utility>

#include "app/panels/finding_words.h"
#include "app/widgets/verdict_mark.h"

namespace hither {
namespace {

std::string headingKey(Verdict verdict) { return std::string("heading ") + word(verdict); }

FindingRow problemRow(const PlanProblem& problem, std::size_t number, const Plan& plan) {
    FindingRow row;
    row.kind = FindingRow::Kind::problem;
    row.key = "problem " + std::to_string(number);
    row.title = FindingModel::tr("Cannot be checked yet");
    row.text = FindingWords::problem(problem, plan);
    row.spoken = row.title + ". " + row.text;
    return row;
}

FindingRow findingRow(const Finding& f, const Plan& plan, const std::string& option) {
    FindingRow row;
    row.key = f.id;
    row.verdict = f.verdict;
    row.title = checkWord(f.check);
    row.text = QString::fromStdString(sentence(f, plan.display));
    row.value = FindingWords::valueAgainstLimit(f, plan.display);
    row.basis = FindingWords::basis(f.basis);
    const AcceptedFinding* accepted = acceptanceOf(plan, option, f.id);
    if (accepted) row.accepted = FindingWords::accepted(*accepted);
    row.spoken = FindingWords::spoken(f, accepted, plan.display);
    return row;
}

}  // namespace

void FindingModel::show(std::shared_ptr<const Analysed> analysed) {
    analysed_ = std::move(analysed);
    become(wanted());
}

std::vector<FindingRow> FindingModel::wanted() const {
    std::vector<FindingRow> out;
    if (!analysed_ || !analysed_->plan) return out;
    const Plan& plan = *analysed_->plan;
    for (std::size_t i = 0; i < analysed_->problems.size(); ++i) out.push_back(problemRow(analysed_->problems[i], i, plan));
    for (const Verdict verdict : {Verdict::misses, Verdict::unknown, Verdict::close, Verdict::meets}) {
        const auto count = std::count_if(analysed_->findings.begin(), analysed_->findings.end(), [&](const Finding& f) { return f.verdict == verdict; });
        if (count == 0) continue;
        FindingRow heading;
        heading.kind = FindingRow::Kind::heading;
        heading.key = headingKey(verdict);
        heading.verdict = verdict;
        heading.open = open_[static_cast<std::size_t>(verdict)];
        heading.title = tr("%1 (%2)").arg(FindingWords::heading(verdict)).arg(count);
        heading.spoken = heading.open ? tr("%1, group, open").arg(heading.title) : tr("%1, group, closed").arg(heading.title);
        out.push_back(heading);
        if (!heading.open) continue;
        for (const Finding& f : analysed_->findings) if (f.verdict == verdict) out.push_back(findingRow(f, plan, analysed_->option));
    }
    return out;
}

void FindingModel::become(std::vector<FindingRow> wanted) {
    for (int i = static_cast<int>(rows_.size()) - 1; i >= 0; --i) {
        const std::string& key = rows_[static_cast<std::size_t>(i)].key;
        if (std::any_of(wanted.begin(), wanted.end(), [&](const FindingRow& w) { return w.key == key; })) continue;
        beginRemoveRows({}, i, i);
        rows_.erase(rows_.begin() + i);
        endRemoveRows();
    }
    for (std::size_t i = 0; i < wanted.size(); ++i) {
        const auto at = std::find_if(rows_.begin() + static_cast<std::ptrdiff_t>(i), rows_.end(), [&](const FindingRow& r) { return r.key == wanted[i].key; });
        const int to = static_cast<int>(i), from = static_cast<int>(at - rows_.begin());
        if (at == rows_.end()) {
            beginInsertRows({}, to, to);
            rows_.insert(rows_.begin() + to, std::move(wanted[i]));
            endInsertRows();
            continue;
        }
        if (from != to) {
            beginMoveRows({}, from, from, {}, to);
            std::rotate(rows_.begin() + to, rows_.begin() + from, rows_.begin() + from + 1);
            endMoveRows();
        }
        if (rows_[i] == wanted[i]) continue;
        rows_[i] = std::move(wanted[i]);
        emit dataChanged(index(to), index(to));
    }
}

int FindingModel::rowCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : static_cast<int>(rows_.size()); }

QVariant FindingModel::data(const QModelIndex& at, int role) const {
    if (!at.isValid() || at.row() >= rowCount()) return {};
    const FindingRow& r = row(at.row());
    if (role == Qt::DisplayRole) return r.kind == FindingRow::Kind::heading ? r.title : r.text;
    if (role == Qt::AccessibleTextRole) return r.spoken;
    return {};
}

Qt::ItemFlags FindingModel::flags(const QModelIndex& at) const {
    if (!at.isValid()) return Qt::NoItemFlags;
    return row(at.row()).kind == FindingRow::Kind::finding ? Qt::ItemIsEnabled | Qt::ItemIsSelectable : Qt::ItemFlags(Qt::ItemIsEnabled);
}

int FindingModel::rowOf(const std::string& key) const {
    const auto found = std::find_if(rows_.begin(), rows_.end(), [&](const FindingRow& r) { return r.key == key; });
    return found == rows_.end() ? -1 : static_cast<int>(found - rows_.begin());
}

const Finding* FindingModel::finding(const std::string& id) const {
    if (!analysed_) return nullptr;
    const auto found = std::find_if(analysed_->findings.begin(), analysed_->findings.end(), [&](const Finding& f) { return f.id == id; });
    return found == analysed_->findings.end() ? nullptr : &*found;
}

void FindingModel::setOpen(Verdict verdict, bool open) {
    bool& now = open_[static_cast<std::size_t>(verdict)];
    if (now == open) return;
    now = open;
    become(wanted());
}

}  // namespace hither
