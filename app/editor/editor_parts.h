#pragma once
#include <memory>
#include <utility>
#include <vector>

#include "app/actions/editor_context.h"
#include "app/document/recent_plans.h"
#include "app/editor/settings.h"

namespace hither {

/// Everything in the editor that is no widget, in the order in which it depends on each other.
struct EditorParts {
    std::shared_ptr<Shipped> shipped;
    std::vector<Catalogue> retired;   ///< what the catalogue was before the person's own parts changed
    QString dataFolder;
    Settings settings;
    RecentPlans recent;
    ActionTable actions;
    Document document;
    ViewState view;
    Analysis analysis;
    EditorContext context;

    EditorParts(std::shared_ptr<Shipped> data, const QString& folder)
        : shipped(std::move(data)), dataFolder(folder), settings(Settings::read(folder)), recent(folder.isEmpty() ? QString() : folder + "/recent_plans.json"), document(folder.isEmpty() ? QString() : folder + "/unsaved", std::shared_ptr<const Catalogue>(shipped, &shipped->catalogue)), view(document),
          analysis(document, view, shipped), context{document, view, analysis, actions, shipped} {}
};

}  // namespace hither
