#pragma once
#include <vector>

#include <QWidget>

#include "app/actions/editor_context.h"

class QPushButton;

namespace hither {

class FieldRow;
class NumberField;

/// The margins and loads that the checks of this plan ask, each with what it means.
class FindingLimits : public QWidget {
    Q_OBJECT

public:
    explicit FindingLimits(const EditorContext& context, QWidget* parent = nullptr);

private:
    struct Row { double CheckLimits::*limit; QString means; NumberField* field; FieldRow* row; };
    void add(double CheckLimits::*limit, const QString& words, const QString& means, NumberField* field);
    void type(double CheckLimits::*limit, double value, bool finished);
    void refresh();

    EditorContext context_;
    std::vector<Row> rows_;
    QPushButton* reset_;
};

}  // namespace hither
