#pragma once
#include <optional>
#include <string>

#include "app/panels/givens_panel.h"

namespace hither {

/// Step 3: where the person's dependable movement is and what it is like. The plan's sites; a new one
/// from a control site, from a click on the body in the scene, or as a typed point; the figures of the
/// one picked, each with what it means for the person.
class SitePanel : public GivensPanel {
    Q_OBJECT

public:
    explicit SitePanel(const EditorContext& context, QWidget* parent = nullptr);

protected:
    QString structure() const override;
    void build(QVBoxLayout* form) override;

private:
    using Change = std::function<void(SiteSpec&)>;
    const SiteSpec* spec() const { return specIn(plan()); }
    const SiteSpec* specIn(const Plan& plan) const;
    Edited change(const Plan& plan, const Change& change) const;
    const Body* body() const;                       ///< null: no person, or the givens cannot be made
    const Site* placed() const;                     ///< the shown site in W
    /// Pose of the body part in whose frame the site is given; W itself for a typed one.
    std::optional<Pose> frameOf(const SiteSpec& spec) const;

    void buildList(QVBoxLayout* form);
    void buildAdd(QVBoxLayout* form);
    void buildFigures(QVBoxLayout* form);
    void buildGiven(QVBoxLayout* form);
    void buildDirection(QVBoxLayout* form);
    void buildGoesWith(QVBoxLayout* form);
    void buildMounts(QVBoxLayout* form);
    void buildClick(QVBoxLayout* form);
    void add(const std::string& controlSite);
    void give(SiteGiven given);
    void follow();

    std::string shown_;             ///< id of the site whose form is shown
    std::string search_;            ///< words looked for among the control sites
};

}  // namespace hither
