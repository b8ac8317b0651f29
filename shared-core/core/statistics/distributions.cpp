#include "core/statistics/distributions.hpp"

#include <boost/math/distributions/beta.hpp>
#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/fisher_f.hpp>
#include <boost/math/distributions/non_central_f.hpp>
#include <boost/math/distributions/non_central_t.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <boost/math/special_functions/digamma.hpp>
#include <boost/math/special_functions/trigamma.hpp>

#include <cmath>
#include <limits>
#include <numbers>

namespace bullace::statistics {

namespace {

// What leaves the domain is NaN and never an exception.
namespace policies = boost::math::policies;
using Quiet = policies::policy<policies::domain_error<policies::ignore_error>,
                               policies::pole_error<policies::ignore_error>,
                               policies::overflow_error<policies::ignore_error>,
                               policies::evaluation_error<policies::ignore_error>,
                               policies::rounding_error<policies::ignore_error>,
                               policies::promote_double<false>>;
using Normal = boost::math::normal_distribution<double, Quiet>;
using StudentT = boost::math::students_t_distribution<double, Quiet>;
using ChiSquared = boost::math::chi_squared_distribution<double, Quiet>;
using FisherF = boost::math::fisher_f_distribution<double, Quiet>;

bool isProbability(double p) {
    return p > 0 && p < 1;
}
constexpr double kNothing = std::numeric_limits<double>::quiet_NaN();

} // namespace

double normalDensity(double x) {
    return std::exp(-x * x / 2) / std::sqrt(2 * std::numbers::pi);
}

double normalBelow(double x) {
    return std::erfc(-x / std::numbers::sqrt2) / 2;
}

double logNormalBelow(double x) {
    if (x > -30) {
        return std::log(normalBelow(x));
    }
    // Abramowitz & Stegun 1964, 26.2.12: three terms are exact to binary64 beyond 30.
    const double square = x * x;
    const double series = 1 - 1 / square + 3 / (square * square) - 15 / (square * square * square);
    return -square / 2 - std::log(-x * std::sqrt(2 * std::numbers::pi)) + std::log(series);
}

double normalQuantile(double p) {
    return isProbability(p) ? boost::math::quantile(Normal(), p) : kNothing;
}

double studentTBelow(double t, double degreesOfFreedom) {
    return degreesOfFreedom > 0 ? boost::math::cdf(StudentT(degreesOfFreedom), t) : kNothing;
}

double studentTQuantile(double p, double degreesOfFreedom) {
    return isProbability(p) && degreesOfFreedom > 0
               ? boost::math::quantile(StudentT(degreesOfFreedom), p)
               : kNothing;
}

double studentTBothTails(double t, double degreesOfFreedom) {
    return 2 * studentTBelow(-std::abs(t), degreesOfFreedom);
}

double chiSquaredAbove(double x, double degreesOfFreedom) {
    if (!(degreesOfFreedom > 0)) {
        return kNothing;
    }
    return x <= 0 ? 1 : boost::math::cdf(boost::math::complement(ChiSquared(degreesOfFreedom), x));
}

double chiSquaredQuantile(double p, double degreesOfFreedom) {
    return isProbability(p) && degreesOfFreedom > 0
               ? boost::math::quantile(ChiSquared(degreesOfFreedom), p)
               : kNothing;
}

double fAbove(double f, double numerator, double denominator) {
    if (!(numerator > 0) || !(denominator > 0)) {
        return kNothing;
    }
    return f <= 0 ? 1
                  : boost::math::cdf(boost::math::complement(FisherF(numerator, denominator), f));
}

double fQuantile(double p, double numerator, double denominator) {
    return isProbability(p) && numerator > 0 && denominator > 0
               ? boost::math::quantile(FisherF(numerator, denominator), p)
               : kNothing;
}

double noncentralTAbove(double t, double degreesOfFreedom, double noncentrality) {
    using Shifted = boost::math::non_central_t_distribution<double, Quiet>;
    return boost::math::cdf(boost::math::complement(Shifted(degreesOfFreedom, noncentrality), t));
}

double noncentralFAbove(double f, double numerator, double denominator, double noncentrality) {
    using Shifted = boost::math::non_central_f_distribution<double, Quiet>;
    return boost::math::cdf(
        boost::math::complement(Shifted(numerator, denominator, noncentrality), f));
}

double betaQuantile(double p, double a, double b) {
    using Beta = boost::math::beta_distribution<double, Quiet>;
    return isProbability(p) && a > 0 && b > 0 ? boost::math::quantile(Beta(a, b), p) : kNothing;
}

double digamma(double x) {
    return boost::math::digamma(x, Quiet());
}

double trigamma(double x) {
    return boost::math::trigamma(x, Quiet());
}

double logGamma(double x) {
    return std::lgamma(x);
}

double logChoose(double n, double k) {
    return std::lgamma(n + 1) - std::lgamma(k + 1) - std::lgamma(n - k + 1);
}

} // namespace bullace::statistics
