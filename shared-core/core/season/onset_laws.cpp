#include "core/season/onset_laws.hpp"

#include "core/statistics/distributions.hpp"

#include <cmath>
#include <numbers>

namespace bullace::season {

namespace {

const double kLogRootTwoPi = std::log(2 * std::numbers::pi) / 2;

double logLogisticBelow(double z) {
    return z < 0 ? z - std::log1p(std::exp(z)) : -std::log1p(std::exp(-z));
}

double logDensity(OnsetLaw law, double z) {
    switch (law) {
    case OnsetLaw::Normal:
    case OnsetLaw::LogNormal:
        return -z * z / 2 - kLogRootTwoPi;
    case OnsetLaw::Logistic:
    case OnsetLaw::LogLogistic:
        return logLogisticBelow(z) + logLogisticBelow(-z);
    default:
        return z - std::exp(z);
    }
}

// log(F(high) - F(low)); on the side of the mean where both are tails, so that nothing cancels.
double logNormalMass(double low, double high) {
    if (low > 0) {
        return logNormalMass(-high, -low);
    }
    if (low > -6 && high < 6 && high - low > 1e-3) {
        return std::log(statistics::normalBelow(high) - statistics::normalBelow(low));
    }
    if (std::isinf(high)) {
        return statistics::logNormalBelow(-low); // what lies above low
    }
    const double below = std::isinf(low) ? low : statistics::logNormalBelow(low);
    const double upTo = statistics::logNormalBelow(high);
    return std::isinf(below) ? upTo : upTo + std::log1p(-std::exp(below - upTo));
}

double logLogisticMass(double low, double high) {
    const double width =
        std::isinf(low) || std::isinf(high) ? 0 : std::log(-std::expm1(low - high));
    return (std::isinf(high) ? 0 : logLogisticBelow(high)) +
           (std::isinf(low) ? 0 : logLogisticBelow(-low)) + width;
}

double logExtremeMass(double low, double high) {
    const double atLow = std::isinf(low) ? 0 : std::exp(low);
    return std::isinf(high) ? -atLow : -atLow + std::log(-std::expm1(atLow - std::exp(high)));
}

double logMass(OnsetLaw law, double low, double high) {
    switch (law) {
    case OnsetLaw::Normal:
    case OnsetLaw::LogNormal:
        return logNormalMass(low, high);
    case OnsetLaw::Logistic:
    case OnsetLaw::LogLogistic:
        return logLogisticMass(low, high);
    default:
        return logExtremeMass(low, high);
    }
}

} // namespace

LawPiece lawPiece(OnsetLaw law, double low, double high) {
    LawPiece piece;
    piece.logMass = logMass(law, low, high);
    piece.atLow = std::isinf(low) ? 0 : std::exp(logDensity(law, low) - piece.logMass);
    piece.atHigh = std::isinf(high) ? 0 : std::exp(logDensity(law, high) - piece.logMass);
    return piece;
}

double lawSlope(OnsetLaw law, double z) {
    switch (law) {
    case OnsetLaw::Normal:
    case OnsetLaw::LogNormal:
        return -z;
    case OnsetLaw::Logistic:
    case OnsetLaw::LogLogistic:
        return -std::tanh(z / 2);
    default:
        return 1 - std::exp(z);
    }
}

LawPoint lawPoint(OnsetLaw law, double z) {
    const double slope = lawSlope(law, z);
    double bend = -1; // the derivative of f'/f
    if (law == OnsetLaw::Logistic || law == OnsetLaw::LogLogistic) {
        bend = -(1 - slope * slope) / 2;
    } else if (law == OnsetLaw::Weibull || law == OnsetLaw::Exponential) {
        bend = -std::exp(z);
    }
    return {logDensity(law, z), slope, slope * slope + bend};
}

double lawBelow(OnsetLaw law, double z) {
    switch (law) {
    case OnsetLaw::Normal:
    case OnsetLaw::LogNormal:
        return statistics::normalBelow(z);
    case OnsetLaw::Logistic:
    case OnsetLaw::LogLogistic:
        return std::exp(logLogisticBelow(z));
    default:
        return -std::expm1(-std::exp(z));
    }
}

} // namespace bullace::season
