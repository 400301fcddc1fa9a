#include "app/panels/build_settings_form.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include "app/panels/build_dial.h"
#include "app/panels/build_flow.h"
#include "app/panels/build_words.h"

namespace hither {

BuildSettingBox::BuildSettingBox(const EditorContext& context, const Setting& setting, const QString& heading, QWidget* parent)
    : QWidget(parent), context_(context), setting_(setting), heading_(heading) {
    title_ = new QLabel(this);
    title_->setWordWrap(true);
    QFont bold = title_->font();
    bold.setBold(true);
    title_->setFont(bold);
    about_ = new QLabel(this);
    about_->setWordWrap(true);
    about_->setProperty("quiet", true);
    kept_ = new QCheckBox(tr("Locked"), this);
    kept_->setToolTip(tr("A locked joint stays where it is when the switch is brought to its site"));
    auto* head = new BuildFlow;
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 6, 0, 6);
    column->setSpacing(2);
    if (!heading.isEmpty()) {
        auto* part = new QLabel(heading, this);
        part->setWordWrap(true);
        column->addWidget(part);
    }
    column->addWidget(title_);
    column->addWidget(about_);
    for (std::size_t i = 0; i < setting.dials.size(); ++i) {
        auto* dial = new BuildDial(this);
        dials_.push_back(dial);
        column->addWidget(dial);
        connect(dial, &BuildDial::began, this, [this] {
            context_.document.beginGesture(settingLabel(context_.document.plan(), context_.view.option(), mount_, setting_));
        });
        connect(dial, &BuildDial::tried, this, [this, dial](double value) { change(dial->dial(), value, true); });
        connect(dial, &BuildDial::entered, this, [this, dial](double value) { change(dial->dial(), value, false); });
        connect(dial, &BuildDial::ended, &context_.document, &Document::endGesture);
        connect(dial, &BuildDial::cancelled, &context_.document, &Document::cancelGesture);
    }
    column->addLayout(head);
    head->addWidget(kept_);
    connect(kept_, &QCheckBox::clicked, this, [this](bool kept) {
        const QString label = settingLabel(context_.document.plan(), context_.view.option(), mount_, setting_);
        context_.document.apply(kept ? tr("Lock: %1").arg(label) : tr("Unlock: %1").arg(label), withKept(context_.document.plan(), context_.view.option(), mount_, setting_.of, kept));
    });
    if (setting.fromBelow) {
        fromBelow_ = new QCheckBox(tr("From below the edge"), this);
        head->addWidget(fromBelow_);
        connect(fromBelow_, &QCheckBox::clicked, this, [this](bool below) {
            context_.document.apply(tr("Fix it from %1").arg(below ? tr("below") : tr("above")), withFromBelow(context_.document.plan(), context_.view.option(), mount_, below));
        });
    }
    if (setting.of.what != SettingOf::What::place) {
        home_ = new QPushButton(tr("Home"), this);
        home_->setAutoDefault(true);
        home_->setToolTip(tr("Sets it to zero, or as near as its range allows"));
        head->addWidget(home_);
        connect(home_, &QPushButton::clicked, this, [this] {
            context_.document.apply(tr("Home: %1").arg(settingLabel(context_.document.plan(), context_.view.option(), mount_, setting_)),
                                    atHome(context_.document.plan(), context_.view.option(), mount_, setting_.of));
        });
    }
}

void BuildSettingBox::change(const Dial& dial, double value, bool preview) {
    Document& d = context_.document;
    const std::string& option = context_.view.option();
    if (preview) d.preview(withDial(d.gestureStart(), option, mount_, setting_.of, dial, value));
    else d.apply(settingLabel(d.plan(), option, mount_, setting_), withDial(d.plan(), option, mount_, setting_.of, dial, value));
}

void BuildSettingBox::show(const Setting& setting, const std::string& mount, UnitSystem units) {
    setting_ = setting;
    mount_ = mount;
    if (title_->text() != setting.title) {
        title_->setText(setting.title);
        kept_->setAccessibleName(tr("%1, locked").arg(setting.title));
        if (home_) home_->setAccessibleName(tr("%1, home").arg(setting.title));
        if (fromBelow_) fromBelow_->setAccessibleName(tr("%1, from below the edge").arg(setting.title));
    }
    if (about_->text() != setting.about) about_->setText(setting.about);
    about_->setVisible(!setting.about.isEmpty());
    if (kept_->isChecked() != setting.kept) kept_->setChecked(setting.kept);
    if (fromBelow_ && fromBelow_->isChecked() != *setting.fromBelow) fromBelow_->setChecked(*setting.fromBelow);
    for (std::size_t i = 0; i < dials_.size(); ++i) dials_[i]->show(setting.dials[i], setting.title, units);
}

BuildSettingsForm::BuildSettingsForm(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    heading_ = new QLabel(this);
    heading_->setWordWrap(true);
    nothing_ = new QLabel(this);
    nothing_->setWordWrap(true);
    nothing_->setProperty("quiet", true);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(heading_);
    column->addWidget(nothing_);
    boxes_ = new QVBoxLayout;
    boxes_->setSpacing(4);
    column->addLayout(boxes_);
}

void BuildSettingsForm::refresh() {
    const Mount* mount = context_.view.mount();
    const std::shared_ptr<const Setup> setup = mount ? context_.analysis.setup() : nullptr;
    const SetupMount* made = mount ? mountIn(setup.get(), mount->id) : nullptr;
    const Picked& picked = context_.view.picked();
    const bool one = mount && picked.id == mount->id && (picked.kind == Picked::Kind::part || picked.kind == Picked::Kind::outlet || picked.kind == Picked::Kind::joint);
    const int part = one ? picked.part : -1;
    std::vector<Setting> settings;
    if (made) settings = settingsOf(context_.document.plan(), *setup, *made, part);

    QString words;
    if (!mount) words = tr("There is no mount yet.");
    else if (!made) words = context_.analysis.problems().empty() ? tr("The mount cannot be set up.") : QString::fromStdString(context_.analysis.problems().front().what);
    else if (settings.empty()) words = tr("Nothing can be set on this part.");
    if (nothing_->text() != words) nothing_->setText(words);
    nothing_->setVisible(!words.isEmpty());
    QString heading = tr("Settings of the whole mount");
    if (one && made && static_cast<std::size_t>(part) < made->chain.parts.size())
        heading = tr("Settings of %1").arg(numbered(part, made->chain.parts[static_cast<std::size_t>(part)]->name));
    if (heading_->text() != heading) heading_->setText(heading);
    heading_->setVisible(mount);

    const auto headingAt = [&](std::size_t i) { return one || (i > 0 && settings[i].part == settings[i - 1].part) ? QString() : settings[i].part; };
    bool same = settings.size() == shown_.size();
    for (std::size_t i = 0; same && i < settings.size(); ++i) same = shown_[i]->setting().sameShape(settings[i]) && shown_[i]->heading() == headingAt(i);
    if (!same) {
        for (BuildSettingBox* box : shown_) {
            box->hide();
            box->deleteLater();
        }
        shown_.clear();
        for (std::size_t i = 0; i < settings.size(); ++i) {
            auto* box = new BuildSettingBox(context_, settings[i], headingAt(i), this);
            boxes_->addWidget(box);
            shown_.push_back(box);
        }
    }
    for (std::size_t i = 0; i < settings.size(); ++i) shown_[i]->show(settings[i], mount->id, context_.view.units());
    if (same) return;
    for (BuildSettingBox* box : shown_) box->setVisible(true);
    emit rebuilt();
}

}  // namespace hither
