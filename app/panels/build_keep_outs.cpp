#include "app/panels/build_keep_outs.h"

#include <algorithm>

#include <QAbstractItemView>
#include <QComboBox>
#include <QFormLayout>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include "app/panels/build_flow.h"
#include "app/panels/build_rows.h"
#include "app/widgets/choice_box.h"
#include "app/widgets/text_field.h"
#include "core/offers/offer_words.h"
#include "core/plan/edits/keep_outs.h"
#include "core/plan/edits/options.h"

namespace hither {
namespace {

constexpr double least_m = 0.001, largest_m = 5, farthest_m = 20;
bool isBox(const Solid& s) { return s.kind == SolidKind::box || s.kind == SolidKind::roundedBox; }
bool isLong(const Solid& s) { return s.kind == SolidKind::cylinder || s.kind == SolidKind::capsule; }

}  // namespace

BuildKeepOuts::BuildKeepOuts(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    auto* about = new QLabel(tr("What no mount may reach into: a transfer side, a line of sight, a brake."), this);
    about->setWordWrap(true);
    about->setProperty("quiet", true);
    column->addWidget(about);
    list_ = new BuildRowList(this);
    list_->setAccessibleName(tr("Volumes to keep free"));
    list_->fitToRows(0);
    column->addWidget(list_);
    auto* flow = new BuildFlow;
    const auto button = [&](const QString& words, SolidKind kind) {
        auto* b = new QPushButton(words, this);
        b->setMinimumHeight(24);
        flow->addWidget(b);
        connect(b, &QPushButton::clicked, this, [this, kind] { add(kind); });
    };
    button(tr("Add a box"), SolidKind::box);
    button(tr("Add a ball"), SolidKind::sphere);
    button(tr("Add a cylinder"), SolidKind::cylinder);
    column->addLayout(flow);

    form_ = new QWidget(this);
    rows_ = new QFormLayout(form_);
    rows_->setContentsMargins(0, 0, 0, 0);
    rows_->setRowWrapPolicy(QFormLayout::WrapLongRows);
    rows_->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    name_ = new TextField(form_);
    name_->setAccessibleName(tr("Name of the volume to keep free"));
    rows_->addRow(tr("Name"), name_);
    const QString names[] = {tr("Middle, forward"), tr("Middle, left"), tr("Middle, up"), tr("Length"), tr("Width"), tr("Height"), tr("Across"), tr("High"), tr("Margin round it")};
    for (int f = 0; f < fields; ++f) {
        auto* field = new NumberField(NumberField::Of::length, form_);
        number_[static_cast<std::size_t>(f)] = field;
        if (f <= z) field->setRange(-farthest_m, farthest_m);
        else if (f == margin) field->setRange(0, largest_m);
        else field->setRange(least_m, largest_m);
        field->setAccessibleName(names[f]);
        rows_->addRow(names[f], field);
        connect(field, &NumberField::tried, this, [this, f](double value) {
            if (!gesture_) {
                const KeepOut* k = current();
                if (!k) return;
                gesture_ = true;
                context_.document.beginGesture(tr("Change %1").arg(QString::fromStdString(k->name)));
            }
            change(f, value, true);
        });
        connect(field, &NumberField::committed, this, [this, f](std::optional<double> value) {
            if (!value) return;
            const bool going = std::exchange(gesture_, false);
            change(f, *value, going);
            if (going) context_.document.endGesture();
        });
        connect(field, &NumberField::abandoned, this, [this] {
            if (std::exchange(gesture_, false)) context_.document.cancelGesture();
        });
    }
    carrier_ = new ChoiceBox(form_);
    carrier_->setAccessibleName(tr("Goes with"));
    carrier_->view()->setAccessibleName(tr("Goes with"));
    rows_->addRow(tr("Goes with"), carrier_);
    remove_ = new QPushButton(tr("Remove it"), form_);
    remove_->setAccessibleName(tr("Remove this volume"));
    remove_->setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    remove_->setMinimumHeight(24);
    rows_->addRow(remove_);
    column->addWidget(form_);
    connect(remove_, &QPushButton::clicked, this, &BuildKeepOuts::remove);
    connect(carrier_, &QComboBox::activated, this, &BuildKeepOuts::chooseCarrier);
    connect(name_, &TextField::committed, this, [this](const QString& words) {
        const KeepOut* k = current();
        if (!k) return;
        KeepOut by = *k;
        by.name = words.trimmed().toStdString();
        if (!by.name.empty()) replace(tr("Rename %1").arg(QString::fromStdString(k->name)), by, false);
        refresh();
    });
    connect(list_, &BuildRowList::chosen, this, [this](const QString& key) { context_.view.pick(Picked::keepOut(key.toStdString())); });
    refresh();
}

const KeepOut* BuildKeepOuts::current() const {
    const PlanOption* option = context_.view.planOption();
    if (!option || context_.view.picked().kind != Picked::Kind::keepOut) return nullptr;
    for (const KeepOut& k : option->keepOuts) if (k.id == context_.view.picked().id) return &k;
    return nullptr;
}

void BuildKeepOuts::add(SolidKind kind) {
    const PlanOption* option = context_.view.planOption();
    Document& d = context_.document;
    const std::string optionId = option ? option->id : "option-1";
    const auto taken = [&](const std::string& id) { return option && std::any_of(option->keepOuts.begin(), option->keepOuts.end(), [&](const KeepOut& k) { return k.id == id; }); };
    // In front of the first support, at the height of a seat: where it is seen, to be moved from there.
    Vec3 at(0.4, 0, 0.6);
    KeepOut k;
    k.margin_m = 0.010;
    switch (kind) {
        case SolidKind::sphere:
            k.id = freeId("ball", taken);
            k.name = tr("Ball to keep free").toStdString();
            k.solid = Solid::sphere(at, 0.15);
            break;
        case SolidKind::cylinder:
            k.id = freeId("cylinder", taken);
            k.name = tr("Cylinder to keep free").toStdString();
            k.solid = Solid::cylinder(at - Vec3(0, 0, 0.2), at + Vec3(0, 0, 0.2), 0.1);
            break;
        default:
            k.id = freeId("box", taken);
            k.name = tr("Box to keep free").toStdString();
            k.solid = Solid::box(translation(at), Vec3(0.15, 0.15, 0.15));
    }
    Edited edit = option ? Edited{d.plan(), {}} : addOption(d.plan(), optionId, tr("Option 1").toStdString());
    if (edit) edit = addKeepOut(*edit.plan, optionId, k);
    if (d.apply(tr("Keep a volume free"), edit)) {
        context_.view.pick(Picked::keepOut(k.id));
        name_->setFocus(Qt::OtherFocusReason);
        name_->selectAll();
    }
}

void BuildKeepOuts::remove() {
    if (const KeepOut* k = current())
        context_.document.apply(tr("Remove %1").arg(QString::fromStdString(k->name)), removeKeepOut(context_.document.plan(), context_.view.option(), k->id));
}

void BuildKeepOuts::replace(const QString& label, const KeepOut& by, bool preview) {
    Document& d = context_.document;
    if (preview) d.preview(replaceKeepOut(d.gestureStart(), context_.view.option(), by.id, by));
    else d.apply(label, replaceKeepOut(d.plan(), context_.view.option(), by.id, by));
}

void BuildKeepOuts::change(int field, double value, bool preview) {
    const KeepOut* k = current();
    if (!k) return;
    KeepOut by = *k;
    Solid& s = by.solid;
    if (field <= z) s.X_FG.translation()[field] = value;
    else if (field == margin) by.margin_m = value;
    else if (field <= sizeZ) {
        s.half[field - sizeX] = value / 2;
        if (s.kind == SolidKind::roundedBox) s.radius = std::min(s.radius, s.half.minCoeff());
    } else if (field == across) s.radius = value / 2;
    else s.half.z() = value / 2;
    replace(tr("Change %1").arg(QString::fromStdString(k->name)), by, preview);
}

void BuildKeepOuts::chooseCarrier(int index) {
    const KeepOut* k = current();
    if (!k) return;
    KeepOut by = *k;
    const QStringList ids = carrier_->itemData(index).toStringList();
    by.support = ids.value(0).toStdString();
    by.group = ids.value(1).toStdString();
    replace(tr("Let %1 go with %2").arg(QString::fromStdString(k->name), carrier_->itemText(index)), by, false);
}

void BuildKeepOuts::refresh() {
    const PlanOption* option = context_.view.planOption();
    const UnitSystem units = context_.view.units();
    std::vector<std::pair<QString, BuildRow>> rows;
    if (option)
        for (const KeepOut& k : option->keepOuts) {
            BuildRow row;
            row.title = QString::fromStdString(k.name.empty() ? k.id : k.name);
            row.detail = tr("with a margin of %1").arg(QString::fromStdString(lengthWords(k.margin_m, units)));
            rows.emplace_back(QString::fromStdString(k.id), row);
        }
    list_->show(rows);
    list_->setVisible(!rows.empty());
    const KeepOut* k = current();
    list_->pickKey(k ? QString::fromStdString(k->id) : QString());
    form_->setVisible(k);
    if (!k) return;
    name_->setWords(QString::fromStdString(k->name));
    const Solid& s = k->solid;
    const double values[] = {s.X_FG.translation().x(), s.X_FG.translation().y(), s.X_FG.translation().z(), 2 * s.half.x(), 2 * s.half.y(), 2 * s.half.z(), 2 * s.radius, 2 * s.half.z(), k->margin_m};
    for (int f = 0; f < fields; ++f) {
        const bool there = f <= z || f == margin || (f <= sizeZ && isBox(s)) || (f == across && (isLong(s) || s.kind == SolidKind::sphere)) || (f == height && isLong(s));
        NumberField* field = number_[static_cast<std::size_t>(f)];
        rows_->setRowVisible(field, there);
        field->setUnits(units);
        if (there && field->value() != values[f]) field->setValue(values[f]);
    }
    const QSignalBlocker quiet(carrier_);
    std::vector<std::pair<QString, QStringList>> carriers{{tr("nothing: it stays in the room"), {QString(), QString()}}};
    if (const std::shared_ptr<const Situation> situation = context_.analysis.situation())
        for (const Support& support : situation->supports) {
            const QString name = QString::fromStdString(support.name), id = QString::fromStdString(support.id);
            carriers.push_back({name, {id, QString()}});
            for (const MovingGroup& g : support.groups) carriers.push_back({tr("%1: %2").arg(name, QString::fromStdString(g.name)), {id, QString::fromStdString(g.id)}});
        }
    bool same = carrier_->count() == static_cast<int>(carriers.size());
    for (int i = 0; same && i < carrier_->count(); ++i) same = carrier_->itemText(i) == carriers[static_cast<std::size_t>(i)].first;
    if (!same) {
        carrier_->clear();
        for (const auto& [words, ids] : carriers) carrier_->addItem(words, ids);
    }
    for (int i = 0; i < carrier_->count(); ++i)
        if (carrier_->itemData(i).toStringList() == QStringList{QString::fromStdString(k->support), QString::fromStdString(k->group)} && carrier_->currentIndex() != i) carrier_->setCurrentIndex(i);
}

}  // namespace hither
