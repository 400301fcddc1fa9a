#pragma once
#include <memory>
#include <string>
#include <string_view>

namespace hither {

/// SHA-256 (FIPS 180-4) as 64 lower-case hexadecimal digits.
std::string sha256(std::string_view bytes);

/// The same over bytes that come piece by piece.
class Sha256 {
public:
    Sha256();
    ~Sha256();
    Sha256(const Sha256&) = delete;
    Sha256& operator=(const Sha256&) = delete;
    void add(std::string_view bytes);
    std::string hex();   ///< ends the sum
private:
    struct State;
    std::unique_ptr<State> state_;
};

}  // namespace hither
