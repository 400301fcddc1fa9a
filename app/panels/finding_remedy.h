#pragma once
#include "app/actions/editor_context.h"

namespace hither {

/// Applies the remedy of a finding of the option in view as one step. False when it was refused, which
/// the document then says; also when the plan has changed since the finding was made.
bool mend(const EditorContext& context, const QString& finding);
/// What applying it is called as a step: "Add an adapter, …", "Bring the switch to its site".
QString mendLabel(const Finding& finding);

}  // namespace hither
