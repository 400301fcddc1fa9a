#pragma once
#include <QWidget>

#include "app/actions/editor_context.h"
#include "core/offers/offer.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QPushButton;

namespace hither {

class BuildRowList;

/// What goes where `ViewState::offerFor` says: the parts that fit first, the rest with the reason and the
/// adapters that would help. While words are typed the up and down keys move in the list and Enter adds.
class BuildOfferList : public QWidget {
    Q_OBJECT

public:
    explicit BuildOfferList(const EditorContext& context, QWidget* parent = nullptr);
    /// Follows the document and what is asked for; cheap when nothing that matters here has changed.
    void refresh();
    void takeFocus();
    const Offer* current() const;
    BuildRowList* list() const { return list_; }

signals:
    void taken(const hither::Offer& offer);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void compute();
    void showRows();
    void followRow();
    void take();
    void moveBy(int rows);
    QString headline() const;

    EditorContext context_;
    QLabel *headline_, *count_;
    QLineEdit* search_;
    QComboBox* kinds_;
    BuildRowList* list_;
    QPushButton *add_, *close_;
    std::vector<Offer> offers_;
    QString key_;          ///< of what the offers depend on
    OfferFor shownFor_;
};

}  // namespace hither
