#pragma once
#include <catch2/catch.hpp>

#include "app/widgets/choice_box.h"
#include "givens_fixture.h"

namespace hither {

/// Somebody on a manual wheelchair.
inline Plan withPerson() {
    Plan plan = GivensFixture::chairPlan();
    PersonSpec person;
    person.name = "KL";
    person.on = "chair";
    plan.person = person;
    return plan;
}

/// The same with a site at the right elbow, by the posture.
inline Plan withSite() {
    Plan plan = withPerson();
    SiteSpec site;
    site.id = "elbow";
    site.name = "Right elbow";
    site.controlSite = "elbow_right";
    site.given = SiteGiven::fromPosture;
    site.directionTyped = false;
    plan.sites.push_back(site);
    return plan;
}

/// Chooses by keys, as a person does.
inline void choose(ChoiceBox* box, const QVariant& what) {
    REQUIRE(box);
    const int at = box->findData(what);
    REQUIRE(at >= 0);
    box->setFocus(Qt::TabFocusReason);
    while (box->currentIndex() != at) QTest::keyClick(box, box->currentIndex() < at ? Qt::Key_Down : Qt::Key_Up);
}

}  // namespace hither
