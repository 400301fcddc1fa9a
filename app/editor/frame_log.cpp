#include "app/editor/frame_log.h"

#include <cstdio>
#include <memory>

#include <QElapsedTimer>
#include <QTimer>

#include "app/editor/editor_parts.h"
#include "app/editor/main_window.h"
#include "app/scene/scene.h"

namespace hither {

void logFrames(MainWindow& window) {
    const QByteArray path = qgetenv("HITHER_FRAME_LOG");
    if (path.isEmpty()) return;
    std::shared_ptr<std::FILE> file(std::fopen(path.constData(), "a"), [](std::FILE* f) { if (f) std::fclose(f); });
    if (!file) return;
    auto clock = std::make_shared<QElapsedTimer>();
    clock->start();
    auto analysed = std::make_shared<quint64>(0);
    QObject::connect(&window.analysis(), &Analysis::analysed, &window, [analysed] { ++*analysed; });
    auto* timer = new QTimer(&window);
    QObject::connect(timer, &QTimer::timeout, &window, [&window, file, clock, analysed] {
        std::fprintf(file.get(), "%.3f revision %llu frames %llu analysed %llu\n", static_cast<double>(clock->elapsed()) / 1000, static_cast<unsigned long long>(window.document().revision()),
                     static_cast<unsigned long long>(window.scene().frames()), static_cast<unsigned long long>(*analysed));
        std::fflush(file.get());
    });
    timer->start(250);
}

}  // namespace hither
