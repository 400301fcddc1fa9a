#pragma once
#include <string>

namespace hither {

/// A random UUID of version 4 (RFC 4122, section 4.4) from the system's random source.
std::string randomUuid();
/// The computer's clock as "2026-11-25T09:00:00Z".
std::string utcNow();

}  // namespace hither
