#include "core/merge/shifted_row.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::merge {

namespace {

// One note in six or seven is one step off (16 %), and a whole number hides another 1/12.
constexpr double kRounding = 1.0 / 12;
constexpr double kStepNoise = 0.16 + kRounding;
constexpr double kLeastSlips = 0.04; // share of notes that are one off
constexpr double kMostSlips = 0.5;
constexpr double kDayVariance = 0.005;   // a vine's own pace between two days, in steps²
constexpr double kMistake = 0.0005;      // vines die back, are replanted, and are mistaken
constexpr double kLeastNoise = 0.1;      // of steps: no history makes notes better than this
constexpr double kLeastRankNoise = 0.15; // likewise, of normal scores
constexpr double kLeastBetween = 0.02;   // variance between vines below which a row says nothing
constexpr double kAlike = 0.2;           // variance between vines below which they are much alike
constexpr double kMostRatio = 6;         // one vine alone never decides: bound of its log ratio

struct Moments {
    double sum = 0;
    std::size_t n = 0;
    void add(double value) {
        sum += value;
        ++n;
    }
    [[nodiscard]] double mean() const { return n == 0 ? 0 : sum / static_cast<double>(n); }
};

double meanOf(const RowValues& values) {
    Moments moments;
    for (const auto& value : values) {
        if (value) {
            moments.add(*value);
        }
    }
    return moments.mean();
}

// The inverse of the normal distribution function, to 0.0005, enough for ranks.
// Source  Abramowitz & Stegun 1964, Handbook of Mathematical Functions, 26.2.23.
double normalScore(double p) {
    const double tail = std::min(p, 1 - p);
    const double t = std::sqrt(-2 * std::log(tail));
    const double x = t - (2.515517 + 0.802853 * t + 0.010328 * t * t) /
                             (1 + 1.432788 * t + 0.189269 * t * t + 0.001308 * t * t * t);
    return p < 0.5 ? -x : x;
}

// Normal scores of the ranks (Blom 1958: (r - 3/8) / (n + 1/4)); ties get their mean rank.
RowValues ranked(const RowValues& values) {
    std::vector<double> sorted;
    for (const auto& value : values) {
        if (value) {
            sorted.push_back(*value);
        }
    }
    std::sort(sorted.begin(), sorted.end());
    RowValues scores(values.size());
    const auto n = static_cast<double>(sorted.size());
    for (std::size_t i = 0; i < values.size(); ++i) {
        if (values[i]) {
            const auto [low, high] = std::equal_range(sorted.begin(), sorted.end(), *values[i]);
            const double rank = (static_cast<double>(low - sorted.begin()) +
                                 static_cast<double>(high - sorted.begin()) + 1) /
                                2;
            scores[i] = normalScore((rank - 0.375) / (n + 0.25));
        }
    }
    return scores;
}

RowValues centred(const RowValues& values) {
    const double mean = meanOf(values);
    RowValues result(values.size());
    for (std::size_t i = 0; i < values.size(); ++i) {
        if (values[i]) {
            result[i] = *values[i] - mean;
        }
    }
    return result;
}

// What each vine of the row is like beside the row's mean, and how sure that is.
struct Vines {
    std::vector<double> effect;    // best linear prediction
    std::vector<double> uncertain; // variance of the vine itself around it
    std::vector<bool> isKnown;
    double between = 0; // variance between vines
    double noise = 0;   // variance of a note around the vine
};

class Learner {
public:
    Learner(std::size_t places, std::span<const RowValues> others, ShiftScale scale)
        : vines_(places),
          isSteps_(scale == ShiftScale::Steps) {
        for (const RowValues& day : others) {
            const RowValues values = centred(isSteps_ ? day : ranked(day));
            for (std::size_t i = 0; i < std::min(values.size(), places); ++i) {
                if (values[i]) {
                    vines_[i].add(*values[i]);
                    squares_ += *values[i] * *values[i];
                    ++notes_;
                }
            }
        }
    }

    [[nodiscard]] Vines learn() const {
        const auto [noise, between] = variances();
        Vines vines;
        vines.between = between;
        vines.noise = noise;
        for (const Moments& vine : vines_) {
            const auto n = static_cast<double>(vine.n);
            const double weight = between > 0 ? n * between / (n * between + noise) : 0;
            vines.effect.push_back(weight * vine.mean());
            vines.uncertain.push_back(between * (1 - weight));
            vines.isKnown.push_back(vine.n > 0);
        }
        return vines;
    }

private:
    // Within and between vines; the within is pulled towards what is known of such notes, the less
    // the history says.
    [[nodiscard]] std::pair<double, double> variances() const {
        double within = squares_;
        double ofMeans = 0;
        double perVine = 0; // sum of n_i²
        std::size_t groups = 0;
        for (const Moments& vine : vines_) {
            if (vine.n > 0) {
                const auto n = static_cast<double>(vine.n);
                within -= n * vine.mean() * vine.mean();
                ofMeans += n * vine.mean() * vine.mean();
                perVine += n * n;
                ++groups;
            }
        }
        const auto freedom = static_cast<double>(notes_ - groups);
        const double known = isSteps_ ? kStepNoise : 0.4;
        constexpr double kPrior = 20; // notes that the known noise counts for
        const double noise = std::max((std::max(within, 0.0) + kPrior * known) / (freedom + kPrior),
                                      isSteps_ ? kLeastNoise : kLeastRankNoise);
        if (groups < 2) {
            return {noise, 0};
        }
        const auto n = static_cast<double>(notes_);
        const auto k = static_cast<double>(groups);
        const double each = (n - perVine / n) / (k - 1);
        return {noise, std::max(0.0, (ofMeans / (k - 1) - noise) / each)};
    }

    std::vector<Moments> vines_;
    bool isSteps_;
    double squares_ = 0;
    std::size_t notes_ = 0;
};

// How much better a value fits the vine `shift` places back than the one where it stands.
class Ratios {
public:
    Ratios(const RowValues& walk, const Vines& vines, ShiftScale scale)
        : walk_(walk),
          vines_(vines),
          isSteps_(scale == ShiftScale::Steps),
          slips_(std::clamp(vines.noise - kRounding, kLeastSlips, kMostSlips)) {
        // The day's mean over what the vines are like: of those that are known.
        Moments mean;
        for (std::size_t i = 0; i < walk.size(); ++i) {
            if (walk[i] && vines.isKnown[i]) {
                mean.add(*walk[i] - vines.effect[i]);
            }
        }
        mean_ = mean.mean();
    }

    [[nodiscard]] std::optional<double> at(std::size_t place, int shift) const {
        const auto from = static_cast<std::ptrdiff_t>(place) - shift;
        if (!walk_[place] || !vines_.isKnown[place] || from < 0 ||
            from >= static_cast<std::ptrdiff_t>(walk_.size()) ||
            !vines_.isKnown[static_cast<std::size_t>(from)]) {
            return std::nullopt;
        }
        const double ratio =
            logLikelihood(place, static_cast<std::size_t>(from)) - logLikelihood(place, place);
        return std::clamp(ratio, -kMostRatio, kMostRatio);
    }

private:
    [[nodiscard]] double logLikelihood(std::size_t place, std::size_t vine) const {
        const double off = *walk_[place] - mean_ - vines_.effect[vine];
        if (isSteps_) {
            return logOfStep(off, vines_.uncertain[vine]);
        }
        const double variance = vines_.noise + vines_.uncertain[vine];
        return -off * off / (2 * variance) - std::log(variance) / 2;
    }

    // A note is the whole number nearest to the vine, or one beside it where the observer slipped.
    [[nodiscard]] double logOfStep(double off, double uncertain) const {
        const double spread = std::sqrt(2 * (uncertain + kDayVariance));
        const auto within = [spread](double low) {
            return (std::erf((low + 1) / spread) - std::erf(low / spread)) / 2;
        };
        const double likelihood =
            (1 - slips_) * within(off - 0.5) + slips_ / 2 * (within(off - 1.5) + within(off + 0.5));
        return std::log(likelihood + kMistake);
    }

    const RowValues& walk_;
    const Vines& vines_;
    bool isSteps_;
    double slips_;
    double mean_ = 0;
};

struct Run {
    std::size_t first = 0;
    std::size_t last = 0;
    std::size_t vines = 0;
    double evidence = 0;
};

// The stretch with the greatest sum.
Run bestRun(const Ratios& ratios, std::size_t places, int shift) {
    Run best;
    Run now;
    for (std::size_t i = 0; i < places; ++i) {
        const auto ratio = ratios.at(i, shift);
        if (!ratio) {
            continue;
        }
        if (now.evidence <= 0) {
            now = {i, i, 0, 0};
        }
        now.evidence += *ratio;
        now.last = i;
        ++now.vines;
        if (now.evidence > best.evidence && now.vines >= kLeastShiftedRun) {
            best = now;
        }
    }
    return best;
}

} // namespace

std::optional<ShiftedRun>
findShiftedRun(const RowValues& given, std::span<const RowValues> others, ShiftScale scale) {
    const RowValues walk = scale == ShiftScale::Steps ? given : ranked(given);
    const Vines vines = Learner(walk.size(), others, scale).learn();
    if (vines.between < kLeastBetween) {
        return std::nullopt;
    }
    const Ratios ratios(walk, vines, scale);
    std::optional<ShiftedRun> found;
    double most = vines.between < kAlike      ? kShiftEvidenceWhereAlike
                  : others.size() < kManyDays ? kShiftEvidenceOfFewDays
                                              : kShiftEvidence;
    for (int shift = -kFarthestShift; shift <= kFarthestShift; ++shift) {
        if (shift == 0) {
            continue;
        }
        const Run run = bestRun(ratios, walk.size(), shift);
        if (run.evidence > most) {
            most = run.evidence;
            found = ShiftedRun{run.first, run.last, shift, run.vines, {}};
        }
    }
    if (!found) {
        return found;
    }
    for (int shift = -kFarthestShift; shift <= kFarthestShift; ++shift) {
        double sum = 0;
        for (std::size_t i = found->first; i <= found->last; ++i) {
            sum += shift == 0 ? 0 : ratios.at(i, shift).value_or(0);
        }
        found->evidence[static_cast<std::size_t>(shift + kFarthestShift)] = sum;
    }
    return found;
}

} // namespace bullace::merge
