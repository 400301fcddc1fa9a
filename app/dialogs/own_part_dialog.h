#pragma once
#include <string>

#include <QDialog>

#include "core/catalogue/catalogue.h"

class QLabel;
class QLineEdit;

namespace hither {

class PartFiguresGrid;

/// A part of the person's own, made from another or changed: name, short name (id), figures. Saved into the
/// folder of their own parts.
class OwnPartDialog : public QDialog {
    Q_OBJECT

public:
    /// `replacing` is the id of the own part that is changed; empty: a new one, copied from `part`.
    OwnPartDialog(const Part& part, const std::string& replacing, const Catalogue& catalogue, UnitSystem units, QWidget* parent = nullptr);

    const Part& part() const { return part_; }

private:
    void take(const QString& place, double value, const QString& source);
    void save();

    Part part_;
    std::string replacing_;
    const Catalogue& catalogue_;
    UnitSystem units_;
    QLineEdit* name_;
    QLineEdit* id_;
    PartFiguresGrid* grid_;
    QLabel* why_;
};

}  // namespace hither
