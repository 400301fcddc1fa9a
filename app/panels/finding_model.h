#pragma once
#include <array>
#include <vector>

#include <QAbstractListModel>
#include <QString>

#include "app/analysis/analysed.h"

namespace hither {

/// What one row of the findings list shows.
struct FindingRow {
    enum class Kind { heading, finding, problem };
    Kind kind = Kind::finding;
    std::string key;             ///< the finding's id; made up for headings and problems
    Verdict verdict = Verdict::unknown;
    QString title, text;         ///< check (or heading) word; sentence
    QString value, basis, accepted, spoken;
    bool open = true;            ///< heading: its rows are listed
    bool operator==(const FindingRow&) const = default;
};

/// The rows of one option's findings: grouped under a heading a verdict, worst first, each group in the
/// core's order. New results change the rows in place, row by row, so that whoever shows them keeps
/// selection and place; rows are told apart by the finding's identity.
class FindingModel : public QAbstractListModel {
    Q_OBJECT

public:
    using QAbstractListModel::QAbstractListModel;

    /// Null: nothing is computed yet.
    void show(std::shared_ptr<const Analysed> analysed);
    const Analysed* analysed() const { return analysed_.get(); }

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

    const FindingRow& row(int row) const { return rows_[static_cast<std::size_t>(row)]; }
    /// -1: not listed.
    int rowOf(const std::string& key) const;
    const Finding* finding(const std::string& id) const;
    /// Opens or closes the group of a heading.
    void setOpen(Verdict verdict, bool open);

private:
    std::vector<FindingRow> wanted() const;
    void become(std::vector<FindingRow> wanted);

    std::shared_ptr<const Analysed> analysed_;
    std::vector<FindingRow> rows_;
    std::array<bool, 4> open_ = {false, true, true, true};   ///< by Verdict: what is met is closed at first
};

}  // namespace hither
