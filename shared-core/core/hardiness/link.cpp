#include "core/hardiness/link.hpp"

#include "core/statistics/distributions.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace bullace::hardiness {

namespace {

// Beyond these the share is 0 or 1 to binary64, and exp() of them is still finite.
constexpr double kFarthest = 700;

double logistic(double eta) {
    return 1 / (1 + std::exp(-eta));
}

// log(1/(1 + exp(-η))) with its derivatives.
LogShare logLogistic(double eta) {
    const double value = eta > 0 ? -std::log1p(std::exp(-eta)) : eta - std::log1p(std::exp(eta));
    const double rest = logistic(-eta);
    return {value, rest, -rest * logistic(eta)};
}

LogShare logNormal(double eta) {
    const double value = statistics::logNormalBelow(eta);
    const double density = -eta * eta / 2 - std::log(2 * std::numbers::pi) / 2;
    const double ratio = std::exp(density - value);
    return {value, ratio, -ratio * (eta + ratio)};
}

// log(1 - exp(-exp(η))), which nears η far below 0.
LogShare logExtreme(double eta) {
    const double hazard = std::exp(std::min(eta, kFarthest));
    const double killed = -std::expm1(-hazard);
    if (hazard < 1e-8) {
        return {eta - hazard / 2, 1 - hazard / 2, -hazard / 2};
    }
    const double slope = hazard > kFarthest ? 0 : hazard * std::exp(-hazard) / killed;
    return {std::log(killed), slope, slope * (1 - hazard - slope)};
}

} // namespace

double linked(Link link, double part) {
    switch (link) {
    case Link::Logit:
        return std::log(part) - std::log1p(-part);
    case Link::Probit:
        return statistics::normalQuantile(part);
    case Link::ComplementaryLogLog:
        return std::log(-std::log1p(-part));
    }
    return 0;
}

double killedAt(Link link, double eta) {
    switch (link) {
    case Link::Logit:
        return logistic(eta);
    case Link::Probit:
        return statistics::normalBelow(eta);
    case Link::ComplementaryLogLog:
        return -std::expm1(-std::exp(std::min(eta, kFarthest)));
    }
    return 0;
}

double survivingAt(Link link, double eta) {
    return link == Link::ComplementaryLogLog ? std::exp(-std::exp(std::min(eta, kFarthest)))
                                             : killedAt(link, -eta);
}

double densityAt(Link link, double eta) {
    switch (link) {
    case Link::Logit:
        return logistic(eta) * logistic(-eta);
    case Link::Probit:
        return statistics::normalDensity(eta);
    case Link::ComplementaryLogLog:
        return eta > kFarthest ? 0 : std::exp(eta - std::exp(eta));
    }
    return 0;
}

double densitySlopeAt(Link link, double eta) {
    switch (link) {
    case Link::Logit:
        return densityAt(link, eta) * (logistic(-eta) - logistic(eta));
    case Link::Probit:
        return -eta * densityAt(link, eta);
    case Link::ComplementaryLogLog:
        return eta > kFarthest ? 0 : densityAt(link, eta) * -std::expm1(eta);
    }
    return 0;
}

LogShare logKilledAt(Link link, double eta) {
    switch (link) {
    case Link::Logit:
        return logLogistic(eta);
    case Link::Probit:
        return logNormal(eta);
    case Link::ComplementaryLogLog:
        return logExtreme(eta);
    }
    return {};
}

LogShare logSurvivingAt(Link link, double eta) {
    if (link == Link::ComplementaryLogLog) {
        const double hazard = std::exp(std::min(eta, kFarthest));
        return {-hazard, -hazard, -hazard};
    }
    const LogShare mirrored = link == Link::Logit ? logLogistic(-eta) : logNormal(-eta);
    return {mirrored.value, -mirrored.slope, mirrored.curvature};
}

} // namespace bullace::hardiness
