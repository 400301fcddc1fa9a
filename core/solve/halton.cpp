#include "core/solve/halton.h"

#include <cassert>
#include <vector>

namespace hither {

double halton(unsigned index, unsigned primeBase) {
    double value = 0.0, place = 1.0;
    for (; index > 0; index /= primeBase) {
        place /= primeBase;
        value += place * (index % primeBase);
    }
    return value;
}

unsigned primeOf(int n) {
    static const std::vector<unsigned> primes = [] {
        std::vector<unsigned> found;
        for (unsigned candidate = 2; found.size() < 100; ++candidate) {
            bool prime = true;
            for (unsigned p : found) if (candidate % p == 0) { prime = false; break; }
            if (prime) found.push_back(candidate);
        }
        return found;
    }();
    assert(n >= 0 && n < 100);
    return primes[static_cast<std::size_t>(n)];
}

}  // namespace hither
