#pragma once
#include <functional>
#include <vector>

namespace hither {

/// The least value of a function over a box, when it is known how fast the function can change.
struct BoxMinimum {
    double value = 0;             ///< at `at`; the true minimum is at most this
    double lowerBound = 0;        ///< the true minimum is at least this
    std::vector<double> at;
    int evaluations = 0;
    bool certified = false;       ///< value - lowerBound <= the accuracy asked for
};

/// Branch and bound with a Lipschitz bound per dimension: |f(x) - f(y)| <= sum of rate_i |x_i - y_i|.
/// `f(x, enough)` may return any value >= `enough` when the true one is (it need not be exact there, and
/// is then not taken for a minimum).
/// Parts of the box whose bound is above `ignoreAbove` are not refined; the search stops uncertified
/// after `mostEvaluations`. The first point tried is `start`.
BoxMinimum leastOverBox(const std::function<double(const std::vector<double>& x, double enough)>& f,
                        const std::vector<double>& min, const std::vector<double>& max, const std::vector<double>& rate,
                        const std::vector<double>& start, double accuracy, double ignoreAbove, int mostEvaluations);

}  // namespace hither
