#pragma once
#include <map>
#include <string>

namespace hither {

/// What can be wrong with a file, an import or a save. Worded in app; `place` is where in the file
/// ("options/0/mounts/1/parts/2/part"), `facts` what was found and what is allowed.
struct StorageError {
    enum class Code {
        missing, notAFile, tooLarge, notAPlan, truncated, newerFormat, damaged, unexpectedSchema,
        badValue, unknownKey, missingKey, wrongType, cannotWrite, cannotVerify, lockedByOther, ioError
    };
    Code code = Code::ioError;
    std::string file, place;
    std::map<std::string, std::string> facts;
};
const char* word(StorageError::Code code);

/// The same error with texts that can be shown anywhere: what stood in a hostile file may hold control
/// characters or bytes that are not UTF-8; those become '?', and no fact is empty.
StorageError printable(StorageError error);

}  // namespace hither
