#define CATCH_CONFIG_RUNNER
#include <catch2/catch.hpp>

#include <QApplication>

/// Offscreen unless a test asks for a display by naming a platform: listing the tests needs none.
int main(int argc, char** argv) {
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    return Catch::Session().run(argc, argv);
}
