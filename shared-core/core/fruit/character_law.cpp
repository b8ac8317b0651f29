#include "core/fruit/character_law.hpp"

#include "core/fruit/sample_size.hpp"
#include "core/statistics/distributions.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace bullace::fruit {

namespace {

constexpr double kOf90 = 1.6448536269514722; // normal quantile of 0.95
constexpr double kLeastCount = 0.5;          // stands for 0 where a logarithm is needed
constexpr double kAsPoisson = 1e-9;          // 1/k below which a count is a Poisson count

// The grid over vines' means, in SD between vines: fine enough for what a hundred clusters tell.
constexpr int kNodes = 81;
constexpr double kReach = 5;

double logSum(std::span<const double> logs) {
    const double greatest = *std::ranges::max_element(logs);
    double sum = 0;
    for (const double log : logs) {
        sum += std::exp(log - greatest);
    }
    return greatest + std::log(sum);
}

double logCount(double mean, double inverseK, double count) {
    if (inverseK < kAsPoisson) {
        return count * std::log(mean) - mean - statistics::logGamma(count + 1);
    }
    const double k = 1 / inverseK;
    return statistics::logGamma(k + count) - statistics::logGamma(k) -
           statistics::logGamma(count + 1) - k * std::log1p(mean / k) -
           count * std::log1p(k / mean);
}

double logChoice(const CharacterLaw& law, double code) {
    for (const CharacterLaw::Share& share : law.shares) {
        if (share.code == code) {
            return std::log(std::max(share.probability, 1e-6));
        }
    }
    return std::log(std::max(law.other, 1e-6));
}

// The sums that both kinds of law by moments are made of.
struct Moments {
    double vines = 0;
    double values = 0;
    double mean = 0; // of vines' means, each vine once
    double betweenVariance = 0;
    double withinVariance = 0; // pooled
    double meanOfInverseN = 0;
};

Moments momentsOf(const std::vector<std::vector<double>>& vines) {
    Moments moments;
    std::vector<double> means;
    double freedom = 0;
    for (const std::vector<double>& values : vines) {
        if (values.empty()) {
            continue;
        }
        const Spread spread = spreadOf(values);
        means.push_back(spread.mean);
        moments.values += spread.count;
        moments.meanOfInverseN += 1.0 / spread.count;
        if (spread.sd) {
            moments.withinVariance += *spread.sd * *spread.sd * (spread.count - 1);
            freedom += spread.count - 1;
        }
    }
    const Spread over = spreadOf(means);
    moments.vines = over.count;
    moments.mean = over.mean;
    moments.meanOfInverseN /= std::max(1.0, moments.vines);
    moments.withinVariance = freedom > 0 ? moments.withinVariance / freedom : 0;
    const double apart = over.sd ? *over.sd * *over.sd : 0;
    moments.betweenVariance =
        std::max(0.0, apart - moments.withinVariance * moments.meanOfInverseN);
    return moments;
}

} // namespace

namespace {

// How much more of a law's single values lie below `low` than above `high`.
double imbalance(const CharacterLaw& law, double low, double high) {
    double below = 0;
    double inside = 0;
    for (double count = 0; count <= high; ++count) {
        VineLikelihood one(law);
        one.add(count);
        (count < low ? below : inside) += std::exp(one.logValue());
    }
    return below - (1 - below - inside);
}

} // namespace

CharacterLaw countLawOfRange(double low, double high) {
    // Logarithms of the range's ends, half a count beyond them, are 1.645 SD from its middle.
    const double first = std::log(low - kLeastCount);
    const double last = std::log(high + kLeastCount);
    const double spread = (last - first) / (2 * kOf90);
    CharacterLaw law;
    law.kind = LawKind::Count;
    law.between = spread / std::sqrt(3.0);
    double least = low;
    double greatest = high;
    for (int i = 0; i < 50; ++i) {
        law.mean = (least + greatest) / 2;
        // What is left is the clusters': a count's variance m + m²/k is about 1/m + 1/k in
        // logarithms.
        law.within = std::max(0.0, 2 * spread * spread / 3 - 1 / law.mean);
        (imbalance(law, low, high) > 0 ? least : greatest) = law.mean;
    }
    return law;
}

CharacterLaw measureLawOfRange(double low, double high) {
    const double spread = (high - low) / (2 * kOf90);
    CharacterLaw law;
    law.kind = LawKind::Measure;
    law.mean = (low + high) / 2;
    law.between = spread * std::numbers::sqrt2 / 2;
    law.within = law.between;
    return law;
}

CharacterLaw lawOfVines(LawKind kind, const std::vector<std::vector<double>>& vines) {
    const Moments moments = momentsOf(vines);
    CharacterLaw law;
    law.kind = kind;
    law.mean = moments.mean;
    law.between = std::sqrt(moments.betweenVariance);
    law.within = std::sqrt(std::max(moments.withinVariance, 1e-12));
    if (kind == LawKind::Count) {
        const double m = std::max(moments.mean, 1e-3);
        // A log-normal mean m with variance v has the logarithmic variance log(1 + v/m²).
        const double logVariance = std::log1p(moments.betweenVariance / (m * m));
        law.between = std::sqrt(logVariance);
        law.mean = m * std::exp(-logVariance / 2);
        law.within = std::max(0.0, (moments.withinVariance - m) / (m * m));
    }
    return law;
}

VineLikelihood::VineLikelihood(const CharacterLaw& law) : law_(law) {
    if (law.kind != LawKind::Count) {
        return;
    }
    const int nodes = law.between > 0 ? kNodes : 1;
    std::vector<double> logs;
    for (int i = 0; i < nodes; ++i) {
        const double z = nodes > 1 ? kReach * (2.0 * i / (nodes - 1) - 1) : 0;
        Node node;
        node.mean = law.mean * std::exp(z * law.between);
        node.logPrior = -z * z / 2;
        node.logNone = logCount(node.mean, law.within, 0);
        node.perCount = law.within < kAsPoisson ? std::log(node.mean)
                                                : -std::log1p(1 / (law.within * node.mean));
        nodes_.push_back(node);
        logs.push_back(node.logPrior);
    }
    const double all = logSum(logs);
    for (Node& node : nodes_) {
        node.logPrior -= all;
    }
}

void VineLikelihood::add(double value) {
    if (!std::isfinite(value)) {
        return;
    }
    n_ += 1;
    if (law_.kind == LawKind::Choice) {
        log_ += logChoice(law_, value);
    } else if (law_.kind == LawKind::Count) {
        sum_ += std::max(0.0, std::nearbyint(value));
    } else {
        sum_ += value - law_.mean;
    }
}

void VineLikelihood::add(std::span<const double> values) {
    for (const double value : values) {
        add(value);
    }
}

// n counts with mean m and one k add up to a count with mean nm and nk.
std::vector<double> VineLikelihood::logWeights() const {
    std::vector<double> logs;
    logs.reserve(nodes_.size());
    for (const Node& node : nodes_) {
        logs.push_back(node.logPrior + n_ * node.logNone + sum_ * node.perCount);
    }
    return logs;
}

double VineLikelihood::logOfSum() const {
    const double k = law_.within < kAsPoisson ? 0 : n_ / law_.within;
    const double apart =
        (k > 0 ? statistics::logGamma(k + sum_) - statistics::logGamma(k) : sum_ * std::log(n_)) -
        statistics::logGamma(sum_ + 1);
    return logSum(logWeights()) + apart;
}

double VineLikelihood::logOfMean() const {
    const double variance = law_.between * law_.between + law_.within * law_.within / n_;
    const double mean = sum_ / n_;
    return -(std::log(2 * std::numbers::pi * variance) + mean * mean / variance) / 2;
}

double VineLikelihood::logValue() const {
    if (n_ == 0) {
        return 0;
    }
    switch (law_.kind) {
    case LawKind::Choice:
        return log_;
    case LawKind::Measure:
        return logOfMean();
    case LawKind::Count:
        break;
    }
    return logOfSum();
}

double VineLikelihood::drawMean(double uniform) const {
    if (law_.kind == LawKind::Measure) {
        const double within = law_.within * law_.within;
        const double between = law_.between * law_.between;
        const double whole = within + n_ * between;
        const double spread = std::sqrt(between * within / whole);
        return law_.mean + between * sum_ / whole + spread * statistics::normalQuantile(uniform);
    }
    const std::vector<double> logs = logWeights();
    const double all = logSum(logs);
    double sum = 0;
    for (std::size_t i = 0; i < nodes_.size(); ++i) {
        sum += std::exp(logs[i] - all);
        if (uniform <= sum) {
            return nodes_[i].mean;
        }
    }
    return nodes_.back().mean;
}

double VineLikelihood::drawValue(double vineMean, double uniform) const {
    if (law_.kind == LawKind::Measure) {
        return vineMean + law_.within * statistics::normalQuantile(uniform);
    }
    double below = 0;
    double count = 0;
    for (; count < 1000; ++count) {
        below += std::exp(logCount(vineMean, law_.within, count));
        if (below >= uniform) {
            break;
        }
    }
    return count;
}

double distanceFrom(const CharacterLaw& law, std::span<const double> values) {
    if (law.kind == LawKind::Choice || values.empty()) {
        return 0;
    }
    const Spread spread = spreadOf(values);
    const double n = spread.count;
    if (law.kind == LawKind::Measure) {
        const double sd = std::sqrt(law.between * law.between + law.within * law.within / n);
        return sd > 0 ? (spread.mean - law.mean) / sd : 0;
    }
    const double within = 1 / law.mean + law.within;
    const double sd = std::sqrt(law.between * law.between + within / n);
    return std::log(std::max(spread.mean, kLeastCount) / law.mean) / sd;
}

} // namespace bullace::fruit
