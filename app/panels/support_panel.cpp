#include "app/panels/support_panel.h"

#include <algorithm>

#include <QApplication>
#include <QHBoxLayout>
#include <QListWidget>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/panels/givens_pieces.h"
#include "app/widgets/choice_box.h"
#include "app/widgets/field_row.h"
#include "app/widgets/fold.h"
#include "app/widgets/picture_button.h"
#include "app/widgets/support_drawing.h"
#include "app/widgets/text_field.h"
#include "app/widgets/theme.h"
#include "app/widgets/words_label.h"
#include "core/plan/edits/supports.h"

namespace hither {
namespace {

const SupportKind* kindOf(const std::string& kind) {
    const auto& kinds = supportKinds();
    const auto found = std::find_if(kinds.begin(), kinds.end(), [&](const SupportKind& k) { return k.kind == kind; });
    return found == kinds.end() ? nullptr : &*found;
}

/// A kind as it is when nothing has been typed.
class KindButton : public PictureButton {
public:
    explicit KindButton(const SupportKind& kind) : PictureButton(fromCore(kind.name), fromCore(kind.about)) {
        SupportSpec spec;
        spec.id = "it";
        spec.kind = kind.kind;
        support_ = makeSupport(spec).support;
        setObjectName("add " + QString::fromStdString(kind.kind));
    }

protected:
    void paintPicture(QPainter& painter, const QRectF& box) override {
        if (support_ && !support_->solids.empty()) SupportDrawing(*support_, support_->kind == "tray" ? DrawnFrom::above : DrawnFrom::side, box).paint(painter);
    }

private:
    std::optional<Support> support_;
};

/// A support that stands beside what is there already and not in it.
Vec3 freePlace(const Plan& plan, const std::string& kind) {
    if (plan.supports.empty()) return Vec3::Zero();
    if (kind == "tray") return Vec3(0.20, 0, 0);
    if (kind == "table") return Vec3(0.45, 0, 0);
    if (kind == "pole" || kind == "custom") return Vec3(0.30, -0.70, 0);
    return Vec3(0, -1.20, 0);
}

}  // namespace

QString dimensionName(const std::string& key) {
    std::string words = key;
    std::replace(words.begin(), words.end(), '_', ' ');
    return nameFromCore(words);
}

SupportPanel::SupportPanel(const EditorContext& context, QWidget* parent)
    : GivensPanel(context, JobStep::support, tr("Choose what the person sits or lies on and what a mount can be fixed to, and type what you measured. What is not typed is assumed."), parent) {
    setAccessibleName(tr("Support"));
    connect(&context_.view, &ViewState::pickedChanged, this, &SupportPanel::follow);
    connect(qApp, &QApplication::focusChanged, this, [this](QWidget*, QWidget* now) {
        if (!now || !isAncestorOf(now)) return;
        // The tube whose size is typed is picked, so that the scene shows which one it is.
        if (const QVariant rail = now->property("rail"); rail.isValid()) context_.view.pick(Picked::attachment(shown_, rail.toString().toStdString()));
        if (!now->property("dimension").isValid()) return;
        dimension_ = now->property("dimension").toString().toStdString();
        showDimension();
    });
}

const SupportSpec* SupportPanel::specIn(const Plan& in) const {
    const auto found = std::find_if(in.supports.begin(), in.supports.end(), [&](const SupportSpec& s) { return s.id == shown_; });
    return found == in.supports.end() ? nullptr : &*found;
}

Edited SupportPanel::change(const Plan& in, const Change& make) const {
    const SupportSpec* now = specIn(in);
    if (!now) return {std::nullopt, tr("This support is no longer there.").toStdString()};
    SupportSpec next = *now;
    make(next);
    return replaceSupport(in, shown_, next);
}

std::shared_ptr<const Support> SupportPanel::made(bool atZero) const {
    const SupportSpec* now = spec();
    if (!now) return nullptr;
    SupportSpec copy = *now;
    if (atZero) copy.settings.clear();
    SupportMade result = makeSupport(copy);
    return result.support ? std::make_shared<const Support>(std::move(*result.support)) : nullptr;
}

void SupportPanel::follow() {
    const Picked& picked = context_.view.picked();
    if (picked.kind != Picked::Kind::support && picked.kind != Picked::Kind::attachment) return;
    if (picked.id == shown_) return;
    shown_ = picked.id;
    dimension_.clear();
    refreshSoon();
}

QString SupportPanel::structure() const {
    QStringList all;
    for (const SupportSpec& s : plan().supports) {
        all << QString::fromStdString(s.id) << QString::fromStdString(s.kind);
        if (s.id == shown_ || plan().supports.size() == 1) continue;
        if (const SupportMade other = makeSupport(s); other.support)
            for (const MovingGroup& g : other.support->groups) all << QString::fromStdString(g.id);
    }
    all << "shown" << QString::fromStdString(spec() || plan().supports.empty() ? shown_ : plan().supports.front().id);
    if (const auto support = made(false)) {
        for (const MovingGroup& g : support->groups) all << QString::fromStdString(g.id);
        for (const Attachment& a : support->attachments) all << QString::fromStdString(a.id);
    }
    return all.join('\n');
}

void SupportPanel::build(QVBoxLayout* form) {
    picture_ = nullptr;
    if (!spec()) shown_ = plan().supports.empty() ? std::string() : plan().supports.front().id;
    buildList(form);
    if (spec()) {
        buildName(form);
        buildDimensions(form);
        buildMoving(form);
        buildTubes(form);
        buildPlace(form);
    }
    buildChooser(form);
}

void SupportPanel::buildList(QVBoxLayout* form) {
    if (plan().supports.empty()) return;
    QListWidget* list = pickList(tr("Supports of this plan"), static_cast<int>(plan().supports.size()));
    list->setObjectName("supports");
    for (const SupportSpec& s : plan().supports) {
        auto* item = new QListWidgetItem(list);
        item->setData(Qt::UserRole, QString::fromStdString(s.id));
        if (s.id == shown_) list->setCurrentItem(item);
    }
    keep([this, list] {
        for (int i = 0; i < list->count() && i < static_cast<int>(plan().supports.size()); ++i) {
            const SupportSpec& s = plan().supports[static_cast<std::size_t>(i)];
            const SupportKind* kind = kindOf(s.kind);
            const QString kindName = kind ? fromCore(kind->name) : QString::fromStdString(s.kind);
            list->item(i)->setText(s.name.empty() || QString::fromStdString(s.name) == kindName ? kindName : tr("%1 (%2)").arg(QString::fromStdString(s.name), kindName));
        }
    });
    connect(list, &QListWidget::currentItemChanged, this, [this](QListWidgetItem* now) {
        if (now) context_.view.pick(Picked::support(now->data(Qt::UserRole).toString().toStdString()));
    });
    form->addWidget(list);
    auto* remove = changes(new QPushButton(tr("Remove this support")));
    remove->setObjectName("remove support");
    connect(remove, &QPushButton::clicked, this, [this] {
        const std::string going = shown_;
        document().apply(tr("Remove a support"), removeSupport(plan(), going));
    });
    form->addWidget(remove, 0, Qt::AlignLeading);
}

void SupportPanel::buildChooser(QVBoxLayout* form) {
    auto* fold = new Fold(plan().supports.empty() ? tr("Choose a support") : tr("Add another support"), plan().supports.empty());
    for (const SupportKind& kind : supportKinds()) {
        auto* button = changes(new KindButton(kind));
        connect(button, &QAbstractButton::clicked, this, [this, &kind] { add(kind); });
        fold->inside()->addWidget(button);
    }
    form->addWidget(fold);
}

void SupportPanel::add(const SupportKind& kind) {
    SupportSpec spec;
    spec.kind = kind.kind;
    spec.id = freeId(kind.kind, [this](const std::string& id) {
        return std::any_of(plan().supports.begin(), plan().supports.end(), [&](const SupportSpec& s) { return s.id == id; });
    });
    spec.at_m = freePlace(plan(), kind.kind);
    if (kind.kind == "tray") {   // it goes with the chair that it lies on
        for (const SupportSpec& other : plan().supports) {
            const SupportMade chair = makeSupport(other);
            if (!chair.support || chair.support->resting.posture != Resting::Posture::seated) continue;
            spec.carriedBy = other.id;
            spec.carriedByGroup = chair.support->resting.seatGroup;
            break;
        }
    }
    if (document().apply(tr("Add: %1").arg(fromCore(kind.name)), addSupport(plan(), spec))) context_.view.pick(Picked::support(spec.id));
}

void SupportPanel::buildName(QVBoxLayout* form) {
    auto* name = new TextField;
    name->setObjectName("support name");
    if (const SupportKind* kind = kindOf(spec()->kind)) name->setPlaceholderText(fromCore(kind->name));
    tie(name, tr("Rename a support"), [this](const Plan& in) { const SupportSpec* s = specIn(in); return s ? s->name : std::string(); },
        [this](const Plan& in, const std::string& words) { return change(in, [&](SupportSpec& s) { s.name = words; }); });
    name->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    form->addWidget(new FieldRow(tr("Name"), name));
}

}  // namespace hither
