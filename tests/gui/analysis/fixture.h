#pragma once
#include <memory>
#include <string>

#include <QCoreApplication>
#include <QElapsedTimer>
#include <QTest>

#include <catch2/catch.hpp>

#include "app/document/document.h"
#include "app/document/view_state.h"
#include "app/shipped/shipped.h"

namespace hither::test {

inline std::shared_ptr<const Shipped> shipped() {
    static const std::shared_ptr<const Shipped> data = [] {
        ShippedRead read = readShipped();
        REQUIRE(read.shipped);
        return std::make_shared<const Shipped>(std::move(*read.shipped));
    }();
    return data;
}

/// A document with a sample plan in it.
struct Opened {
    Document document{QString()};
    ViewState view{document};
    explicit Opened(const std::string& name) { open(name); }
    void open(const std::string& name) { REQUIRE(document.openCopy(QString::fromStdString((samplesFolder() / (name + ".hither")).string())).how == Document::Opened::How::opened); }
};

/// Runs the event loop until it is so; false after a minute.
template <class So> bool until(So so) { return QTest::qWaitFor(so, 60000); }

}  // namespace hither::test
