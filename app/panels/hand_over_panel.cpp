#include "app/panels/hand_over_panel.h"

#include <algorithm>

#include <QFileDialog>
#include <QFileInfo>
#include <QLabel>
#include <QVBoxLayout>

#include "app/panels/finding_button.h"
#include "app/panels/finding_words.h"
#include "app/panels/hand_over_about.h"
#include "app/panels/hand_over_parts.h"
#include "app/widgets/fold.h"
#include "app/widgets/words_label.h"
#include "app/words/cautions.h"
#include "app/words/storage_words.h"
#include "core/storage/plan_json.h"
#include "core/storage/plan_save.h"

namespace hither {

HandOverPanel::HandOverPanel(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    auto* column = new QVBoxLayout(this);
    column->addWidget(new SectionHeading(tr("Before handing over"), this));
    column->addWidget(wordsLabel(QString::fromStdString(planningAidOnly()), false, this));
    auto* cautionsFold = new Fold(tr("Cautions to read"), false, this);
    for (const std::string& line : cautions()) cautionsFold->inside()->addWidget(wordsLabel(QString::fromUtf8("• ") + QString::fromStdString(line), false, cautionsFold));
    column->addWidget(cautionsFold);

    column->addWidget(new SectionHeading(tr("The plan"), this));
    column->addWidget(new HandOverAbout(context_, this));

    column->addWidget(new SectionHeading(tr("Parts list"), this));
    parts_ = new HandOverParts(context_, this);
    column->addWidget(parts_);

    column->addWidget(new SectionHeading(tr("File"), this));
    saved_ = wordsLabel({}, false, this);
    column->addWidget(saved_);
    const auto button = [&](const QString& words) {
        auto* b = new WrappedButton(this);
        b->setText(words);
        column->addWidget(b);
        return b;
    };
    for (const char* id : {"file.save", "file.save_as"}) {
        const auto& entries = context_.actions.entries();
        const auto entry = std::find_if(entries.begin(), entries.end(), [&](const ActionEntry& e) { return e.id == id; });
        if (entry == entries.end()) continue;
        connect(button(entry->words), &QPushButton::clicked, context_.actions.action(id), &QAction::trigger);
    }
    connect(button(tr("Save the plan as JSON …")), &QPushButton::clicked, this, &HandOverPanel::exportPlanAs);
    said_ = wordsLabel({}, false, this);
    said_->hide();
    column->addWidget(said_);
    column->addStretch(1);

    connect(&context_.document, &Document::historyChanged, this, &HandOverPanel::refreshSaved);
    connect(&context_.document, &Document::fileChanged, this, &HandOverPanel::refreshSaved);
    refreshSaved();
}

void HandOverPanel::refreshSaved() {
    const Document& d = context_.document;
    const QString file = QFileInfo(d.path()).fileName();
    if (d.path().isEmpty()) saved_->setText(tr("The plan has no file yet."));
    else if (d.readOnly()) saved_->setText(tr("%1 is open to read only; save in another file to keep changes.").arg(file));
    else if (d.modified()) saved_->setText(tr("Changes are not yet saved in %1.").arg(file));
    else saved_->setText(tr("Saved in %1.").arg(file));
}

QString HandOverPanel::exportPlan(const QString& path) const {
    const std::vector<StorageError> problems = saveText(planToJson(context_.document.plan()), path.toStdString(), true);
    return problems.empty() ? QString() : QString::fromStdString(sentence(problems.front()));
}

void HandOverPanel::exportPlanAs() {
    // The file dialog asks before it names a file that is there; what is replaced stays as .bak.
    QFileDialog dialog(this, tr("Save the plan as JSON"), {}, tr("JSON (*.json)"));
    dialog.setAcceptMode(QFileDialog::AcceptSave);
    dialog.setDefaultSuffix("json");
    if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) return;
    const QString path = dialog.selectedFiles().front(), why = exportPlan(path);
    said_->setText(why.isEmpty() ? tr("Saved in %1; the plan's own file is as before.").arg(path) : tr("Not saved: %1").arg(why));
    said_->show();
}

}  // namespace hither
