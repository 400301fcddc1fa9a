#pragma once
#include <optional>
#include <string>

#include <QObject>
#include <QString>

#include "app/document/document.h"
#include "app/document/picked.h"
#include "core/checks/finding.h"

namespace hither {

/// The steps of the job, in their order.
enum class JobStep { support, person, site, build, check, handOver };

/// What the parts on offer are for.
struct OfferFor {
    enum class Kind { nothing, attachment, outlet, replacement };
    Kind kind = Kind::nothing;
    std::string support, attachment;   ///< attachment
    Placement place;                   ///< attachment: where it was clicked
    std::string mount;                 ///< outlet, replacement
    int part = -1;                     ///< outlet: the part whose outlet it is; replacement: the part to replace
    bool operator==(const OfferFor&) const = default;
};

/// What the window shows of the document and nothing that is saved: the option in view, the step of
/// the job, what is picked. It follows the document: what no longer exists is no longer picked.
class ViewState : public QObject {
    Q_OBJECT

public:
    explicit ViewState(Document& document, QObject* parent = nullptr);

    /// Id of the option in view; empty only when the plan has none.
    const std::string& option() const { return option_; }
    int optionIndex() const;                       ///< -1: none
    const PlanOption* planOption() const;
    /// The mount that Build works on: the picked one, else the option's first; null: none.
    const Mount* mount() const;
    JobStep step() const { return step_; }
    const Picked& picked() const { return picked_; }
    const OfferFor& offerFor() const { return offerFor_; }
    /// Identity of the finding that the scene shows; empty: none.
    const QString& finding() const { return finding_; }
    UnitSystem units() const { return document_.plan().display; }

    void setOption(const std::string& option);
    void setStep(JobStep step);
    void pick(const Picked& picked);
    void setOfferFor(const OfferFor& offer);
    void showFinding(const QString& finding);

signals:
    void optionChanged();
    void stepChanged();
    void pickedChanged();
    void offerForChanged();
    void findingChanged();

private:
    void follow();

    Document& document_;
    std::string plan_, option_, mount_;
    JobStep step_ = JobStep::support;
    Picked picked_;
    OfferFor offerFor_;
    QString finding_;
};

}  // namespace hither
