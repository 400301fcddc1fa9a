#pragma once
#include <functional>
#include <vector>

#include <QWidget>

#include "app/actions/editor_context.h"
#include "app/widgets/number_field.h"

class QLabel;
class QPushButton;
class QVBoxLayout;

namespace hither {

class ChoiceBox;
class FieldRow;
class SliderField;
class TextField;

/// A number of the plan and how a form changes it. The edit takes the plan as it was before the gesture.
struct NumberOfPlan {
    QString label;                                                    ///< what was done, for undoing it
    std::function<std::optional<double>(const Plan&)> read;
    std::function<Edited(const Plan&, std::optional<double>)> edit;
};

/// What the forms of support, person and site have in common: a sentence on what to do here, what is still
/// to do, the form, and a button to the next step. The form is made anew only when its structure is
/// another; otherwise its widgets are brought up to date, without touching what is being typed. A panel
/// that is not shown waits until it is.
class GivensPanel : public QWidget {
    Q_OBJECT

public:
    GivensPanel(const EditorContext& context, JobStep step, const QString& lead, QWidget* parent);

protected:
    /// Names everything that decides which widgets there are.
    virtual QString structure() const = 0;
    virtual void build(QVBoxLayout* form) = 0;
    void showEvent(QShowEvent* event) override;
    void changeEvent(QEvent* event) override;

    Document& document() const { return context_.document; }
    const Plan& plan() const { return context_.document.plan(); }
    /// Runs now and after every change for as long as the form stands. What it shows or hides must be in
    /// the form already: alone it would be a window.
    void keep(std::function<void()> refresh);
    /// Cannot be used while the document is read only.
    template <class Widget> Widget* changes(Widget* widget) { changing_.push_back(widget); return widget; }
    /// Ties a field to the plan: typed values are shown at once as one gesture, Esc leaves no trace.
    void tie(NumberField* field, const NumberOfPlan& number);
    void tie(SliderField* field, const NumberOfPlan& number);
    void tie(TextField* field, const QString& label, std::function<std::string(const Plan&)> read, std::function<Edited(const Plan&, const std::string&)> edit);
    /// The entries' data are the texts that are read and given to the edit.
    void tie(ChoiceBox* box, const QString& label, std::function<std::string(const Plan&)> read, std::function<Edited(const Plan&, const std::string&)> edit);
    /// Asks for a look at the structure and the widgets, also without a change of the plan.
    void refreshSoon();

    EditorContext context_;

private:
    template <class Field> void tieNumber(Field* field, const NumberOfPlan& number);
    void refresh(bool mayRebuild);
    void rebuild();
    void showStatus();

    JobStep step_;
    QVBoxLayout* column_;
    QWidget* form_ = nullptr;
    QWidget* tabsBegin_;
    QLabel* toDo_;
    QLabel* refusal_;
    QPushButton* next_;
    QString built_;
    bool stale_ = true, due_ = false;
    std::vector<std::function<void()>> refreshers_;
    std::vector<QWidget*> changing_;
};

/// English words of the core on screen.
QString fromCore(const std::string& text);
/// The same with a capital first letter.
QString nameFromCore(const std::string& text);

}  // namespace hither
