#pragma once
#include <optional>

#include <QLabel>
#include <QWidget>

#include "core/units/basis.h"

namespace hither {

/// The word as shown, translated.
QString basisWord(BasisKind basis);

/// A small mark with the word "measured", "published", "assumed" or "unknown".
class BasisChip : public QLabel {
    Q_OBJECT

public:
    explicit BasisChip(QWidget* parent = nullptr);
    void setBasis(BasisKind basis);
    BasisKind basis() const { return basis_; }

private:
    BasisKind basis_ = BasisKind::unknown;
};

/// A label, its field beside it and a basis mark; a quiet line of words below. In a narrow column, or with
/// large letters, the field goes below the label. The label's words are the field's name for screen
/// readers, the quiet line is its description.
class FieldRow : public QWidget {
    Q_OBJECT

public:
    FieldRow(const QString& words, QWidget* field, QWidget* parent = nullptr);

    QWidget* field() const { return field_; }
    void setWords(const QString& words);
    void setNote(const QString& note);                     ///< empty: no line
    void setBasis(std::optional<BasisKind> basis);         ///< nothing: no mark
    std::optional<BasisKind> basis() const;
    QSize minimumSizeHint() const override;
    QSize sizeHint() const override;
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

protected:
    void resizeEvent(QResizeEvent* event) override;
    bool event(QEvent* event) override;

private:
    struct Plan;
    Plan planFor(int width) const;

    QLabel* label_;
    QWidget* field_;
    BasisChip* chip_ = nullptr;
    QLabel* note_ = nullptr;
};

}  // namespace hither
