#include <algorithm>
#include <map>

#include <QHeaderView>
#include <QLineEdit>
#include <QPushButton>
#include <QTreeWidget>
#include <QVBoxLayout>

#include "app/panels/givens_pieces.h"
#include "app/panels/givens_words.h"
#include "app/panels/site_panel.h"
#include "app/widgets/field_row.h"
#include "app/widgets/fold.h"
#include "app/widgets/words_label.h"
#include "core/plan/edits/sites.h"

namespace hither {
namespace {

/// Shows the rows that hold every word typed; a body part without such a row is hidden.
void filter(QTreeWidget* tree, const QString& typed) {
    const QStringList words = typed.simplified().toLower().split(' ', Qt::SkipEmptyParts);
    for (int g = 0; g < tree->topLevelItemCount(); ++g) {
        QTreeWidgetItem* group = tree->topLevelItem(g);
        bool any = false;
        for (int i = 0; i < group->childCount(); ++i) {
            QTreeWidgetItem* row = group->child(i);
            const QString all = (group->text(0) + ' ' + row->text(0)).toLower();
            const bool fits = std::all_of(words.begin(), words.end(), [&](const QString& w) { return all.contains(w); });
            row->setHidden(!fits);
            any = any || fits;
        }
        group->setHidden(!any);
        group->setExpanded(!words.isEmpty() && any);
    }
}

/// Words of another number of lines make everything round them higher or lower, out to the panel; a layout within
/// layouts does not tell so by itself, and what is below would lie over them.
void makeRoom(QWidget* words, QWidget* panel) {
    for (QWidget* w = words; w && w != panel; w = w->parentWidget()) w->updateGeometry();
    panel->updateGeometry();
    if (panel->layout()) panel->layout()->invalidate();
}

}  // namespace

void SitePanel::buildAdd(QVBoxLayout* form) {
    auto* fold = new Fold(plan().sites.empty() ? tr("Choose a site") : tr("Add another site"), plan().sites.empty());
    QVBoxLayout* inside = fold->inside();
    if (plan().person) {
        buildClick(inside);
        auto* search = new QLineEdit;
        search->setObjectName("find control site");
        search->setClearButtonEnabled(true);
        search->setPlaceholderText(tr("right elbow, knee …"));
        search->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
        inside->addWidget(new FieldRow(tr("Find"), search));

        auto* tree = new QTreeWidget;
        tree->setObjectName("control sites");
        tree->setAccessibleName(tr("Control sites by body part"));
        tree->setHeaderHidden(true);
        tree->setColumnCount(1);
        tree->setTabKeyNavigation(false);
        tree->setTextElideMode(Qt::ElideMiddle);
        std::map<QString, QTreeWidgetItem*> groups;
        for (const auto& [id, name] : controlSites()) {
            const QString part = controlSiteGroup(id);
            QTreeWidgetItem*& group = groups[part];
            if (!group) {
                group = new QTreeWidgetItem(tree, {part});
                group->setFlags(group->flags() & ~Qt::ItemIsSelectable);
            }
            auto* row = new QTreeWidgetItem(group, {nameFromCore(name)});
            row->setData(0, Qt::UserRole, QString::fromStdString(id));
        }
        const int rowHeight = std::max(26, tree->fontMetrics().height() + 10);
        tree->setStyleSheet(QString("QTreeWidget::item { min-height: %1px; }").arg(rowHeight));
        tree->setMinimumHeight(rowHeight * 8);
        inside->addWidget(tree);

        auto* says = wordsLabel({}, true);
        says->setObjectName("control site movement");
        inside->addWidget(says);
        auto* put = changes(new QPushButton(tr("Put a site there")));
        put->setObjectName("put site");
        inside->addWidget(put, 0, Qt::AlignLeading);
        const auto chosen = [tree] {
            const QTreeWidgetItem* now = tree->currentItem();
            return now && !now->isHidden() ? now->data(0, Qt::UserRole).toString().toStdString() : std::string();
        };
        const auto show = [this, says, put, chosen] {
            const std::string id = chosen();
            const ControlSite* control = body() && !id.empty() ? body()->site(id) : nullptr;
            put->setEnabled(!document().readOnly() && !id.empty());
            if (id.empty()) says->setText(tr("Choose a body part and a place on it."));
            else if (!control) says->setText(tr("The movement is shown once the body can be made."));
            else says->setText(tr("It moves %1, usually about %2.").arg(movementWords(body()->X_WSegment.at(control->segment).linear() * control->movement),
                                                                        printNumber(control->usual_m, {NumberOf::length, plan().display, 0, false})));
            makeRoom(says, this);
        };
        connect(search, &QLineEdit::textChanged, tree, [tree, show](const QString& typed) { filter(tree, typed); show(); });
        connect(tree, &QTreeWidget::currentItemChanged, says, show);
        connect(tree, &QTreeWidget::itemActivated, this, [this, chosen] { if (!chosen().empty() && !document().readOnly()) add(chosen()); });
        connect(search, &QLineEdit::returnPressed, this, [tree] {   // to the first that fits
            for (int g = 0; g < tree->topLevelItemCount(); ++g)
                for (int i = 0; i < tree->topLevelItem(g)->childCount(); ++i)
                    if (QTreeWidgetItem* row = tree->topLevelItem(g)->child(i); !row->isHidden()) {
                        tree->setCurrentItem(row);
                        tree->setFocus(Qt::OtherFocusReason);
                        return;
                    }
        });
        connect(put, &QPushButton::clicked, this, [this, chosen] { if (!chosen().empty()) add(chosen()); });
        keep(show);
    } else {
        inside->addWidget(wordsLabel(tr("With a person in the plan a site can be chosen on their body. Without one, type the point and the direction."), true));
        auto* person = new QPushButton(tr("Add the person"));
        person->setObjectName("to person");
        connect(person, &QPushButton::clicked, this, [this] { context_.view.setStep(JobStep::person); });
        inside->addWidget(person, 0, Qt::AlignLeading);
    }
    auto* type = changes(new QPushButton(tr("Type a point instead")));
    type->setObjectName("type site");
    connect(type, &QPushButton::clicked, this, [this] { add({}); });
    inside->addWidget(type, 0, Qt::AlignLeading);
    form->addWidget(fold);
}

/// A click on the body moves the site that is picked, and puts a new one when none is: says which.
void SitePanel::buildClick(QVBoxLayout* form) {
    auto* hint = wordsLabel({}, true);
    hint->setObjectName("click hint");
    form->addWidget(hint);
    const auto show = [this, hint] {
        hint->setText(context_.view.picked().kind == Picked::Kind::site ? tr("A click on the body in the scene moves the site that is picked. Choose the body part of another one here.")
                                                                        : tr("Click the body in the scene: a new site is put there. Or choose the body part here."));
        makeRoom(hint, this);
    };
    connect(&context_.view, &ViewState::pickedChanged, hint, show);
    keep(show);
    if (plan().sites.empty()) return;
    auto* next = changes(new QPushButton(tr("Put another by a click")));
    next->setObjectName("click another");
    connect(next, &QPushButton::clicked, this, [this] { context_.view.pick(Picked{}); });
    form->addWidget(next, 0, Qt::AlignLeading);
}

void SitePanel::add(const std::string& controlSite) {
    SiteSpec site;
    site.controlSite = controlSite;
    site.id = freeId(controlSite.empty() ? "site" : controlSite, [this](const std::string& id) {
        return std::any_of(plan().sites.begin(), plan().sites.end(), [&](const SiteSpec& s) { return s.id == id; });
    });
    if (controlSite.empty()) {
        site.name = tr("Typed point").toStdString();
        site.point = Vec3(0.30, 0, 0.80);   // before a seated person's chest: something to move from
        site.given = SiteGiven::typed;
    } else {
        for (const auto& [id, name] : controlSites()) if (id == controlSite) site.name = name;
        site.given = SiteGiven::fromPosture;
        site.directionTyped = false;
    }
    if (document().apply(tr("Add a site"), addSite(plan(), site))) context_.view.pick(Picked::site(site.id));
}

}  // namespace hither
