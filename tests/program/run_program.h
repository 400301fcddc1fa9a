#pragma once
#include <filesystem>
#include <string>

namespace hither::test {

struct Ran { int code = -1; std::string out, err; };
/// Runs the program in a shell with the given words (quote as in a shell), a fresh home so that
/// nobody's own parts play a part, and a minute's time: code 124 when that ran out.
Ran runProgram(const std::string& words);

/// A fresh folder whose name holds a space; removed when the object goes.
struct Folder {
    std::filesystem::path path;
    Folder();
    ~Folder();
    std::string file(const std::string& name) const { return (path / name).string(); }
    std::string quoted(const std::string& name) const { return "'" + file(name) + "'"; }
};

std::string readText(const std::string& path);
void writeText(const std::string& path, const std::string& text);
std::string samplePath(const std::string& name);   ///< sample_plans/NAME
int lines(const std::string& text);

}  // namespace hither::test
