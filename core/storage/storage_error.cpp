#include "core/storage/storage_error.h"

#include "core/storage/plan_rules.h"

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

StorageError printable(StorageError error) {
    const auto mend = [](std::string& text) {
        // A letter cut in two by shortening is dropped; what is still no text loses all but ASCII.
        for (int cut = 0; cut < 3 && !text.empty() && (static_cast<unsigned char>(text.back()) & 0x80) != 0 && !isPrintableText(text, false); ++cut) {
            std::string shorter = text.substr(0, text.size() - 1);
            if (isPrintableText(shorter, false)) {
                text = shorter;
                return;
            }
            text = shorter;
        }
        if (isPrintableText(text, false)) return;
        for (char& c : text)
            if (static_cast<unsigned char>(c) < 0x20 || static_cast<unsigned char>(c) >= 0x7f) c = '?';
    };
    mend(error.place);
    for (auto& [key, value] : error.facts) {
        mend(value);
        if (value.empty()) value = "nothing";
    }
    return error;
}

}  // namespace hither
