#include "core/storage/storage_error.h"

namespace hither {

const char* word(StorageError::Code code) {
    using Code = StorageError::Code;
    switch (code) {
        case Code::missing: return "missing";
        case Code::notAFile: return "not_a_file";
        case Code::tooLarge: return "too_large";
        case Code::notAPlan: return "not_a_plan";
        case Code::truncated: return "truncated";
        case Code::newerFormat: return "newer_format";
        case Code::damaged: return "damaged";
        case Code::unexpectedSchema: return "unexpected_schema";
        case Code::badValue: return "bad_value";
        case Code::unknownKey: return "unknown_key";
        case Code::missingKey: return "missing_key";
        case Code::wrongType: return "wrong_type";
        case Code::cannotWrite: return "cannot_write";
        case Code::cannotVerify: return "cannot_verify";
        case Code::lockedByOther: return "locked_by_other";
        case Code::ioError: return "io_error";
    }
    return "io_error";
}

}  // namespace hither
