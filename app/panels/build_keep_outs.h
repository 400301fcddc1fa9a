#pragma once
#include <array>

#include <QWidget>

#include "app/actions/editor_context.h"
#include "app/widgets/number_field.h"

class QComboBox;
class QFormLayout;
class QLabel;
class QPushButton;

namespace hither {

class BuildRowList;
class TextField;

/// The volumes of the option that must stay free: a list, and the form of the one picked.
class BuildKeepOuts : public QWidget {
    Q_OBJECT

public:
    explicit BuildKeepOuts(const EditorContext& context, QWidget* parent = nullptr);
    void refresh();
    BuildRowList* list() const { return list_; }

private:
    enum Field { x, y, z, sizeX, sizeY, sizeZ, across, height, margin, fields };
    void add(SolidKind kind);
    void remove();
    const KeepOut* current() const;
    void change(int field, double value, bool preview);
    void replace(const QString& label, const KeepOut& by, bool preview);
    void chooseCarrier(int index);

    EditorContext context_;
    BuildRowList* list_;
    QWidget* form_;
    QFormLayout* rows_;
    TextField* name_;
    QComboBox* carrier_;
    QPushButton* remove_;
    std::array<NumberField*, fields> number_{};
    bool gesture_ = false;
};

}  // namespace hither
