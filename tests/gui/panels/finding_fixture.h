#pragma once
#include <memory>

#include <QApplication>
#include <QFont>
#include <QPalette>
#include <QtTest>

#include <catch2/catch.hpp>

#include "app/actions/editor_context.h"
#include "app/widgets/theme.h"
#include "core/storage/plan_json.h"

namespace hither::test {

inline std::shared_ptr<const Shipped> shipped() {
    static const std::shared_ptr<const Shipped> data = [] {
        qputenv("HITHER_RESOURCES", HITHER_SOURCE_DIR "/resources");
        qputenv("HITHER_PARTS", "/nonexistent");
        ShippedRead read = readShipped();
        INFO(read.problem);
        REQUIRE(read.shipped);
        return std::make_shared<const Shipped>(std::move(*read.shipped));
    }();
    return data;
}

inline Plan samplePlan(const std::string& name) {
    PlanRead read = planFromJsonFile(std::string(HITHER_SOURCE_DIR) + "/sample_plans/" + name + ".json");
    REQUIRE(read.plan);
    return std::move(*read.plan);
}

/// The program's own look for the time of a test.
struct Themed {
    QString styleSheet = qApp->styleSheet();
    QFont font = qApp->font();
    QPalette palette = qApp->palette();
    Themed() { applyTheme(*qApp, Brightness::light); }
    Themed(const Themed&) = delete;
    ~Themed() {
        qApp->setStyleSheet(styleSheet);
        qApp->setPalette(palette);
        qApp->setFont(font);
    }
};

/// What panels work with, on a plan of its own.
struct Desk {
    Themed themed;
    ActionTable actions;
    Document document{QString()};
    ViewState view{document};
    Analysis analysis{document, view, shipped()};
    EditorContext context{document, view, analysis, actions, shipped()};
    QString refused;

    explicit Desk(Plan plan) {
        QObject::connect(&document, &Document::refused, [this](const QString& why) { refused = why; });
        document.startWith(std::move(plan), false);
        settle();
    }
    void settle() { REQUIRE(QTest::qWaitFor([this] { return analysis.upToDate(); }, 20000)); }
    const Finding* first(Verdict verdict) const {
        for (const Finding& f : analysis.latest()->findings) if (f.verdict == verdict) return &f;
        return nullptr;
    }
};

}  // namespace hither::test
