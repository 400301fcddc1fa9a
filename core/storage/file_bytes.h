#pragma once
#include <cstddef>
#include <optional>
#include <string>

#include "core/storage/storage_error.h"

namespace hither {

/// All bytes of a regular file, opened without following a final symbolic link. A directory, pipe,
/// device or link is `notAFile`, a missing one `missing`; one larger than `most` bytes is `tooLarge` and
/// nothing of it is read; anything else that the system refuses is `ioError` with its words.
struct FileBytes { std::optional<std::string> bytes; std::optional<StorageError> fault; };
FileBytes readWholeFile(const std::string& path, std::size_t most);

/// The system's words for an error number, the same in every thread.
std::string systemWords(int errorNumber);

}  // namespace hither
