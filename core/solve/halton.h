#pragma once

namespace hither {

/// The index-th point of the Halton sequence in the dimension of a prime base: a low-discrepancy
/// value in (0, 1) (Halton 1960). Index from 1.
double halton(unsigned index, unsigned primeBase);
/// The n-th prime, n from 0, up to 100 dimensions.
unsigned primeOf(int n);

}  // namespace hither
