// The model with observers as a random effect: things are swept out, and one ratio of variances is
// sought.
#include "core/statistics/agreement.hpp"
#include "core/statistics/distributions.hpp"

#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <set>

namespace bullace::statistics {

namespace {

using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;

constexpr std::size_t kEnoughForSpread = 3;

// Readings of one thing.
using Thing = std::vector<Reading>;

std::vector<Thing> thingsOf(std::span<const Reading> readings) {
    std::map<std::size_t, Thing> byThing;
    for (const Reading& reading : readings) {
        byThing[reading.thing].push_back(reading);
    }
    std::vector<Thing> things;
    for (auto& [number, thing] : byThing) {
        std::set<std::size_t> people;
        for (const Reading& reading : thing) {
            people.insert(reading.observer);
        }
        if (people.size() >= 2) {
            things.push_back(std::move(thing));
        }
    }
    return things;
}

double meanOf(const Thing& thing) {
    double sum = 0;
    for (const Reading& reading : thing) {
        sum += reading.value - thing.front().value;
    }
    return thing.front().value + sum / static_cast<double>(thing.size());
}

// What is left of the normal equations once the things are swept out: C = Z'MZ, b = Z'My and y'My.
struct Swept {
    Matrix c;
    Vector b;
    double yy = 0;
    double freedom = 0; // readings - things
};

Swept sweep(const std::vector<Thing>& things, std::size_t observers) {
    const auto size = static_cast<Eigen::Index>(observers);
    Swept swept{Matrix::Zero(size, size), Vector::Zero(size), 0, 0};
    for (const Thing& thing : things) {
        const double mean = meanOf(thing);
        const auto n = static_cast<double>(thing.size());
        swept.freedom += n - 1;
        for (const Reading& one : thing) {
            const auto i = static_cast<Eigen::Index>(one.observer);
            const double off = one.value - mean;
            swept.c(i, i) += 1;
            swept.b[i] += off;
            swept.yy += off * off;
            for (const Reading& other : thing) {
                swept.c(i, static_cast<Eigen::Index>(other.observer)) -= 1 / n;
            }
        }
    }
    return swept;
}

// REML of the ratio of the observers' variance to the readings', the latter profiled out, in the
// eigenvectors of C.
class Ratio {
public:
    explicit Ratio(const Swept& swept) : swept_(swept), solver_(swept.c) {
        turned_ = solver_.eigenvectors().transpose() * swept.b;
    }

    [[nodiscard]] double leftOver(double ratio) const {
        double left = swept_.yy;
        for (Eigen::Index i = 0; i < turned_.size(); ++i) {
            left -= ratio * turned_[i] * turned_[i] / (1 + ratio * eigen(i));
        }
        return left;
    }
    [[nodiscard]] double logLikelihood(double ratio) const {
        double log = swept_.freedom * std::log(leftOver(ratio) / swept_.freedom);
        for (Eigen::Index i = 0; i < turned_.size(); ++i) {
            log += std::log1p(ratio * eigen(i));
        }
        return -log / 2;
    }
    // Golden section on the logarithm of the ratio, which has one maximum; 0 where the border is
    // better. Source  Kiefer 1953, Proc. Am. Math. Soc. 4:502-506.
    [[nodiscard]] double best() const {
        constexpr double kGolden = std::numbers::phi - 1;
        double low = -20;
        double high = 20;
        while (high - low > 1e-9) {
            const double left = high - kGolden * (high - low);
            const double right = low + kGolden * (high - low);
            if (logLikelihood(std::exp(left)) < logLikelihood(std::exp(right))) {
                low = left;
            } else {
                high = right;
            }
        }
        const double ratio = std::exp((low + high) / 2);
        return logLikelihood(ratio) > logLikelihood(0) + 1e-9 ? ratio : 0;
    }
    // (I + ratio·C)^-1, times ratio.
    [[nodiscard]] Matrix shrinkage(double ratio) const {
        Vector diagonal(turned_.size());
        for (Eigen::Index i = 0; i < turned_.size(); ++i) {
            diagonal[i] = ratio / (1 + ratio * eigen(i));
        }
        return solver_.eigenvectors() * diagonal.asDiagonal() * solver_.eigenvectors().transpose();
    }

private:
    [[nodiscard]] double eigen(Eigen::Index i) const {
        return std::max(0.0, solver_.eigenvalues()[i]);
    }

    const Swept& swept_;
    Eigen::SelfAdjointEigenSolver<Matrix> solver_;
    Vector turned_;
};

void addSpreads(const std::vector<Thing>& things, ObserverModel& model) {
    std::vector<double> squares(model.observers.size(), 0.0);
    for (const Thing& thing : things) {
        std::vector<double> left;
        double mean = 0;
        for (const Reading& reading : thing) {
            const auto& bias = model.observers[reading.observer].bias;
            left.push_back(reading.value - thing.front().value - (bias ? bias->value : 0));
            mean += left.back() / static_cast<double>(thing.size());
        }
        const auto n = static_cast<double>(thing.size());
        for (std::size_t i = 0; i < thing.size(); ++i) {
            // The thing's mean was taken from the same values: n/(n - 1) makes up for it.
            squares[thing[i].observer] += (left[i] - mean) * (left[i] - mean) * n / (n - 1);
        }
    }
    for (std::size_t i = 0; i < squares.size(); ++i) {
        ObserverEffect& observer = model.observers[i];
        if (observer.readings >= kEnoughForSpread) {
            observer.spread = std::sqrt(squares[i] / static_cast<double>(observer.readings));
        }
    }
}

void fit(const std::vector<Thing>& things, ObserverModel& model) {
    const Swept swept = sweep(things, model.observers.size());
    const Ratio ratio(swept);
    if (!(swept.yy > 0)) {
        model.observerSd = 0;
        model.readingSd = 0;
        model.remarks.push_back(
            {BULLACE_SENTENCE("Remark", "All people noted the same values: they do not differ."),
             {}});
        return;
    }
    const double best = ratio.best();
    const double variance = std::max(0.0, ratio.leftOver(best) / swept.freedom);
    model.readingSd = std::sqrt(variance);
    model.observerSd = std::sqrt(best * variance);
    const Matrix shrinkage = ratio.shrinkage(best);
    const Vector biases = shrinkage * swept.b;
    for (std::size_t i = 0; i < model.observers.size(); ++i) {
        if (model.observers[i].readings == 0) {
            continue;
        }
        const auto at = static_cast<Eigen::Index>(i);
        const double error = std::sqrt(std::max(0.0, shrinkage(at, at) * variance));
        model.observers[i].bias = estimateAround(biases[at], error, kNormal95);
    }
    if (best == 0) {
        model.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                  "No difference between people is shown beyond "
                                                  "what single values differ."),
                                 {}});
    }
}

} // namespace

Result<ObserverModel> observerModel(std::span<const Reading> readings, std::size_t observers) {
    for (const Reading& reading : readings) {
        if (!std::isfinite(reading.value) || reading.observer >= observers) {
            return Error{ErrorCode::InvalidInput,
                         "A value is not finite, or nobody is said to have noted it.",
                         ""};
        }
    }
    const std::vector<Thing> things = thingsOf(readings);
    ObserverModel model;
    model.things = things.size();
    model.observers.resize(observers);
    for (const Thing& thing : things) {
        model.readings += thing.size();
        for (const Reading& reading : thing) {
            ++model.observers[reading.observer].readings;
        }
    }
    if (model.things < 2) {
        model.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                  "Vines noted by two people: %1; people can be "
                                                  "compared from two on."),
                                 {static_cast<std::int64_t>(model.things)}});
        return model;
    }
    fit(things, model);
    addSpreads(things, model);
    return model;
}

} // namespace bullace::statistics
