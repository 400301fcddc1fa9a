#include "app/dialogs/cautions_dialog.h"

#include <QDialogButtonBox>
#include <QTextBrowser>
#include <QVBoxLayout>

#include "app/words/cautions.h"

namespace hither {

CautionsDialog::CautionsDialog(QWidget* parent) : QDialog(parent) {
    setWindowTitle(tr("Cautions"));
    auto* column = new QVBoxLayout(this);
    auto* text = new QTextBrowser(this);
    text->setAccessibleName(tr("Cautions"));
    QString html = "<p><b>" + QString::fromStdString(planningAidOnly()).toHtmlEscaped() + "</b></p><ul>";
    for (const std::string& line : cautions()) html += "<li>" + QString::fromStdString(line).toHtmlEscaped() + "</li>";
    text->setHtml(html + "</ul>");
    column->addWidget(text);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    column->addWidget(buttons);
    const int em = fontMetrics().averageCharWidth();
    resize(em * 80, em * 60);
}

}  // namespace hither
