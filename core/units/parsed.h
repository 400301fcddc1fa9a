#pragma once
#include <optional>
#include <string>
#include <utility>

namespace hither {

/// What reading typed text gave: the value in SI, or one plain clause that says why the text
/// was refused ("there is no number before the unit"). Exactly one of the two is there.
template <class T>
struct Parsed {
    std::optional<T> value;
    std::string reason;

    static Parsed of(T v) { return {std::move(v), {}}; }
    static Parsed refused(std::string why) { return {std::nullopt, std::move(why)}; }
    explicit operator bool() const { return value.has_value(); }
};

}  // namespace hither
