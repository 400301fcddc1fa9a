#pragma once
#include "app/actions/editor_context.h"
#include "app/picture/make_picture.h"
#include "core/geometry/distance.h"

namespace hither {

/// What a click in the scene does in the step that the window is at: picks; in Build asks for grips at an
/// attachment or for what mates with an outlet; in Site puts a site on the body. `ray_W` is the line
/// of sight through the click, `hit` what it meets first (nothing: empty space).
void clickInScene(const EditorContext& context, const Ray& ray_W, const std::optional<PictureHit>& hit);

/// The site put (moved, when it is there) to a place on the body: on its surface, moving outward.
/// `site` empty: a new one.
Edited siteOnBody(const Plan& plan, const Body& body, const BodyPick& at, const std::string& site);

}  // namespace hither
