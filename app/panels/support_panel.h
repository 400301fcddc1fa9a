#pragma once
#include <memory>
#include <string>

#include "app/panels/givens_panel.h"

namespace hither {

class DimensionPicture;

/// Step 1: what the person sits or lies on and what else can carry a mount. The plan's supports, the
/// dimensions of the one picked with a picture of what each means, its tube sizes, what moves, where it stands.
class SupportPanel : public GivensPanel {
    Q_OBJECT

public:
    explicit SupportPanel(const EditorContext& context, QWidget* parent = nullptr);

protected:
    QString structure() const override;
    void build(QVBoxLayout* form) override;

private:
    using Change = std::function<void(SupportSpec&)>;
    const SupportSpec* spec() const { return specIn(plan()); }
    const SupportSpec* specIn(const Plan& plan) const;
    Edited change(const Plan& plan, const Change& change) const;
    std::shared_ptr<const Support> made(bool atZero) const;

    void buildList(QVBoxLayout* form);
    void buildChooser(QVBoxLayout* form);
    void buildName(QVBoxLayout* form);
    void buildDimensions(QVBoxLayout* form);
    void buildTubes(QVBoxLayout* form);
    void buildMoving(QVBoxLayout* form);
    void buildPlace(QVBoxLayout* form);
    void add(const SupportKind& kind);
    void follow();
    void showDimension();

    std::string shown_;               ///< id of the support whose form is shown
    std::string dimension_;           ///< key of the dimension that the picture shows
    DimensionPicture* picture_ = nullptr;
};

/// "Seat width" of "seat_width".
QString dimensionName(const std::string& key);

}  // namespace hither
