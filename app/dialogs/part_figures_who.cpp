#include "app/dialogs/part_figures_who.h"

#include <QDate>

namespace hither {
namespace {

QString& typed() {
    static QString initials;
    return initials;
}

}  // namespace

QString knownInitials(const Plan& plan) {
    if (!typed().isEmpty()) return typed();
    return plan.accepted.empty() ? QString() : QString::fromStdString(plan.accepted.back().who);
}

void rememberInitials(const QString& initials) { typed() = initials.trimmed(); }

QString measuredToday(const QString& initials) { return initials.trimmed() + ", " + QDate::currentDate().toString(Qt::ISODate); }

}  // namespace hither
