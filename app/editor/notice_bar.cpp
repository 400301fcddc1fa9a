#include "app/editor/notice_bar.h"

#include <QAccessible>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>

namespace hither {

NoticeBar::NoticeBar(QWidget* parent) : QFrame(parent) {
    setFrameShape(QFrame::StyledPanel);
    setAutoFillBackground(true);
    setBackgroundRole(QPalette::Highlight);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(10, 4, 10, 4);
    words_ = new QLabel(this);
    words_->setWordWrap(true);
    words_->setTextFormat(Qt::PlainText);
    row->addWidget(words_, 1);
    buttons_ = new QHBoxLayout;
    row->addLayout(buttons_);
    hide();
}

void NoticeBar::tell(const QString& words, const std::vector<Choice>& choices) {
    putAway();
    words_->setText(words);
    setAccessibleName(tr("Notice"));
    setAccessibleDescription(words);
    std::vector<Choice> all = choices;
    all.push_back({tr("Close"), {}});
    for (const Choice& choice : all) {
        auto* button = new QPushButton(choice.words, this);
        button->setAutoDefault(true);
        button->setMinimumHeight(24);
        connect(button, &QPushButton::clicked, this, [this, run = choice.run] {
            putAway();
            if (run) run();
        });
        buttons_->addWidget(button);
    }
    show();
    QAccessibleEvent event(this, QAccessible::Alert);
    QAccessible::updateAccessibility(&event);
}

void NoticeBar::putAway() {
    hide();
    while (QLayoutItem* item = buttons_->takeAt(0)) {
        if (item->widget()) item->widget()->deleteLater();
        delete item;
    }
}

}  // namespace hither
