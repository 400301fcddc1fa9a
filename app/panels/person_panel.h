#pragma once
#include <map>
#include <string>
#include <vector>

#include <QPointer>

#include "app/panels/givens_panel.h"
#include "app/panels/person_made.h"

namespace hither {

class Fold;
class RangeField;

/// Step 2: who it is for: a pseudonym, on what the person rests and how, the size of the body, the posture and
/// how far each joint moves. What is not typed is estimated and shown greyly with where it is from.
class PersonPanel : public GivensPanel {
    Q_OBJECT

public:
    explicit PersonPanel(const EditorContext& context, QWidget* parent = nullptr);

protected:
    QString structure() const override;
    void build(QVBoxLayout* form) override;

private:
    using Change = std::function<void(PersonSpec&)>;
    Edited change(const Plan& plan, const Change& change) const;
    const BodyData& data() const { return context_.shipped->body; }

    void buildNobody(QVBoxLayout* form);
    void buildWho(QVBoxLayout* form);
    void buildRest(QVBoxLayout* form);
    void buildBody(QVBoxLayout* form);
    void buildPercentile(QVBoxLayout* form);
    void buildDimensions(QVBoxLayout* form);
    void buildDimension(QVBoxLayout* form, const std::string& dimension);
    void buildPosture(QVBoxLayout* form);
    void buildJoint(QVBoxLayout* form, const std::string& joint);
    void buildRanges(QVBoxLayout* form);
    void buildRange(QVBoxLayout* form, const std::string& joint);
    void tieEnd(RangeField* field, const std::string& joint, bool least);
    void add();

    /// A row whose list of choices has a name, too, when it is open.
    FieldRow* addChoice(QVBoxLayout* form, const QString& words, ChoiceBox* box);
    /// A fold that is as open as the one of that name was before the form was made anew.
    Fold* fold(QVBoxLayout* form, const QString& words);
    /// A line that says the problems that are about one of these; `about` empty: about nothing shown elsewhere.
    void problemLine(QVBoxLayout* form, const std::vector<std::string>& about, Fold* onlyWhenClosed = nullptr);
    std::vector<std::string> otherDimensions() const;

    PersonMade made_;
    std::map<QString, QPointer<Fold>> folds_;
    bool justAdded_ = false;
};

}  // namespace hither
