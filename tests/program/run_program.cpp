#include "run_program.h"

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <stdexcept>

#include <sys/wait.h>
#include <unistd.h>

namespace hither::test {

Folder::Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "hither test XXXXXX").string();
    if (!mkdtemp(name.data())) throw std::runtime_error("no temporary folder");
    path = name;
}
Folder::~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path, ignored);
}

std::string readText(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}
void writeText(const std::string& path, const std::string& text) {
    std::ofstream(path, std::ios::binary) << text;
}

Ran runProgram(const std::string& words) {
    const Folder folder;
    const std::string command = "HOME=" + folder.quoted("home") + " XDG_DATA_HOME= HITHER_PARTS= HITHER_RESOURCES= LC_ALL=C timeout 60 '" HITHER_PROGRAM "' " +
                                words + " >" + folder.quoted("out") + " 2>" + folder.quoted("err") + " </dev/null";
    const int status = std::system(command.c_str());
    Ran ran;
    ran.code = WIFEXITED(status) ? WEXITSTATUS(status) : 128;
    ran.out = readText(folder.file("out"));
    ran.err = readText(folder.file("err"));
    return ran;
}

std::string samplePath(const std::string& name) { return std::string(HITHER_SOURCE_DIR) + "/sample_plans/" + name; }
int lines(const std::string& text) { return static_cast<int>(std::count(text.begin(), text.end(), '\n')); }

}  // namespace hither::test
