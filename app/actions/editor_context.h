#pragma once
#include <memory>

#include "app/actions/action_table.h"
#include "app/analysis/analysis.h"
#include "app/document/document.h"
#include "app/document/view_state.h"
#include "app/shipped/shipped.h"

namespace hither {

/// What every panel and the scene work with. All of it outlives them.
struct EditorContext {
    Document& document;
    ViewState& view;
    Analysis& analysis;
    ActionTable& actions;
    std::shared_ptr<const Shipped> shipped;
};

}  // namespace hither
