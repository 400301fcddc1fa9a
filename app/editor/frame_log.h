#pragma once
#include <QObject>

namespace hither {

class MainWindow;

/// Counts for measuring how fluent the editor is (tests/bench/drag_frames.py): four times a second a line
/// "SECONDS revision R frames F analysed A" in the file named by HITHER_FRAME_LOG. Nothing without it.
void logFrames(MainWindow& window);

}  // namespace hither
