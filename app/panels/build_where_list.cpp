#include "app/panels/build_where_list.h"

#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/panels/build_flow.h"
#include "app/panels/build_rows.h"
#include "app/panels/build_words.h"

namespace hither {

BuildWhereList::BuildWhereList(const EditorContext& context, QWidget* parent) : QWidget(parent), context_(context) {
    words_ = new QLabel(this);
    words_->setWordWrap(true);
    list_ = new BuildRowList(this);
    list_->setAccessibleName(tr("Where the mount is fixed"));
    list_->fitToRows(16);
    list_->installEventFilter(this);
    words_->setBuddy(list_);
    take_ = new QPushButton(tr("Fix it here"), this);
    take_->setProperty("primary", true);
    leave_ = new QPushButton(tr("Leave it"), this);
    for (QPushButton* b : {take_, leave_}) b->setMinimumHeight(24);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    column->addWidget(words_);
    column->addWidget(list_);
    auto* flow = new BuildFlow;
    flow->addWidget(take_);
    flow->addWidget(leave_);
    column->addLayout(flow);
    connect(list_, &BuildRowList::entered, this, &BuildWhereList::choose);
    connect(take_, &QPushButton::clicked, this, [this] { choose(list_->currentKey()); });
    connect(leave_, &QPushButton::clicked, this, &BuildWhereList::done);
    // The scene shows which one is meant.
    connect(list_, &BuildRowList::chosen, this, [this](const QString& key) {
        const int bar = static_cast<int>(key.indexOf('/'));
        context_.view.pick(Picked::attachment(key.left(bar).toStdString(), key.mid(bar + 1).toStdString()));
    });
}

void BuildWhereList::setFirst(bool first) {
    leave_->setVisible(!first);
    const bool any = list_->count() > 0;
    QString words = tr("Click a rail, edge, face or cloth in the scene, or choose it here:");
    if (!any) words = tr("There is nothing yet to fix a mount to. Next: add a support in the step “support”.");
    else if (first) words = tr("Next: choose where the mount is fixed. Click a rail, edge, face or cloth in the scene, or choose it here:");
    if (words_->text() != words) words_->setText(words);
    list_->setVisible(any);
    take_->setVisible(any);
}

void BuildWhereList::refresh() {
    const std::shared_ptr<const Situation> situation = context_.analysis.situation();
    std::vector<std::pair<QString, BuildRow>> rows;
    if (situation)
        for (const Support& s : situation->supports) {
            if (s.attachments.empty()) continue;
            BuildRow head;
            head.title = QString::fromStdString(s.name);
            head.tone = BuildRow::Tone::heading;
            rows.emplace_back(QString::fromStdString(s.id), head);
            for (const Attachment& a : s.attachments) {
                BuildRow row;
                row.title = QString::fromStdString(a.name);
                row.detail = attachmentWords(a, context_.view.units());
                rows.emplace_back(QString::fromStdString(s.id + "/" + a.id), row);
            }
        }
    list_->show(rows);
    const Picked& picked = context_.view.picked();
    if (picked.kind == Picked::Kind::attachment) list_->pickKey(QString::fromStdString(picked.id + "/" + picked.piece));
    if (list_->currentRow() < 0 && list_->count() > 1) list_->pickKey(list_->keyAt(1));
    if (list_->currentRow() <= 1) list_->scrollToTop();   // with the heading
    else list_->scrollToItem(list_->currentItem());
}

void BuildWhereList::takeFocus() { list_->setFocus(Qt::OtherFocusReason); }

Placement BuildWhereList::middleOf(const Attachment& attachment) {
    Placement place;
    if (attachment.kind != AttachmentKind::face) place.along_m = attachment.length_m() / 2;
    return place;
}

void BuildWhereList::choose(const QString& key) {
    const int bar = static_cast<int>(key.indexOf('/'));
    const std::shared_ptr<const Situation> situation = context_.analysis.situation();
    if (bar < 0 || !situation) return;
    OfferFor offer;
    offer.kind = OfferFor::Kind::attachment;
    offer.support = key.left(bar).toStdString();
    offer.attachment = key.mid(bar + 1).toStdString();
    const Support* support = situation->support(offer.support);
    const Attachment* at = support ? support->attachment(offer.attachment) : nullptr;
    if (!at) return;
    offer.place = middleOf(*at);
    context_.view.pick(Picked::attachment(offer.support, offer.attachment));
    context_.view.setOfferFor(offer);
    emit done();
}

bool BuildWhereList::eventFilter(QObject* watched, QEvent* event) {
    if (watched == list_ && event->type() == QEvent::KeyPress && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        emit done();
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

}  // namespace hither
