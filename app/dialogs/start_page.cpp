#include "app/dialogs/start_page.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QLabel>
#include <QVBoxLayout>

#include "app/dialogs/dialog_text.h"
#include "app/dialogs/row_button.h"
#include "core/situation/support.h"
#include "core/storage/plan_file.h"

namespace hither {
namespace {

QVBoxLayout* section(QWidget* box, const QString& title, const QString& words) {
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(box->fontMetrics().height() / 3);
    QLabel* label = heading(title, box);
    column->addWidget(label);
    if (!words.isEmpty()) column->addWidget(quietParagraph(words, box));
    box->setAccessibleName(title);
    return column;
}

}  // namespace

std::vector<SamplePlan> samplePlans(const QString& folder) {
    std::vector<SamplePlan> out;
    for (const QFileInfo& file : QDir(folder).entryInfoList({"*.hither"}, QDir::Files, QDir::Name)) {
        const PlanRead read = openPlanFile(QFile::encodeName(file.absoluteFilePath()).toStdString());
        if (read.plan) out.push_back({file.absoluteFilePath(), QString::fromStdString(read.plan->title), QString::fromStdString(read.plan->shows)});
    }
    return out;
}

StartPage::StartPage(const std::vector<RecentPlan>& recent, const std::vector<SamplePlan>& samples, QWidget* parent) : QScrollArea(parent) {
    setWidgetResizable(true);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setFocusPolicy(Qt::NoFocus);
    setAccessibleName(tr("Start"));
    auto* inside = new QWidget;
    columns_ = new QBoxLayout(QBoxLayout::LeftToRight, inside);
    const int gap = fontMetrics().height();
    columns_->setContentsMargins(gap, gap, gap, gap);
    columns_->setSpacing(2 * gap);
    // Plans of late stand first for somebody who has some: that is what they come back for.
    auto* left = new QVBoxLayout;
    auto* right = new QVBoxLayout;
    left->setSpacing(gap);
    right->setSpacing(gap);
    left->addWidget(recent.empty() ? beginning() : goingOn(recent));
    if (!recent.empty()) left->addWidget(beginning());
    else right->addWidget(goingOn(recent));
    right->addWidget(looking(samples));
    left->addStretch(1);
    right->addStretch(1);
    columns_->addLayout(left, 1);
    columns_->addLayout(right, 1);
    setWidget(inside);
    if (auto* first = inside->findChild<RowButton*>()) setFocusProxy(first);
}

QWidget* StartPage::beginning() {
    auto* box = new QWidget;
    QVBoxLayout* column = section(box, tr("Begin a plan"), tr("First of all: what does the person sit or lie on, or what will hold the mount?"));
    for (const SupportKind& kind : supportKinds()) {
        auto* row = new RowButton(QString::fromStdString(kind.name), QString::fromStdString(kind.about), box);
        row->setObjectName("new." + QString::fromStdString(kind.kind));
        connect(row, &RowButton::clicked, this, [this, id = QString::fromStdString(kind.kind)] { emit newPlan(id); });
        column->addWidget(row);
    }
    return box;
}

QWidget* StartPage::goingOn(const std::vector<RecentPlan>& recent) {
    auto* box = new QWidget;
    QVBoxLayout* column = section(box, tr("Go on with a plan"), {});
    for (const RecentPlan& plan : recent) {
        const QString when = shortLocalTime(plan.opened_utc), place = breakable(plan.path);
        const QString more = plan.there ? tr("%1 · %2").arg(when, place) : tr("No longer there · %1 · %2").arg(when, place);
        auto* row = new RowButton(plan.title.isEmpty() ? QFileInfo(plan.path).completeBaseName() : plan.title, more, box);
        row->setObjectName("recent." + plan.path);
        row->setEnabled(plan.there);
        connect(row, &RowButton::clicked, this, [this, path = plan.path] { emit openPath(path); });
        column->addWidget(row);
    }
    auto* open = new RowButton(tr("Open a file …"), tr("A plan, or its JSON form"), box);
    open->setObjectName("browse");
    connect(open, &RowButton::clicked, this, &StartPage::browse);
    column->addWidget(open);
    return box;
}

QWidget* StartPage::looking(const std::vector<SamplePlan>& samples) {
    auto* box = new QWidget;
    QVBoxLayout* column = section(box, tr("Look at a sample"), tr("Invented people; try anything, the samples stay as they are."));
    for (const SamplePlan& sample : samples) {
        auto* row = new RowButton(sample.title, sample.shows, box);
        row->setObjectName("sample." + QFileInfo(sample.path).completeBaseName());
        connect(row, &RowButton::clicked, this, [this, path = sample.path] { emit openSample(path); });
        column->addWidget(row);
    }
    return box;
}

void StartPage::resizeEvent(QResizeEvent* event) {
    // Two columns when each has room for its lines, else one below the other.
    const bool wide = viewport()->width() > fontMetrics().averageCharWidth() * 92;
    columns_->setDirection(wide ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    QScrollArea::resizeEvent(event);
}

}  // namespace hither
