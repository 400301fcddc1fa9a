#pragma once
#include <memory>

#include <QApplication>
#include <QScrollArea>
#include <QTest>

#include "app/actions/editor_context.h"
#include "core/plan/edits/supports.h"
#include "core/storage/plan_json.h"

namespace hither {

/// What a panel works with, around a plan with one manual wheelchair.
struct GivensFixture {
    std::shared_ptr<const Shipped> shipped;
    Document document{QString()};
    ViewState view{document};
    std::unique_ptr<Analysis> analysis;
    ActionTable actions;

    explicit GivensFixture(Plan plan) {
        ShippedRead read = readShipped();
        if (!read.shipped) throw std::runtime_error(read.problem);
        shipped = std::make_shared<const Shipped>(std::move(*read.shipped));
        analysis = std::make_unique<Analysis>(document, view, shipped);
        document.startWith(std::move(plan), false);
    }
    GivensFixture() : GivensFixture(chairPlan()) {}

    static Plan chairPlan() {
        Plan plan;
        plan.id = "p";
        plan.title = "Trial";
        SupportSpec chair;
        chair.id = "chair";
        chair.kind = "chair-manual";
        plan.supports.push_back(chair);
        return plan;
    }
    EditorContext context() { return {document, view, *analysis, actions, shipped}; }
    std::string json() const { return planToJson(document.plan()); }
};

/// A panel as the window has it: in a scroll area of a column's width.
template <class Panel>
struct Shown {
    QScrollArea area;
    Panel* panel;
    explicit Shown(GivensFixture& fixture, int width = 340, int height = 700) : panel(new Panel(fixture.context())) {
        area.setWidgetResizable(true);
        area.setFocusPolicy(Qt::NoFocus);
        area.setFrameShape(QFrame::NoFrame);
        area.setWidget(panel);
        area.resize(width, height);
        area.show();
        area.activateWindow();
        settle();
    }
    static void settle() {
        for (int i = 0; i < 4; ++i) QApplication::processEvents();
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);   // as the event loop does, which tests have none of
    }
    template <class Widget> Widget* find(const char* name) const { return panel->template findChild<Widget*>(name); }
};

}  // namespace hither
