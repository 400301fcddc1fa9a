#pragma once
#include <QString>

#include "core/plan/plan.h"

namespace hither {

/// Initials of the person at the desk as last typed in this session; before that those of whoever last
/// accepted something in the plan. Kept nowhere else.
QString knownInitials(const Plan& plan);
void rememberInitials(const QString& initials);
/// "KL, 2026-11-25": source of a figure that this person measured today.
QString measuredToday(const QString& initials);

}  // namespace hither
