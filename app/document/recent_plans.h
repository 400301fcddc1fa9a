#pragma once
#include <string>
#include <vector>

#include <QString>

namespace hither {

/// A plan that was opened or saved here lately.
struct RecentPlan {
    QString path, title;
    QString opened_utc;       ///< "2026-11-25T09:00:00Z"
    bool there = true;        ///< whether its file is there now
};

/// The plans of late, newest first, at most 12, in one small JSON file. A file that cannot be read is no
/// list: nothing is lost but the list. Two programs: the last one that adds wins.
class RecentPlans {
public:
    static constexpr std::size_t most = 12;

    /// Empty `file`: none are kept.
    explicit RecentPlans(QString file) : file_(std::move(file)) {}
    std::vector<RecentPlan> read() const;
    /// Puts a plan first. `now_utc` empty: the computer's clock. What went wrong, or nothing.
    QString add(const QString& path, const QString& title, const QString& now_utc = {}) const;
    QString remove(const QString& path) const;

private:
    QString write(const std::vector<RecentPlan>& plans) const;
    QString file_;
};

}  // namespace hither
