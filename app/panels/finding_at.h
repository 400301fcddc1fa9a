#pragma once
#include <QWidget>

#include "app/actions/editor_context.h"

class QLabel;
class QPushButton;

namespace hither {

/// At which settings of the support a finding occurs, and looking at it there: a gesture that is always
/// cancelled in the end, by the same button, Esc, or leaving.
class FindingAt : public QWidget {
    Q_OBJECT

public:
    explicit FindingAt(const EditorContext& context, QWidget* parent = nullptr);

    /// Null: none is picked.
    void showFor(const Finding* finding);
    bool looking() const;
    bool lookingAt(const std::string& finding) const { return looking() && finding == finding_; }
    void back();

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void hideEvent(QHideEvent* event) override;

private:
    void look();
    void refresh();

    EditorContext context_;
    std::string finding_;
    std::vector<GroupAt> at_;
    QLabel* words_;
    QPushButton* button_;
};

}  // namespace hither
