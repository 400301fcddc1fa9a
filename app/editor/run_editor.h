#pragma once
#include <string>

namespace hither {

/// Runs the editor until its window is closed; `plan` empty: the start page's sample. Returns the
/// program's exit code; 2 when there is no display or the shipped data is not there, with one line on
/// standard error.
int runEditor(int& argc, char** argv, const std::string& plan);

}  // namespace hither
