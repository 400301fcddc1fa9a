#include "core/units/basis.h"

namespace hither {

const char* word(BasisKind kind) {
    switch (kind) {
        case BasisKind::measured: return "measured";
        case BasisKind::published: return "published";
        case BasisKind::assumed: return "assumed";
        case BasisKind::unknown: return "unknown";
    }
    return "unknown";
}

std::optional<BasisKind> basisFromWord(const std::string& text) {
    for (BasisKind kind : {BasisKind::measured, BasisKind::published, BasisKind::assumed, BasisKind::unknown})
        if (text == word(kind)) return kind;
    return std::nullopt;
}

}  // namespace hither
