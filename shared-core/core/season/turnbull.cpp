#include "core/season/turnbull.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

namespace bullace::season {

namespace {

constexpr double kExcess = 1e-10; // asked for; 1e-9 is promised
constexpr int kFirstSteps = 30;   // of expectation and maximisation
constexpr int kMostSteps = 500;
constexpr double kNoMass = 1e-12;

// One end of an onset in the order in which ties are broken: an exact day's start lies before it,
// ends lie at it, open starts behind it.
struct End {
    double at;
    int order; // -1 start of an exact day, 0 an end, 1 an open start

    friend bool operator==(const End&, const End&) = default;
    friend auto operator<=>(const End&, const End&) = default;
};

// The candidates that an onset covers, first to last, and how many onsets cover just these.
struct Covered {
    std::size_t first;
    std::size_t last;
    double weight;
};

End startOf(const OnsetInterval& onset) {
    return {onset.after, onset.isExact() ? -1 : 1};
}

struct Candidates {
    std::vector<End> starts;
    std::vector<End> ends;
};

// Where a start is followed at once by an end.
Candidates innermost(const std::vector<OnsetInterval>& onsets) {
    std::vector<std::pair<End, bool>> all; // whether it is a start
    all.reserve(2 * onsets.size());
    for (const OnsetInterval& onset : onsets) {
        all.emplace_back(startOf(onset), true);
        all.emplace_back(End{onset.by, 0}, false);
    }
    std::ranges::sort(all);
    Candidates found;
    for (std::size_t i = 0; i + 1 < all.size(); ++i) {
        if (all[i].second && !all[i + 1].second) {
            found.starts.push_back(all[i].first);
            found.ends.push_back(all[i + 1].first);
        }
    }
    return found;
}

std::vector<Covered> coveredBy(const std::vector<OnsetInterval>& onsets, const Candidates& among) {
    std::vector<Covered> covered;
    covered.reserve(onsets.size());
    for (const OnsetInterval& onset : onsets) {
        const auto first = std::ranges::lower_bound(among.starts, startOf(onset));
        const auto behind = std::ranges::upper_bound(among.ends, End{onset.by, 0});
        covered.push_back({static_cast<std::size_t>(first - among.starts.begin()),
                           static_cast<std::size_t>(behind - among.ends.begin()) - 1,
                           1});
    }
    std::ranges::sort(
        covered, {}, [](const Covered& one) { return std::pair(one.first, one.last); });
    std::size_t kept = 0;
    for (std::size_t i = 1; i < covered.size(); ++i) {
        if (covered[i].first == covered[kept].first && covered[i].last == covered[kept].last) {
            covered[kept].weight += 1;
        } else {
            covered[++kept] = covered[i];
        }
    }
    covered.resize(kept + 1);
    return covered;
}

// The likelihood Σ w log P, P the sum of the masses that are covered. With -n Σp added, masses need
// not be held to a sum of 1: at the maximum it is 1 by itself.
class Masses {
public:
    Masses(std::vector<Covered> covered, std::size_t candidates)
        : covered_(std::move(covered)),
          size_(candidates),
          mass_(candidates, 1.0 / static_cast<double>(candidates)),
          gradient_(candidates),
          shares_(covered_.size()) {
        for (const Covered& one : covered_) {
            n_ += one.weight;
        }
        look();
    }

    void climb() {
        for (int step = 0; step < kFirstSteps && excess_ > kExcess; ++step) {
            expectationStep();
        }
        for (int step = 0; step < kMostSteps && excess_ > kExcess; ++step) {
            if (!newtonStep()) {
                expectationStep();
            }
        }
        tidy();
    }

    [[nodiscard]] const std::vector<double>& mass() const { return mass_; }
    [[nodiscard]] double excess() const { return std::max(0.0, excess_); }
    [[nodiscard]] double logLikelihood() const {
        double value = 0;
        for (std::size_t i = 0; i < covered_.size(); ++i) {
            value += covered_[i].weight * std::log(shares_[i]);
        }
        return value;
    }

private:
    // Shares, gradient and excess at the present masses.
    void look() {
        running_.assign(size_ + 1, 0.0);
        for (std::size_t j = 0; j < size_; ++j) {
            running_[j + 1] = running_[j] + mass_[j];
        }
        std::vector<double>& steps = steps_;
        steps.assign(size_ + 1, 0.0);
        for (std::size_t i = 0; i < covered_.size(); ++i) {
            const Covered& one = covered_[i];
            // A difference of sums loses what is small beside them: few are added up afresh.
            shares_[i] = one.last - one.first < 8 ? freshShare(one)
                                                  : running_[one.last + 1] - running_[one.first];
            const double slope = one.weight / shares_[i];
            steps[one.first] += slope;
            steps[one.last + 1] -= slope;
        }
        double slope = 0;
        excess_ = 0;
        for (std::size_t j = 0; j < size_; ++j) {
            slope += steps[j];
            gradient_[j] = slope;
            const double over = slope / n_ - 1;
            excess_ = std::max(excess_, mass_[j] > kNoMass ? std::abs(over) : over);
        }
    }

    [[nodiscard]] double freshShare(const Covered& one) const {
        double share = 0;
        for (std::size_t j = one.first; j <= one.last; ++j) {
            share += mass_[j];
        }
        return share;
    }

    void expectationStep() {
        for (std::size_t j = 0; j < size_; ++j) {
            mass_[j] *= gradient_[j] / n_;
        }
        look();
    }

    [[nodiscard]] double penalised() const {
        double value = logLikelihood();
        for (const double mass : mass_) {
            value -= n_ * mass;
        }
        return value;
    }

    // Whether a step was found that raises the value.
    bool newtonStep() {
        free_.clear();
        for (std::size_t j = 0; j < size_; ++j) {
            if (mass_[j] > kNoMass || gradient_[j] > n_) {
                free_.push_back(j);
            } else {
                mass_[j] = 0;
            }
        }
        if (!solve()) {
            return false;
        }
        const double before = penalised();
        const std::vector<double> start = mass_;
        for (double part = 1; part > 1e-8; part /= 2) {
            for (std::size_t k = 0; k < free_.size(); ++k) {
                mass_[free_[k]] = std::max(0.0, start[free_[k]] + part * step_[k]);
            }
            look();
            const bool isInside = std::ranges::all_of(shares_, [](double p) { return p > 0; });
            if (isInside && penalised() >= before - 1e-14 * std::abs(before)) {
                return true;
            }
        }
        mass_ = start;
        look();
        return false;
    }

    // Newton's direction among the free masses, by Cholesky's factors; a small ridge keeps it
    // unique where masses can be exchanged without loss.
    bool solve() {
        const std::size_t p = free_.size();
        curvature_.assign(p * p, 0.0);
        for (std::size_t i = 0; i < covered_.size(); ++i) {
            addCurvature(covered_[i], covered_[i].weight / (shares_[i] * shares_[i]));
        }
        step_.resize(p);
        for (std::size_t k = 0; k < p; ++k) {
            curvature_[k * p + k] *= 1 + 1e-9;
            step_[k] = gradient_[free_[k]] - n_;
        }
        return factorAndSolve(p);
    }

    void addCurvature(const Covered& one, double value) {
        const std::size_t p = free_.size();
        const auto from = std::ranges::lower_bound(free_, one.first) - free_.begin();
        const auto to = std::ranges::upper_bound(free_, one.last) - free_.begin();
        for (auto a = static_cast<std::size_t>(from); a < static_cast<std::size_t>(to); ++a) {
            for (auto b = static_cast<std::size_t>(from); b <= a; ++b) {
                curvature_[a * p + b] += value;
            }
        }
    }

    bool factorAndSolve(std::size_t p) {
        for (std::size_t a = 0; a < p; ++a) {
            for (std::size_t b = 0; b <= a; ++b) {
                double sum = curvature_[a * p + b];
                for (std::size_t c = 0; c < b; ++c) {
                    sum -= curvature_[a * p + c] * curvature_[b * p + c];
                }
                if (a == b && !(sum > 0)) {
                    return false;
                }
                curvature_[a * p + b] = a == b ? std::sqrt(sum) : sum / curvature_[b * p + b];
            }
        }
        for (std::size_t a = 0; a < p; ++a) {
            for (std::size_t c = 0; c < a; ++c) {
                step_[a] -= curvature_[a * p + c] * step_[c];
            }
            step_[a] /= curvature_[a * p + a];
        }
        for (std::size_t a = p; a-- > 0;) {
            for (std::size_t c = a + 1; c < p; ++c) {
                step_[a] -= curvature_[c * p + a] * step_[c];
            }
            step_[a] /= curvature_[a * p + a];
        }
        return std::ranges::all_of(step_, [](double s) { return std::isfinite(s); });
    }

    // Rounding's crumbs are no mass, and all of it is 1.
    void tidy() {
        double sum = 0;
        for (std::size_t j = 0; j < size_; ++j) {
            mass_[j] = mass_[j] < 1e-9 && gradient_[j] <= n_ ? 0 : mass_[j];
            sum += mass_[j];
        }
        for (double& mass : mass_) {
            mass /= sum;
        }
        look();
    }

    std::vector<Covered> covered_;
    std::size_t size_;
    std::vector<double> mass_;
    std::vector<double> gradient_;
    std::vector<double> shares_;
    std::vector<double> running_;
    std::vector<double> steps_;
    std::vector<std::size_t> free_;
    std::vector<double> curvature_;
    std::vector<double> step_;
    double n_ = 0;
    double excess_ = 0;
};

Status checked(std::span<const OnsetInterval> onsets) {
    for (std::size_t i = 0; i < onsets.size(); ++i) {
        const OnsetInterval& one = onsets[i];
        const bool isOrdered = one.after <= one.by;
        if (!isOrdered || one.after == statistics::kUnbounded ||
            one.by == -statistics::kUnbounded) {
            return Error{ErrorCode::InvalidInput,
                         "Onset " + std::to_string(i + 1) +
                             " ends before it begins, or a bound of it is no number.",
                         {}};
        }
    }
    return {};
}

} // namespace

std::optional<StepMass> StepCurve::where(double share) const {
    for (const StepMass& step : steps) {
        if (step.cumulated >= share - 1e-12) {
            return step;
        }
    }
    return std::nullopt;
}

Result<StepCurve> turnbull(std::span<const OnsetInterval> onsets) {
    if (Status fine = checked(onsets); !fine) {
        return fine.error();
    }
    StepCurve curve;
    curve.counts = countsOf(onsets);
    std::vector<OnsetInterval> telling;
    telling.reserve(onsets.size());
    std::ranges::copy_if(onsets, std::back_inserter(telling), [](const OnsetInterval& one) {
        return !one.isUnseen();
    });
    if (telling.empty()) {
        curve.remarks.push_back(
            {BULLACE_SENTENCE("Remark", "No visit says anything about this stage."), {}});
        return curve;
    }
    const Candidates candidates = innermost(telling);
    curve.candidates = candidates.starts.size();
    Masses masses(coveredBy(telling, candidates), curve.candidates);
    masses.climb();
    curve.logLikelihood = masses.logLikelihood();
    curve.excess = masses.excess();
    double cumulated = 0;
    for (std::size_t j = 0; j < curve.candidates; ++j) {
        if (masses.mass()[j] > 0) {
            cumulated = std::min(1.0, cumulated + masses.mass()[j]);
            curve.steps.push_back(
                {candidates.starts[j].at, candidates.ends[j].at, masses.mass()[j], cumulated});
        }
    }
    return curve;
}

} // namespace bullace::season
