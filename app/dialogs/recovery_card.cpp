#include "app/dialogs/recovery_card.h"

#include <algorithm>

#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/dialogs/dialog_text.h"
#include "app/dialogs/difference_words.h"
#include "app/words/storage_words.h"
#include "core/storage/plan_file.h"

namespace hither {
namespace {

QString nameOf(const Leftover& leftover) {
    if (leftover.plan && !leftover.plan->title.empty()) return QString::fromStdString(leftover.plan->title);
    if (!leftover.file.empty()) return QFileInfo(QString::fromStdString(leftover.file)).completeBaseName();
    return RecoveryCard::tr("Plan without a title");
}

QString fileWords(const Leftover& leftover) {
    const QString file = breakable(QString::fromStdString(leftover.file));
    switch (leftover.against) {
        case Leftover::Against::unnamed: return RecoveryCard::tr("It never had a file of its own.");
        case Leftover::Against::sameFile: return RecoveryCard::tr("Its file is as it was: %1").arg(file);
        case Leftover::Against::otherFile: return RecoveryCard::tr("Its file has been changed since: %1. Saving will ask before it writes over that.").arg(file);
        case Leftover::Against::missingFile: break;
    }
    return RecoveryCard::tr("Its file is no longer there: %1. Saving makes it again.").arg(file);
}

}  // namespace

RecoveryCard::RecoveryCard(const Leftover& leftover, int number, QWidget* parent) : QFrame(parent) {
    setFrameShape(QFrame::StyledPanel);
    const QString name = nameOf(leftover);
    setAccessibleName(tr("Unsaved plan %1: %2").arg(number).arg(name));
    auto* column = new QVBoxLayout(this);
    QLabel* title = paragraph(name, this);
    title->setFont(boldFont(title->font(), 1.1));
    column->addWidget(title);
    if (!leftover.saved_utc.empty()) column->addWidget(paragraph(tr("Kept on %1").arg(localTime(QString::fromStdString(leftover.saved_utc))), this));
    column->addWidget(paragraph(fileWords(leftover), this));
    if (!leftover.plan) column->addWidget(paragraph(tr("What was kept cannot be read. %1").arg(QString::fromStdString(sentence(leftover.problems, leftover.path))), this));

    asked_ = paragraph(tr("Discard it for good? It cannot be brought back."), this);
    asked_->hide();
    column->addWidget(asked_);
    auto* row = new QHBoxLayout;
    const auto button = [&](const QString& words, const QString& spoken) {
        auto* made = new QPushButton(words, this);
        made->setAccessibleName(spoken);
        row->addWidget(made);
        return made;
    };
    if (leftover.plan) continue_ = button(tr("Continue with it"), tr("Continue with %1").arg(name));
    discard_ = button(tr("Discard …"), tr("Discard %1").arg(name));
    forGood_ = button(tr("Discard for good"), tr("Discard %1 for good").arg(name));
    not_ = button(tr("No, keep it"), tr("Keep %1").arg(name));
    forGood_->hide();
    not_->hide();
    row->addStretch(1);
    column->addLayout(row);
    if (continue_) markAsNext(*continue_);
    if (leftover.plan) addDifferences(leftover, column);

    if (continue_) connect(continue_, &QPushButton::clicked, this, &RecoveryCard::continueWith);
    connect(discard_, &QPushButton::clicked, this, [this] { askOnceMore(true); });
    connect(not_, &QPushButton::clicked, this, [this] { askOnceMore(false); });
    connect(forGood_, &QPushButton::clicked, this, [this] {
        discarded_ = true;
        asked_->setText(tr("Discarded."));
        for (QPushButton* b : {continue_, discard_, forGood_, not_}) if (b) b->hide();
        emit discard();
    });
}

QPushButton* RecoveryCard::first() const { return continue_ ? continue_ : discard_; }

void RecoveryCard::addDifferences(const Leftover& leftover, QVBoxLayout* column) {
    if (leftover.against == Leftover::Against::unnamed || leftover.against == Leftover::Against::missingFile) return;
    const PlanRead own = openPlanFile(leftover.file);
    QStringList lines;
    if (own.plan)
        for (const PlanDifference& d : leftover.differences)
            if (!isOfSaves(d)) lines << differenceWords(d, *own.plan, *leftover.plan, leftover.plan->display);
    if (lines.isEmpty()) {
        column->addWidget(paragraph(own.plan ? tr("Nothing in it differs from the file.") : tr("What differs cannot be said: the file cannot be read."), this));
        return;
    }
    column->addWidget(paragraph(tr("%n difference(s) from the file:", nullptr, static_cast<int>(lines.size())), this));
    auto* list = new QListWidget(this);
    list->addItems(lines);
    list->setWordWrap(true);
    list->setTextElideMode(Qt::ElideNone);
    list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    list->setResizeMode(QListView::Adjust);
    list->setAccessibleName(tr("What differs from the file"));
    const int shown = static_cast<int>(std::min<qsizetype>(lines.size(), 6)) + 1;
    list->setMinimumHeight(list->fontMetrics().lineSpacing() * shown + 2 * list->frameWidth());
    column->addWidget(list);
}

void RecoveryCard::askOnceMore(bool ask) {
    asked_->setVisible(ask);
    forGood_->setVisible(ask);
    not_->setVisible(ask);
    discard_->setVisible(!ask);
    if (continue_) continue_->setVisible(!ask);
    (ask ? not_ : discard_)->setFocus();  // Enter pressed twice must not discard
}

}  // namespace hither
