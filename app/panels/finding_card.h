#pragma once
#include <vector>

#include <QWidget>

#include "app/actions/editor_context.h"

class QLabel;
class QPushButton;
class QVBoxLayout;

namespace hither {

class FindingAccept;
class FindingAt;
class FindingBar;
class VerdictMark;
class WrappedButton;

/// One finding in full: what was judged, value against limit, what it is about, when it occurs, what it
/// rests on, what would mend it, and whether somebody accepts it.
class FindingCard : public QWidget {
    Q_OBJECT

public:
    explicit FindingCard(const EditorContext& context, QWidget* parent = nullptr);

    /// Shows the finding that the view shows, from the newest results.
    void refresh();

signals:
    /// The person wants to type a figure: of a part of the plan, at a place as figuresOf() has it.
    void figureWanted(const QString& part, const QString& place);

private:
    QLabel* addText(QVBoxLayout* to);
    void showSubjects(const Finding& finding);
    void showBasis(const Finding& finding);
    void goToSize(const Finding& finding);
    void showRemedy(const Finding& finding);
    void takeRemedy();
    QLabel* linkLabel(std::vector<QLabel*>& pool, std::size_t number, QVBoxLayout* into);

    EditorContext context_;
    QLabel* nothing_;
    QPushButton* toMissed_;
    QWidget* whole_;
    VerdictMark* verdict_;
    QLabel *check_, *sentence_, *value_, *basis_, *about_;
    FindingBar* bar_;
    QWidget *subjects_, *figures_;
    QVBoxLayout *subjectColumn_, *figureColumn_;
    std::vector<QLabel*> subjectLinks_, figureLinks_;
    FindingAt* at_;
    WrappedButton* remedy_;
    FindingAccept* accept_;
};

}  // namespace hither
