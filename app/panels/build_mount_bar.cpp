#include "app/panels/build_mount_bar.h"

#include <algorithm>

#include <QAbstractItemView>
#include <QComboBox>
#include <QCoreApplication>
#include <QInputDialog>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include "app/panels/build_flow.h"
#include "app/widgets/choice_box.h"
#include "core/plan/edits/mounts.h"

namespace hither {
namespace {

struct Words { Q_DECLARE_TR_FUNCTIONS(BuildMountBar) };

/// Fills a combo box without signalling; nothing happens when it holds the same already.
void fill(QComboBox* box, const std::vector<std::pair<QString, QString>>& items, const QString& current) {
    const QSignalBlocker quiet(box);
    bool same = box->count() == static_cast<int>(items.size());
    for (int i = 0; same && i < box->count(); ++i) {
        const auto& item = items[static_cast<std::size_t>(i)];
        same = box->itemText(i) == item.first && box->itemData(i).toString() == item.second;
    }
    if (!same) {
        box->clear();
        for (const auto& [words, id] : items) box->addItem(words, id);
    }
    if (const int at = box->findData(current); at != box->currentIndex()) box->setCurrentIndex(at);
}

}  // namespace

QString freeMountName(const PlanOption* option) {
    for (int n = 1;; ++n) {
        const QString name = Words::tr("Mount %1").arg(n);
        if (!option || std::none_of(option->mounts.begin(), option->mounts.end(), [&](const Mount& m) { return m.name == name.toStdString(); })) return name;
    }
}

BuildMountBar::BuildMountBar(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    const auto combo = [this](QLabel*& label, const QString& words) {
        auto* box = new ChoiceBox(this);
        label = new QLabel(words, this);
        label->setBuddy(box);
        box->setAccessibleName(words);
        box->view()->setAccessibleName(words);
        return box;
    };
    mounts_ = combo(mountLabel_, tr("Mount"));
    sites_ = combo(siteLabel_, tr("Its switch serves"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    column->addWidget(mountLabel_);
    column->addWidget(mounts_);
    auto* buttons = new BuildFlow;
    const auto button = [](const QString& words, const QString& help, QWidget* on) {
        auto* b = new QPushButton(words, on);
        b->setToolTip(help);
        b->setMinimumHeight(24);
        return b;
    };
    auto* fresh = button(tr("New mount"), tr("Choose a rail, edge, face or cloth for another mount"), this);
    buttons->addWidget(fresh);
    connect(fresh, &QPushButton::clicked, this, &BuildMountBar::wantsNew);
    rest_ = new QWidget(this);
    auto* rest = new BuildFlow(rest_);
    auto* copies = button(tr("Copy"), tr("Another mount of the same parts in the same place"), rest_);
    auto* renames = button(tr("Rename"), tr("Gives the mount another name"), rest_);
    auto* removes = button(tr("Remove mount"), tr("Takes the whole mount out of this option"), rest_);
    for (QPushButton* b : {copies, renames, removes}) rest->addWidget(b);
    copies->setAccessibleName(tr("Copy this mount"));
    renames->setAccessibleName(tr("Rename this mount"));
    connect(copies, &QPushButton::clicked, this, &BuildMountBar::copy);
    connect(renames, &QPushButton::clicked, this, &BuildMountBar::rename);
    connect(removes, &QPushButton::clicked, this, &BuildMountBar::remove);
    column->addLayout(buttons);
    column->addWidget(rest_);
    column->addWidget(siteLabel_);
    column->addWidget(sites_);
    connect(mounts_, &QComboBox::activated, this, [this](int index) { context_.view.pick(Picked::mount(mounts_->itemData(index).toString().toStdString())); });
    connect(sites_, &QComboBox::activated, this, &BuildMountBar::pickSite);
}

void BuildMountBar::refresh() {
    const PlanOption* option = context_.view.planOption();
    const Mount* mount = context_.view.mount();
    std::vector<std::pair<QString, QString>> mounts, sites;
    if (option)
        for (const Mount& m : option->mounts) mounts.emplace_back(QString::fromStdString(m.name), QString::fromStdString(m.id));
    fill(mounts_, mounts, mount ? QString::fromStdString(mount->id) : QString());
    sites.emplace_back(tr("No site yet"), QString());
    for (const SiteSpec& s : context_.document.plan().sites) sites.emplace_back(QString::fromStdString(s.name), QString::fromStdString(s.id));
    fill(sites_, sites, mount ? QString::fromStdString(mount->site) : QString());
    for (QWidget* w : {static_cast<QWidget*>(mountLabel_), static_cast<QWidget*>(mounts_), rest_, static_cast<QWidget*>(siteLabel_), static_cast<QWidget*>(sites_)})
        w->setVisible(mount);
}

void BuildMountBar::pickSite(int index) {
    const Mount* mount = context_.view.mount();
    if (!mount) return;
    const std::string site = sites_->itemData(index).toString().toStdString();
    const QString words = site.empty() ? tr("Serve no site") : tr("Serve %1").arg(sites_->itemText(index));
    context_.document.apply(words, retargetMount(context_.document.plan(), context_.view.option(), mount->id, site));
    refresh();
}

void BuildMountBar::copy() {
    const Mount* mount = context_.view.mount();
    const PlanOption* option = context_.view.planOption();
    if (!mount || !option) return;
    Mount copied = *mount;
    copied.id = freeId(mount->id, [&](const std::string& id) { return std::any_of(option->mounts.begin(), option->mounts.end(), [&](const Mount& m) { return m.id == id; }); });
    copied.name = tr("%1, copy").arg(QString::fromStdString(mount->name)).toStdString();
    copied.site.clear();   // one switch is enough for a site
    std::vector<Part> used;
    for (const MountPart& part : mount->parts)
        if (const Part* p = context_.document.plan().part(part.part)) used.push_back(*p);
    const std::string id = copied.id;
    if (context_.document.apply(tr("Copy %1").arg(QString::fromStdString(mount->name)), addMount(context_.document.plan(), context_.view.option(), copied, used)))
        context_.view.pick(Picked::mount(id));
}

void BuildMountBar::rename() {
    const Mount* mount = context_.view.mount();
    if (!mount) return;
    const std::string id = mount->id;
    const QString old = QString::fromStdString(mount->name);
    bool said = false;
    const QString name = QInputDialog::getText(this, tr("Rename the mount"), tr("Name of the mount"), QLineEdit::Normal, old, &said).trimmed();
    if (said) context_.document.apply(tr("Rename %1").arg(old), renameMount(context_.document.plan(), context_.view.option(), id, name.toStdString()));
}

void BuildMountBar::remove() {
    const Mount* mount = context_.view.mount();
    if (!mount) return;
    context_.document.apply(tr("Remove %1").arg(QString::fromStdString(mount->name)), removeMount(context_.document.plan(), context_.view.option(), mount->id));
}

}  // namespace hither
