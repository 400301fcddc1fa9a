#pragma once
#include <memory>
#include <optional>

#include <QWidget>

#include "app/widgets/dimension_marks.h"

namespace hither {

/// A picture of what a dimension means: the support drawn flat from its own solids with the line or the
/// angle of one dimension and its value, and a sentence below. What it shows is also its description.
class DimensionPicture : public QWidget {
    Q_OBJECT

public:
    explicit DimensionPicture(QWidget* parent = nullptr);

    /// Null: nothing to draw. Moving groups count as being at zero.
    void setSupport(std::shared_ptr<const Support> support);
    /// Which dimension, its value and what it means, in words; an empty key: the whole support.
    void setDimension(const std::string& key, const QString& value, const QString& means);
    /// The key shown has a line or an arc in the picture.
    bool marked() const { return mark_.has_value(); }
    DrawnFrom drawnFrom() const { return mark_ ? mark_->drawnFrom : DrawnFrom::side; }

    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    void follow();
    QString words() const;
    int wordsHeight(int width) const;

    std::shared_ptr<const Support> support_;
    std::string key_;
    QString value_, means_;
    std::optional<DimensionMark> mark_;
};

}  // namespace hither
