#pragma once
#include <optional>

#include <QIcon>
#include <QPainter>
#include <QWidget>

#include "core/checks/finding.h"

namespace hither {

/// A verdict's shape in its colour: meets a filled disc, close a triangle, misses a square with a bar across,
/// unknown an open ring. Never without its word beside it.
void paintVerdict(QPainter& painter, const QRectF& box, Verdict verdict);
QIcon verdictIcon(Verdict verdict);
/// The word as shown, translated.
QString verdictWord(Verdict verdict);
QString checkWord(CheckKind check);

/// Shape and word in a row.
class VerdictMark : public QWidget {
    Q_OBJECT

public:
    explicit VerdictMark(QWidget* parent = nullptr);
    void setVerdict(std::optional<Verdict> verdict);   ///< nothing: "not computed"
    QString words() const;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    std::optional<Verdict> verdict_;
};

}  // namespace hither
