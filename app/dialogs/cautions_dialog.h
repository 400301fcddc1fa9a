#pragma once
#include <QDialog>

namespace hither {

/// The usual cautions of the trade, to read.
class CautionsDialog : public QDialog {
    Q_OBJECT

public:
    explicit CautionsDialog(QWidget* parent = nullptr);
};

}  // namespace hither
