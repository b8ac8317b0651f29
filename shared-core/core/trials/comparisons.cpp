// Pairs of adjusted means, their letters, and the reference.
#include "core/trials/comparisons.hpp"

#include "core/statistics/adjust.hpp"
#include "core/statistics/distributions.hpp"
#include "core/statistics/dunnett.hpp"
#include "core/statistics/studentized_range.hpp"
#include "core/trials/letter_groups.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace bullace::trials {

namespace {

constexpr std::size_t kMostInserted = 100; // means for letters by insertion

struct Errors {
    double mean = 0;
    double least = 0;
    double greatest = 0;

    [[nodiscard]] bool areEqual() const { return greatest - least < 1e-9 * greatest; }
};

class Comparing {
public:
    Comparing(const AdjustedMeans& means, Comparisons& into) : means_(means), into_(into) {
        for (std::size_t level = 0; level < means.levels.size(); ++level) {
            if (means.levels[level].mean) {
                taken_.push_back(level);
                values_.push_back(means.levels[level].mean->value);
            }
        }
    }

    [[nodiscard]] std::size_t count() const { return taken_.size(); }
    [[nodiscard]] double error(std::size_t i, std::size_t j) const {
        return means_.differenceError(taken_[i], taken_[j]).value_or(0);
    }
    [[nodiscard]] Errors errors() const;
    void findQuantiles(const Errors& errors);
    void listPairs();
    void adjustPairs();
    void addLetters(const Errors& errors);
    void compareToReference(std::size_t reference);

private:
    [[nodiscard]] std::vector<std::string> lettersAt(double quantile, const Errors& errors);
    [[nodiscard]] std::vector<std::string> spread(const std::vector<std::string>& letters) const;

    const AdjustedMeans& means_;
    Comparisons& into_;
    std::vector<std::size_t> taken_; // levels that are estimated
    std::vector<double> values_;
};

Errors Comparing::errors() const {
    Errors found{0, statistics::kUnbounded, 0};
    for (std::size_t i = 0; i < count(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            const double each = error(i, j);
            found.mean += each;
            found.least = std::min(found.least, each);
            found.greatest = std::max(found.greatest, each);
        }
    }
    found.mean /= static_cast<double>(count() * (count() - 1) / 2);
    return found;
}

void Comparing::findQuantiles(const Errors& errors) {
    const double df = into_.degreesOfFreedom;
    into_.tQuantile = statistics::studentTQuantile(1 - into_.alpha / 2, df);
    into_.rangeQuantile =
        statistics::studentizedRangeQuantile(into_.alpha, static_cast<unsigned>(count()), df);
    into_.meanError = errors.mean;
    into_.leastError = errors.least;
    into_.greatestError = errors.greatest;
    into_.leastSignificant = *into_.tQuantile * errors.mean;
    into_.leastTukey = *into_.rangeQuantile * errors.mean / std::numbers::sqrt2;
}

void Comparing::listPairs() {
    const double df = into_.degreesOfFreedom;
    const double range = *into_.rangeQuantile / std::numbers::sqrt2;
    for (std::size_t i = 0; i < count(); ++i) {
        for (std::size_t j = i + 1; j < count(); ++j) {
            Difference pair;
            pair.one = taken_[i];
            pair.other = taken_[j];
            pair.value = values_[i] - values_[j];
            pair.standardError = error(i, j);
            pair.t = pair.value / pair.standardError;
            pair.leastSignificant = *into_.tQuantile * pair.standardError;
            pair.leastTukey = range * pair.standardError;
            pair.p = statistics::studentTBothTails(pair.t, df);
            pair.pTukey = statistics::studentizedRangeAbove(
                std::abs(pair.t) * std::numbers::sqrt2, static_cast<unsigned>(count()), df);
            pair.tukey = {pair.value - pair.leastTukey, pair.value + pair.leastTukey};
            into_.pairs.push_back(pair);
        }
    }
}

void Comparing::adjustPairs() {
    std::vector<double> p;
    for (const Difference& pair : into_.pairs) {
        p.push_back(pair.p);
    }
    const std::vector<double> byHolm = statistics::holm(p);
    const std::vector<double> byRate = statistics::falseDiscovery(p);
    for (std::size_t i = 0; i < p.size(); ++i) {
        into_.pairs[i].pHolm = byHolm[i];
        into_.pairs[i].pFalseDiscovery = byRate[i];
        into_.pairs[i].pBonferroni = std::min(1.0, p[i] * static_cast<double>(p.size()));
    }
}

// Letters of the estimated levels as letters of all.
std::vector<std::string> Comparing::spread(const std::vector<std::string>& letters) const {
    std::vector<std::string> all(means_.levels.size());
    for (std::size_t i = 0; i < letters.size(); ++i) {
        all[taken_[i]] = letters[i];
    }
    return all;
}

std::vector<std::string> Comparing::lettersAt(double quantile, const Errors& errors) {
    std::vector<std::string> letters;
    if (count() <= kMostInserted) {
        letters = letterGroups(values_, [&](std::size_t i, std::size_t j) {
            return std::abs(values_[i] - values_[j]) > quantile * error(i, j);
        });
    }
    if (letters.empty()) {
        letters = letterStretches(values_, quantile * errors.greatest);
    }
    return spread(letters);
}

void Comparing::addLetters(const Errors& errors) {
    into_.letters = lettersAt(*into_.rangeQuantile / std::numbers::sqrt2, errors);
    into_.lettersByT = lettersAt(*into_.tQuantile, errors);
    if (count() > kMostInserted && !errors.areEqual()) {
        into_.remarks.push_back(
            {BULLACE_SENTENCE(
                 "Remark",
                 "With so many means the letters are made by the greatest error of a "
                 "difference: some pairs that share a letter may differ all the same."),
             {}});
    }
}

void Comparing::compareToReference(std::size_t reference) {
    std::vector<std::size_t> others;
    for (std::size_t i = 0; i < count(); ++i) {
        if (i != reference) {
            others.push_back(i);
        }
    }
    const std::size_t size = others.size();
    const auto between = [&](std::size_t i, std::size_t j) { // covariance of two differences
        const double one = error(i, reference);
        const double other = error(j, reference);
        const double apart = i == j ? 0 : error(i, j);
        return (one * one + other * other - apart * apart) / 2;
    };
    std::vector<double> correlations(size * size, 1.0);
    for (std::size_t i = 0; i < size; ++i) {
        for (std::size_t j = 0; j < size; ++j) {
            correlations[i * size + j] =
                between(others[i], others[j]) /
                (error(others[i], reference) * error(others[j], reference));
        }
    }
    const std::vector<double> loadings = statistics::productLoadings(correlations, size);
    const statistics::Dunnett dunnett(loadings, into_.degreesOfFreedom);
    into_.dunnettQuantile = dunnett.quantile(into_.alpha);
    for (const std::size_t i : others) {
        ReferenceDifference each;
        each.level = taken_[i];
        const double value = values_[i] - values_[reference];
        const double standardError = error(i, reference);
        each.value = statistics::estimateAround(value, standardError, *into_.dunnettQuantile);
        each.t = value / standardError;
        each.p = dunnett.above(std::abs(each.t));
        into_.toReference.push_back(each);
    }
}

void addReference(const AdjustedMeans& means,
                  const std::string& reference,
                  Comparing& comparing,
                  Comparisons& into) {
    std::size_t place = 0;
    for (const AdjustedMean& level : means.levels) {
        if (level.level == reference && level.mean) {
            comparing.compareToReference(place);
            return;
        }
        place += level.mean ? 1U : 0U;
    }
    into.remarks.push_back({BULLACE_SENTENCE("Remark",
                                             "The reference %1 has no mean among the levels of "
                                             "%2, so nothing is compared to it."),
                            {reference, means.term}});
}

} // namespace

Comparisons compareMeans(const AdjustedMeans& means, const ComparisonOptions& options) {
    Comparisons result;
    result.degreesOfFreedom = means.degreesOfFreedom;
    if (options.alpha >= 0.0001 && options.alpha <= 0.5) {
        result.alpha = options.alpha;
    } else {
        result.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "The level of significance must lie between 0.0001 and 0.5; 0.05 "
                              "was taken."),
             {}});
    }
    Comparing comparing(means, result);
    if (means.levels.size() > kMostCompared) {
        result.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                   "More than %1 means are not compared in pairs: "
                                                   "use their standard errors, or choose fewer."),
                                  {static_cast<std::int64_t>(kMostCompared)}});
        return result;
    }
    if (comparing.count() < 2 || means.covariance.empty() || means.degreesOfFreedom < 1) {
        return result; // the remarks of the model and of the means say why
    }
    const Errors errors = comparing.errors();
    if (!(errors.least > 0)) {
        return result; // the residuals do not vary, which the model's remarks say
    }
    comparing.findQuantiles(errors);
    if (comparing.count() <= kMostPaired) {
        comparing.listPairs();
        comparing.adjustPairs();
    } else {
        result.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "More than %1 means: the pairs are not listed, the letters tell "
                              "which differ."),
             {static_cast<std::int64_t>(kMostPaired)}});
    }
    comparing.addLetters(errors);
    if (options.reference) {
        addReference(means, *options.reference, comparing, result);
    }
    return result;
}

} // namespace bullace::trials
