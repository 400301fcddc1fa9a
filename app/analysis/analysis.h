#pragma once
#include <functional>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include <QObject>

#include "app/analysis/analysed.h"
#include "app/document/document.h"
#include "app/document/view_state.h"
#include "app/shipped/shipped.h"

namespace hither {

/// Judges the option in view on a thread of its own whenever the document or the option changes. It
/// works on a copy; of the revisions that wait only the newest is judged. Results may be of an earlier
/// revision than the document's while somebody drags, but they never go back, and are never those of another
/// option or plan. An error while judging is a line in `problems`.
class Analysis : public QObject {
    Q_OBJECT

public:
    /// What judges a setup; tests put in their own.
    using Checks = std::function<std::vector<Finding>(const Setup& setup, const CheckContext& context)>;
    Analysis(Document& document, ViewState& view, std::shared_ptr<const Shipped> shipped, QObject* parent = nullptr, Checks checks = checkAll);
    ~Analysis() override;

    /// Made for the present revision on the calling thread and kept until it changes: what the scene
    /// draws. Null when the option cannot be set up.
    std::shared_ptr<const Setup> setup() const;
    /// The givens alone: also there when there is no option, or the option cannot be set up.
    std::shared_ptr<const Situation> situation() const;
    /// Why `setup` or `situation` is null.
    const std::vector<PlanProblem>& problems() const;

    /// The newest results; null: not computed yet. They may be of an earlier revision.
    std::shared_ptr<const Analysed> latest() const { return latest_; }
    /// Whether `latest` is of the present revision and option.
    bool upToDate() const;
    const Finding* finding(const QString& id) const;

    /// The catalogue has other parts now: judges anew with them.
    void catalogueChanged();

signals:
    void analysed();

private:
    struct Made;
    class Worker;
    const Made& made() const;
    void make(Made& out) const;
    void request();
    void take(std::shared_ptr<const Analysed> result);

    Document& document_;
    ViewState& view_;
    std::shared_ptr<const Shipped> shipped_;
    std::shared_ptr<const Catalogue> catalogue_;  ///< a copy for the thread: the other one may get more parts meanwhile
    mutable std::unique_ptr<Made> made_;
    std::unique_ptr<Worker> worker_;
    std::shared_ptr<const Analysed> latest_;
    std::pair<quint64, std::string> asked_{~quint64{0}, {}};
};

}  // namespace hither
