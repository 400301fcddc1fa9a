#include "app/panels/site_panel.h"

#include <algorithm>

#include <QListWidget>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/panels/givens_pieces.h"
#include "app/widgets/words_label.h"
#include "core/plan/edits/sites.h"

namespace hither {

SitePanel::SitePanel(const EditorContext& context, QWidget* parent)
    : GivensPanel(context, JobStep::site, tr("Say where the person's one dependable movement is: the switch will be brought there, facing it."), parent) {
    setAccessibleName(tr("Site"));
    connect(&context_.view, &ViewState::pickedChanged, this, &SitePanel::follow);
}

const SiteSpec* SitePanel::specIn(const Plan& in) const {
    const auto found = std::find_if(in.sites.begin(), in.sites.end(), [&](const SiteSpec& s) { return s.id == shown_; });
    return found == in.sites.end() ? nullptr : &*found;
}

Edited SitePanel::change(const Plan& in, const Change& make) const {
    const SiteSpec* now = specIn(in);
    if (!now) return {std::nullopt, tr("This site is no longer there.").toStdString()};
    SiteSpec next = *now;
    make(next);
    return replaceSite(in, shown_, next);
}

const Body* SitePanel::body() const {
    const auto situation = context_.analysis.situation();
    return situation && situation->body ? &*situation->body : nullptr;   // kept by the analysis until the plan changes
}

const Site* SitePanel::placed() const {
    const auto situation = context_.analysis.situation();
    return situation ? situation->site(shown_) : nullptr;
}

std::optional<Pose> SitePanel::frameOf(const SiteSpec& s) const {
    if (s.given == SiteGiven::typed) return Pose::Identity();
    const Body* whole = body();
    if (!whole) return std::nullopt;
    SegmentId segment = s.segment;
    if (s.given == SiteGiven::fromPosture) {
        const ControlSite* control = whole->site(s.controlSite);
        if (!control) return std::nullopt;
        segment = control->segment;
    }
    const auto pose = whole->X_WSegment.find(segment);
    return pose == whole->X_WSegment.end() ? std::nullopt : std::optional(pose->second);
}

void SitePanel::follow() {
    const Picked& picked = context_.view.picked();
    if (picked.kind != Picked::Kind::site || picked.id == shown_) return;
    shown_ = picked.id;
    refreshSoon();
}

QString SitePanel::structure() const {
    QStringList all{plan().person ? "person" : "nobody"};
    for (const SiteSpec& s : plan().sites) all << QString::fromStdString(s.id);
    all << "shown" << QString::fromStdString(spec() || plan().sites.empty() ? shown_ : plan().sites.front().id);
    if (const SiteSpec* s = spec()) all << QString::number(static_cast<int>(s->given)) << QString::fromStdString(s->controlSite) << QString::number(s->directionTyped);
    for (const SupportSpec& s : plan().supports) all << QString::fromStdString(s.id) << QString::fromStdString(s.kind) << QString::fromStdString(s.name);
    return all.join('\n');
}

void SitePanel::build(QVBoxLayout* form) {
    if (!spec()) shown_ = plan().sites.empty() ? std::string() : plan().sites.front().id;
    buildList(form);
    if (spec()) {
        buildFigures(form);
        buildGiven(form);
        buildMounts(form);
    }
    buildAdd(form);
}

void SitePanel::buildList(QVBoxLayout* form) {
    if (plan().sites.empty()) return;
    QListWidget* list = pickList(tr("Sites of this plan"), static_cast<int>(plan().sites.size()));
    list->setObjectName("sites");
    for (const SiteSpec& s : plan().sites) {
        auto* item = new QListWidgetItem(list);
        item->setData(Qt::UserRole, QString::fromStdString(s.id));
        if (s.id == shown_) list->setCurrentItem(item);
    }
    keep([this, list] {
        for (int i = 0; i < list->count() && i < static_cast<int>(plan().sites.size()); ++i) {
            const SiteSpec& s = plan().sites[static_cast<std::size_t>(i)];
            list->item(i)->setText(QString::fromStdString(s.name.empty() ? s.id : s.name));
        }
    });
    connect(list, &QListWidget::currentItemChanged, this, [this](QListWidgetItem* now) {
        if (now) context_.view.pick(Picked::site(now->data(Qt::UserRole).toString().toStdString()));
    });
    form->addWidget(list);
    auto* remove = changes(new QPushButton(tr("Remove this site")));
    remove->setObjectName("remove site");
    connect(remove, &QPushButton::clicked, this, [this] {
        const std::string going = shown_;
        document().apply(tr("Remove a site"), removeSite(plan(), going));
    });
    form->addWidget(remove, 0, Qt::AlignLeading);
}

}  // namespace hither
