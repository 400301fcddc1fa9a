#include "core/storage/fresh.h"

#include <array>
#include <cassert>
#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <ctime>

#include <sys/random.h>

namespace hither {

std::string randomUuid() {
    std::array<unsigned char, 16> bytes{};
    std::size_t have = 0;
    while (have < bytes.size()) {
        const ssize_t got = getrandom(bytes.data() + have, bytes.size() - have, 0);
        if (got > 0) have += static_cast<std::size_t>(got);
        else if (errno != EINTR) std::abort();  // Linux always has its random source
    }
    bytes[6] = static_cast<unsigned char>((bytes[6] & 0x0f) | 0x40);
    bytes[8] = static_cast<unsigned char>((bytes[8] & 0x3f) | 0x80);
    std::string out;
    for (std::size_t i = 0; i < bytes.size(); ++i) {
        if (i == 4 || i == 6 || i == 8 || i == 10) out += '-';
        std::array<char, 3> hex{};
        std::snprintf(hex.data(), hex.size(), "%02x", bytes[i]);
        out += hex.data();
    }
    return out;
}

std::string utcNow() {
    const std::time_t now = std::time(nullptr);
    std::tm parts{};
    gmtime_r(&now, &parts);
    std::array<char, 32> text{};
    std::strftime(text.data(), text.size(), "%Y-%m-%dT%H:%M:%SZ", &parts);
    return text.data();
}

}  // namespace hither
