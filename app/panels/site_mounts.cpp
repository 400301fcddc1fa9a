#include <QVBoxLayout>

#include "app/panels/site_panel.h"
#include "app/widgets/words_label.h"

namespace hither {

/// Says in words which mounts bring a switch to the site, in every option.
void SitePanel::buildMounts(QVBoxLayout* form) {
    form->addWidget(new SectionHeading(tr("Mounts that serve it")));
    auto* words = wordsLabel({});
    words->setObjectName("serving mounts");
    form->addWidget(words);
    keep([this, words] {
        QStringList lines;
        for (const PlanOption& o : plan().options)
            for (const Mount& m : o.mounts) {
                if (m.site != shown_) continue;
                const QString mount = QString::fromStdString(m.name.empty() ? m.id : m.name);
                lines << tr("%1, in option %2").arg(mount, QString::fromStdString(o.name.empty() ? o.id : o.name));
            }
        words->setText(lines.isEmpty() ? tr("No mount serves it yet: build one in the next step.") : lines.join('\n'));
    });
}

}  // namespace hither
