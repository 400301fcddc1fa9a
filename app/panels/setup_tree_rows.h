#pragma once
#include <optional>
#include <vector>

#include <QString>

#include "app/actions/editor_context.h"
#include "app/panels/build_settings.h"

namespace hither {

/// One line of the setup tree: everything that the scene shows there, in words.
struct SetupRow {
    QString key;                    ///< tells it from its siblings, also after its words have changed
    QString text;
    Picked picked;                  ///< what it stands for; nothing: a heading
    bool open = false;              ///< shown opened at first
    std::optional<Dial> dial;       ///< a number that can be set in its place
    Setting setting;                ///< the setting that the dial is of (without dials)
    std::vector<SetupRow> children;
};

/// The whole option in view. `setup` null: what the plan alone can tell.
std::vector<SetupRow> setupRows(const EditorContext& context);

/// "212 mm away, turned 3° from the movement": of a mount's switch and its site; empty when it has none.
QString faceToSiteWords(const Setup& setup, const SetupMount& mount, UnitSystem units);

}  // namespace hither
