#include "core/storage/file_bytes.h"

#include <cerrno>
#include <system_error>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace hither {

std::string systemWords(int errorNumber) { return std::generic_category().message(errorNumber); }

FileBytes readWholeFile(const std::string& path, std::size_t most) {
    using Code = StorageError::Code;
    const auto refuse = [&](Code code, std::string found, std::string allowed) {
        return FileBytes{std::nullopt, StorageError{code, path, {}, {{"found", std::move(found)}, {"allowed", std::move(allowed)}}}};
    };
    // O_NONBLOCK: opening a pipe that nobody writes to must not wait.
    const int fd = open(path.c_str(), O_RDONLY | O_NOFOLLOW | O_CLOEXEC | O_NONBLOCK | O_NOCTTY);
    if (fd < 0) {
        const int why = errno;
        if (why == ENOENT || why == ENOTDIR) return refuse(Code::missing, "no file", "a file");
        if (why == ELOOP) return refuse(Code::notAFile, "a symbolic link", "a regular file");
        if (why == ENXIO) return refuse(Code::notAFile, "a socket or pipe", "a regular file");
        return refuse(Code::ioError, systemWords(why), "a file that can be read");
    }
    struct Closer { int fd; ~Closer() { close(fd); } } closer{fd};
    struct stat info{};
    if (fstat(fd, &info) != 0) return refuse(Code::ioError, systemWords(errno), "a file that can be read");
    if (!S_ISREG(info.st_mode)) return refuse(Code::notAFile, S_ISDIR(info.st_mode) ? "a folder" : "a pipe or device", "a regular file");
    if (info.st_size < 0 || static_cast<unsigned long long>(info.st_size) > most)
        return refuse(Code::tooLarge, std::to_string(info.st_size) + " bytes", "at most " + std::to_string(most) + " bytes");
    std::string bytes(static_cast<std::size_t>(info.st_size), '\0');
    std::size_t have = 0;
    while (have < bytes.size()) {
        const ssize_t got = read(fd, bytes.data() + have, bytes.size() - have);
        if (got > 0) have += static_cast<std::size_t>(got);
        else if (got == 0) break;
        else if (errno != EINTR) return refuse(Code::ioError, systemWords(errno), "a file that can be read");
    }
    bytes.resize(have);  // it may have become shorter meanwhile
    return {std::move(bytes), std::nullopt};
}

}  // namespace hither
