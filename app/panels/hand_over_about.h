#pragma once
#include <QWidget>

#include "app/actions/editor_context.h"

class QPlainTextEdit;

namespace hither {

class ChoiceBox;
class TextField;

/// What the plan says about itself: title, what it shows, notes, currency, units.
class HandOverAbout : public QWidget {
    Q_OBJECT

public:
    explicit HandOverAbout(const EditorContext& context, QWidget* parent = nullptr);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void refresh();
    void takeNotes();

    EditorContext context_;
    TextField *title_, *shows_, *currency_;
    QPlainTextEdit* notes_;
    ChoiceBox* units_;
};

}  // namespace hither
