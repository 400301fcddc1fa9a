#pragma once
#include <QString>
#include <QWidget>

#include "app/actions/editor_context.h"
#include "core/offers/offer.h"

namespace hither {

class BuildChainList;
class BuildKeepOuts;
class BuildMountBar;
class BuildOfferList;
class BuildSettingsForm;
class BuildWaysBar;
class BuildWhereList;
class Fold;

/// The step "build": the mounts of the option in view, the parts of the one worked on, what can be added to
/// it, how it is set, how it is brought to its site, and what must stay free.
class BuildPanel : public QWidget {
    Q_OBJECT

public:
    explicit BuildPanel(const EditorContext& context, QWidget* parent = nullptr);

    /// Puts an offered part where `ViewState::offerFor` says, as one step, and offers what goes on from there.
    void take(const Offer& offer);
    /// Shows where another mount can be fixed.
    void chooseWhere();

signals:
    void partFiguresWanted(const QString& part);   ///< id of a part of the plan

protected:
    void showEvent(QShowEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void addActions();
    void refresh();
    void followPick();
    void followOffer();
    void goOn(const std::string& mount, int part, bool offerNext);
    void orderTabs();
    void leaveWhere();
    void showWhere();
    void reveal(QWidget* what);

    EditorContext context_;
    BuildMountBar* mounts_;
    BuildWhereList* where_;
    BuildChainList* chain_;
    BuildOfferList* offers_;
    BuildWaysBar* ways_;
    BuildSettingsForm* settings_;
    BuildKeepOuts* keepOuts_;
    Fold *settingsFold_, *keepOutsFold_;
    bool whereAsked_ = false;   ///< for another mount than the first
    bool stale_ = true;
};

}  // namespace hither
