#pragma once
#include <optional>

#include <QWidget>

#include "core/checks/finding.h"

namespace hither {

/// A finding's value as a bar from nothing, with a mark where its limit is and the side of it that passes
/// tinted. What it shows stands beside it in words.
class FindingBar : public QWidget {
    Q_OBJECT

public:
    explicit FindingBar(QWidget* parent = nullptr);

    /// Whether a bar says something: a value and a limit, not both nothing.
    static bool says(const Finding& finding);
    void show(const Finding& finding, const QString& words);
    using QWidget::show;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    double value_ = 0, limit_ = 0;
    bool mostIs_ = false, leastIs_ = false;
    Verdict verdict_ = Verdict::unknown;
};

}  // namespace hither
