// How many more values would decide what a vine is: its continuations are played.
#include "core/fruit/identity.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

namespace bullace::fruit {

namespace {

constexpr int kContinuations = 100;

// Continuations of one vine: what each profile makes of the character, beside what the other
// characters say already.
class Continuation {
public:
    Continuation(const std::vector<TaxonProfile>& profiles,
                 const Identity& now,
                 std::string_view character,
                 const std::vector<double>& values)
        : ratios_(now.ratios),
          isRival_(now.isRival),
          bound_(now.bound),
          leading_(*now.leading) {
        for (const TaxonProfile& profile : profiles) {
            const auto found = profile.characters.find(character);
            if (found == profile.characters.end()) {
                likelihoods_.emplace_back();
                continue;
            }
            likelihoods_.emplace_back(VineLikelihood(found->second.law));
            likelihoods_.back()->add(values);
        }
        for (const auto& likelihood : likelihoods_) {
            before_.push_back(likelihood ? likelihood->logValue() : 0);
        }
    }

    [[nodiscard]] bool canBegin() const { return likelihoods_[leading_].has_value(); }

    // After how many more values the vine is decided for any taxon; nothing within the most.
    [[nodiscard]] std::optional<std::size_t> play(std::mt19937_64& random) {
        auto likelihoods = likelihoods_;
        const double mean = likelihoods[leading_]->drawMean(uniform(random));
        for (std::size_t more = 1; more <= kMostForeseen; ++more) {
            const double value = likelihoods_[leading_]->drawValue(mean, uniform(random));
            for (auto& likelihood : likelihoods) {
                if (likelihood) {
                    likelihood->add(value);
                }
            }
            if (isDecided(likelihoods)) {
                return more;
            }
        }
        return std::nullopt;
    }

private:
    using Likelihoods = std::vector<std::optional<VineLikelihood>>;

    static double uniform(std::mt19937_64& random) {
        return (static_cast<double>(random() >> 11U) + 0.5) * 0x1p-53;
    }

    [[nodiscard]] bool isDecided(const Likelihoods& likelihoods) const {
        std::vector<double> gains;
        for (std::size_t i = 0; i < likelihoods.size(); ++i) {
            gains.push_back(likelihoods[i] ? likelihoods[i]->logValue() - before_[i] : 0);
        }
        for (std::size_t i = 0; i < gains.size(); ++i) {
            bool isAhead = isRival_[i] && likelihoods[i];
            for (std::size_t j = 0; j < gains.size(); ++j) {
                if (!isAhead || j == i || !isRival_[j]) {
                    continue;
                }
                const bool both = likelihoods[j].has_value();
                const double gain = both ? (gains[i] - gains[j]) / std::numbers::ln10 : 0;
                isAhead = ratios_[i][j] + gain >= bound_;
            }
            if (isAhead) {
                return true;
            }
        }
        return false;
    }

    Likelihoods likelihoods_;
    std::vector<double> before_;
    std::vector<std::vector<double>> ratios_;
    std::vector<bool> isRival_;
    double bound_;
    std::size_t leading_;
};

} // namespace

StillNeeded stillNeeded(const std::vector<TaxonProfile>& profiles,
                        const VineValues& values,
                        std::string_view character,
                        const DecisionRisk& risk) {
    StillNeeded needed;
    const Identity now = identify(profiles, values, risk);
    needed.isDecided = now.verdict == Verdict::Decided;
    const auto given = values.find(character);
    if (needed.isDecided || !now.leading || given == values.end() ||
        kindOf(character) == LawKind::Choice || !now.isUsual) {
        return needed;
    }
    Continuation continuation(profiles, now, character, given->second);
    if (!continuation.canBegin()) {
        return needed;
    }
    std::mt19937_64 random(20'260'501);
    std::vector<std::size_t> times;
    for (int i = 0; i < kContinuations; ++i) {
        if (const auto more = continuation.play(random)) {
            times.push_back(*more);
        }
    }
    needed.decidedShare = static_cast<double>(times.size()) / kContinuations;
    if (2 * times.size() >= kContinuations) {
        std::ranges::sort(times);
        needed.more = times[kContinuations / 2 - 1];
    }
    return needed;
}

} // namespace bullace::fruit
