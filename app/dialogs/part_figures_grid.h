#pragma once
#include <map>
#include <string>
#include <vector>

#include <QWidget>

#include "core/catalogue/part.h"
#include "core/units/quantity.h"

class QGridLayout;
class QLabel;
class QLineEdit;

namespace hither {

class NumberField;

/// Every figure of a part to read and to type: name, value, basis with its source, and how to measure it as
/// long as nobody has. Those that are unknown come first. It changes nothing itself. A figure typed
/// before there are initials waits until they are there.
class PartFiguresGrid : public QWidget {
    Q_OBJECT

public:
    explicit PartFiguresGrid(QWidget* parent = nullptr);

    /// Shows a part; what is being typed stays as long as it has the same figures.
    void showPart(const Part& part, UnitSystem units);
    void setInitials(const QString& initials);
    /// Puts the keyboard on a figure's field; an unknown place: on the first.
    void focusOn(const std::string& place);

signals:
    /// SI, by whom and when ("KL, 2026-11-25").
    void measured(const QString& place, double value, const QString& source);

private:
    struct Row { NumberField* field; QLabel* basis; QLabel* how; };
    void build(const Part& part);
    void addRow(const Part& part, const std::string& place);
    void take(const std::string& place, std::optional<double> value);
    void takeWaiting();

    QGridLayout* grid_;
    QLineEdit* initials_;
    QLabel* ask_;
    std::vector<std::string> places_;     ///< as the part has them
    std::map<std::string, Row> rows_;
    std::map<std::string, std::optional<double>> shown_;
    std::map<std::string, double> waiting_;
};

}  // namespace hither
