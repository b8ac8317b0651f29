#include "core/fruit/sample_size.hpp"

#include <boost/math/distributions/students_t.hpp>

#include <cmath>

namespace bullace::fruit {

namespace {

constexpr double kMostSamples = 1e6;
constexpr double kNormal95 = 1.96;

// (t·CV/E)², not rounded.
double squareOf(double t, double cvPercent, double errorPercent) {
    const double ratio = t * cvPercent / errorPercent;
    return ratio * ratio;
}

// Up to the next whole number, but not for what is above one by rounding of binary64 alone.
std::optional<unsigned> roundedUp(double samples) {
    const double whole = std::ceil(samples * (1 - 1e-12));
    return whole >= 0 && whole <= kMostSamples ? std::optional(static_cast<unsigned>(whole))
                                               : std::nullopt;
}

} // namespace

Spread spreadOf(std::span<const double> samples) {
    Spread spread;
    double squares = 0;
    for (const double sample : samples) {
        ++spread.count;
        const double before = sample - spread.mean;
        spread.mean += before / spread.count;
        squares += before * (sample - spread.mean);
    }
    if (spread.count >= 2) {
        spread.sd = std::sqrt(squares / (spread.count - 1));
        if (spread.mean > 0) {
            spread.cvPercent = 100 * *spread.sd / spread.mean;
        }
    }
    return spread;
}

double studentT95(unsigned degreesOfFreedom) {
    const boost::math::students_t_distribution<double> t(degreesOfFreedom);
    return boost::math::quantile(t, 0.975);
}

std::optional<unsigned>
samplesForT(double t, double cvPercent, double errorPercent, std::optional<unsigned> population) {
    if (!(t > 0) || !(cvPercent > 0) || !(errorPercent > 0) || population == 0U) {
        return std::nullopt;
    }
    const double endless = squareOf(t, cvPercent, errorPercent);
    return roundedUp(population ? 1 / (1.0 / *population + 1 / endless) : endless);
}

std::optional<unsigned> samplesNeeded(double cvPercent, double errorPercent) {
    auto needed = samplesForT(kNormal95, cvPercent, errorPercent);
    if (!needed) {
        return std::nullopt;
    }
    // t falls with n and is above 1.96 throughout, so the first n that is enough is the least.
    unsigned samples = *needed < 2 ? 2 : *needed;
    while (samples < squareOf(studentT95(samples - 1), cvPercent, errorPercent) * (1 - 1e-12)) {
        ++samples;
    }
    return samples;
}

std::optional<unsigned> moreNeeded(std::span<const double> samples, double percent) {
    const Spread spread = spreadOf(samples);
    if (!spread.cvPercent || !(percent > 0)) {
        return std::nullopt;
    }
    if (*spread.cvPercent == 0) {
        return 0; // samples that do not differ say nothing against a mean as precise as one likes
    }
    const auto needed = samplesNeeded(*spread.cvPercent, percent);
    if (!needed) {
        return std::nullopt;
    }
    return *needed > spread.count ? *needed - spread.count : 0;
}

} // namespace bullace::fruit
