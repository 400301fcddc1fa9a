#include "app/editor/run_editor.h"

#include <cstdio>
#include <cstdlib>

#include <QApplication>
#include <QIcon>
#include <QLocale>
#include <QTranslator>

#include "app/editor/frame_log.h"
#include "app/editor/main_window.h"
#include "app/editor/settings.h"

namespace hither {

int runEditor(int& argc, char** argv, const std::string& plan) {
    const char* platform = std::getenv("QT_QPA_PLATFORM");
    if (!std::getenv("DISPLAY") && !std::getenv("WAYLAND_DISPLAY") && !(platform && *platform)) {
        std::fputs("hither: there is no display for the editor; hither check PLAN works without one (hither --help lists the commands)\n", stderr);
        return 2;
    }
    ShippedRead read = readShipped();
    if (!read.shipped) {
        std::fprintf(stderr, "hither: %s\n", read.problem.c_str());
        return 2;
    }
    qputenv("QT3D_RENDERER", "opengl");
    QCoreApplication::setAttribute(Qt::AA_DontCreateNativeWidgetSiblings);
    QApplication application(argc, argv);
    QCoreApplication::setApplicationName("Hither");
    QGuiApplication::setDesktopFileName("hither");
    const QString dataFolder = QString::fromStdString(ownDataFolder().string());
    lookAsWished(Settings::read(dataFolder));  // before there are widgets, so that all are made to measure
    MainWindow window(std::make_shared<Shipped>(std::move(*read.shipped)), dataFolder);
    window.show();
    logFrames(window);
    if (plan.empty()) window.startFresh();
    else window.openPlan(QString::fromStdString(plan));
    return application.exec();
}

}  // namespace hither
