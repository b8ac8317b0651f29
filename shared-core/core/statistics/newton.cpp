#include "core/statistics/newton.hpp"

#include <Eigen/Cholesky>
#include <Eigen/Core>
#include <algorithm>
#include <cmath>

namespace bullace::statistics {

namespace {

using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;

constexpr int kMostSteps = 200;
constexpr double kEnough = 1e-14; // of the value, which a further step would add
constexpr double kFlat = 1e-12;   // curvature, compared with the greatest, that counts as none

Eigen::Index index(std::size_t of) {
    return static_cast<Eigen::Index>(of);
}

// The parameters that move; all, or all but the held one.
std::vector<std::size_t> moving(std::size_t parameters, std::optional<std::size_t> held) {
    std::vector<std::size_t> free;
    for (std::size_t i = 0; i < parameters; ++i) {
        if (i != held) {
            free.push_back(i);
        }
    }
    return free;
}

// Minus the Hessian of the parameters that move, each scaled to a curvature of 1 so that units do
// not matter; scale_i = 1/√curvature.
struct Surface {
    Matrix curvature;
    Vector gradient;
    Vector scale;
};

Surface surfaceOf(const Slope& slope, const std::vector<std::size_t>& free) {
    const std::size_t all = slope.gradient.size();
    const Eigen::Index size = index(free.size());
    Surface surface{Matrix(size, size), Vector(size), Vector(size)};
    for (Eigen::Index i = 0; i < size; ++i) {
        const std::size_t row = free[static_cast<std::size_t>(i)];
        const double curvature = std::abs(slope.hessian[row * all + row]);
        surface.scale[i] = curvature > 0 ? 1 / std::sqrt(curvature) : 1;
        surface.gradient[i] = slope.gradient[row] * surface.scale[i];
    }
    for (Eigen::Index i = 0; i < size; ++i) {
        for (Eigen::Index j = 0; j < size; ++j) {
            const std::size_t at =
                free[static_cast<std::size_t>(i)] * all + free[static_cast<std::size_t>(j)];
            surface.curvature(i, j) = -slope.hessian[at] * surface.scale[i] * surface.scale[j];
        }
    }
    return surface;
}

// The step of Newton, with as much of a ridge as makes the surface curved down.
std::optional<Vector> stepOf(const Surface& surface) {
    const Eigen::Index size = surface.gradient.size();
    for (double ridge = 0; ridge < 1e8; ridge = ridge == 0 ? 1e-6 : ridge * 10) {
        const Eigen::LLT<Matrix> factor(surface.curvature + ridge * Matrix::Identity(size, size));
        if (factor.info() == Eigen::Success) {
            const Vector step = factor.solve(surface.gradient);
            if (step.allFinite()) {
                return step;
            }
        }
    }
    return std::nullopt;
}

bool isUsable(const Slope& slope) {
    const auto finite = [](double value) { return std::isfinite(value); };
    return std::isfinite(slope.value) && std::ranges::all_of(slope.gradient, finite) &&
           std::ranges::all_of(slope.hessian, finite);
}

// Inverse of the information; nothing where the surface is flat.
std::optional<std::vector<double>> covarianceAt(const Slope& slope,
                                                const std::vector<std::size_t>& free) {
    const std::size_t all = slope.gradient.size();
    const Surface surface = surfaceOf(slope, free);
    const Eigen::LDLT<Matrix> factor(surface.curvature);
    if (factor.info() != Eigen::Success || !factor.isPositive() ||
        factor.vectorD().minCoeff() < kFlat * factor.vectorD().maxCoeff()) {
        return std::nullopt;
    }
    const Eigen::Index size = index(free.size());
    const Matrix inverse = factor.solve(Matrix::Identity(size, size));
    std::vector<double> covariance(all * all, 0.0);
    for (Eigen::Index i = 0; i < size; ++i) {
        for (Eigen::Index j = 0; j < size; ++j) {
            covariance[free[static_cast<std::size_t>(i)] * all +
                       free[static_cast<std::size_t>(j)]] =
                inverse(i, j) * surface.scale[i] * surface.scale[j];
        }
    }
    return covariance;
}

// One climb: where it stands and what the surface is like there.
class Climb {
public:
    Climb(const LogLikelihood& likelihood,
          std::vector<double> start,
          std::optional<std::size_t> held)
        : likelihood_(likelihood),
          start_(start),
          at_(std::move(start)),
          free_(moving(at_.size(), held)) {
        look(at_, here_);
        for (std::size_t i = 0; i < at_.size(); ++i) {
            startCurvature_.push_back(std::abs(here_.hessian[i * at_.size() + i]));
        }
    }

    [[nodiscard]] std::optional<Maximum> toTheTop() {
        for (int steps = 0; steps < kMostSteps && isUsable(here_); ++steps) {
            const std::optional<Step> step = nextStep();
            if (!step) {
                return std::nullopt;
            }
            const bool wouldGainNothing =
                step->gain <= kEnough * std::max(1.0, std::abs(here_.value));
            if (!advance(step->by) || wouldGainNothing) {
                return isLevel() && !isRunningAway(step->by, steps) ? top(steps) : std::nullopt;
            }
        }
        return std::nullopt;
    }

private:
    struct Step {
        std::vector<double> by;
        double gain = 0; // what a parabola would promise, doubled
    };

    void look(const std::vector<double>& at, Slope& out) const {
        out.clear(at.size());
        likelihood_(at, out);
    }

    [[nodiscard]] std::optional<Step> nextStep() const {
        Step step{std::vector<double>(at_.size(), 0.0), 0};
        if (free_.empty()) {
            return step;
        }
        const Surface surface = surfaceOf(here_, free_);
        const std::optional<Vector> scaled = stepOf(surface);
        if (!scaled) {
            return std::nullopt;
        }
        step.gain = surface.gradient.dot(*scaled);
        for (std::size_t i = 0; i < free_.size(); ++i) {
            step.by[free_[i]] = (*scaled)[index(i)] * surface.scale[index(i)];
        }
        return step;
    }

    // Whether a part of the step was found that does not lower the value.
    bool advance(const std::vector<double>& by) {
        for (double part = 1; part > 1e-10; part /= 2) {
            std::vector<double> next = at_;
            for (std::size_t i = 0; i < next.size(); ++i) {
                next[i] += part * by[i];
            }
            look(next, there_);
            if (isUsable(there_) && there_.value >= here_.value) {
                at_ = std::move(next);
                std::swap(here_, there_);
                return true;
            }
        }
        return false;
    }

    // Rounding can hide the last steps' gains, but not a slope that is still steep.
    [[nodiscard]] bool isLevel() const {
        const std::optional<Step> step = nextStep();
        return step && step->gain <= 1e-9 * std::max(1.0, std::abs(here_.value));
    }

    // Towards a maximum the steps soon become tiny; towards one that lies at infinity they stay as
    // long as they were, while the slope fades away.
    [[nodiscard]] bool isRunningAway(const std::vector<double>& step, int steps) const {
        double moved = 0;
        double last = 0;
        for (const std::size_t i : free_) {
            const double unit = startCurvature_[i];
            moved += (at_[i] - start_[i]) * (at_[i] - start_[i]) * unit;
            last += step[i] * step[i] * unit;
        }
        return steps >= 8 && last > 1e-6 * moved;
    }

    [[nodiscard]] std::optional<Maximum> top(int steps) const {
        Maximum maximum{at_, here_.value, {}, steps};
        if (!free_.empty()) {
            auto covariance = covarianceAt(here_, free_);
            if (!covariance) {
                return std::nullopt;
            }
            maximum.covariance = std::move(*covariance);
        }
        return maximum;
    }

    const LogLikelihood& likelihood_;
    std::vector<double> start_;
    std::vector<double> at_;
    std::vector<double> startCurvature_;
    std::vector<std::size_t> free_;
    Slope here_;
    Slope there_;
};

// One side of a profile: how far below the maximum it lies at a value of the parameter, each search
// starting from where the last one ended.
class Profile {
public:
    Profile(const LogLikelihood& likelihood, const Maximum& maximum, std::size_t parameter)
        : likelihood_(likelihood),
          maximum_(maximum),
          parameter_(parameter),
          last_(maximum.at) {}

    [[nodiscard]] std::optional<double> below(double value) {
        std::vector<double> start = last_;
        start[parameter_] = value;
        auto held = maximiseHolding(likelihood_, std::move(start), parameter_);
        if (!held) {
            std::vector<double> again = maximum_.at;
            again[parameter_] = value;
            held = maximiseHolding(likelihood_, std::move(again), parameter_);
        }
        if (!held) {
            return std::nullopt;
        }
        last_ = held->at;
        return maximum_.value - held->value;
    }

private:
    const LogLikelihood& likelihood_;
    const Maximum& maximum_;
    std::size_t parameter_;
    std::vector<double> last_;
};

// Between `inside`, where the profile is less than `drop` below the top, and `outside`.
double crossing(Profile& profile,
                double inside,
                double outside,
                double atInside,
                double atOutside,
                double drop) {
    for (int i = 0; i < 100 && std::abs(outside - inside) >
                                   1e-10 * std::max(std::abs(inside), std::abs(outside));
         ++i) {
        // The root of the drop is nearly straight in the parameter, so a secant in it is quick.
        const double a = std::sqrt(std::max(0.0, atInside));
        const double b = std::sqrt(std::max(0.0, atOutside));
        double part = b > a ? (std::sqrt(drop) - a) / (b - a) : 0.5;
        part = i % 3 == 2 ? 0.5 : std::clamp(part, 0.001, 0.999);
        const double between = inside + part * (outside - inside);
        const std::optional<double> at = profile.below(between);
        if (!at || std::abs(*at - drop) < 1e-11) {
            return between;
        }
        if (*at < drop) {
            inside = between;
            atInside = *at;
        } else {
            outside = between;
            atOutside = *at;
        }
    }
    return (inside + outside) / 2;
}

} // namespace

void Slope::clear(std::size_t parameters) {
    value = 0;
    gradient.assign(parameters, 0.0);
    hessian.assign(parameters * parameters, 0.0);
}

double Maximum::standardError(std::size_t parameter) const {
    return std::sqrt(covarianceOf(parameter, parameter));
}

double Maximum::covarianceOf(std::size_t one, std::size_t other) const {
    return covariance[one * at.size() + other];
}

std::optional<Maximum> maximise(const LogLikelihood& likelihood, std::vector<double> start) {
    return Climb(likelihood, std::move(start), std::nullopt).toTheTop();
}

std::optional<Maximum>
maximiseHolding(const LogLikelihood& likelihood, std::vector<double> start, std::size_t held) {
    return Climb(likelihood, std::move(start), held).toTheTop();
}

Interval profileLimits(const LogLikelihood& likelihood,
                       const Maximum& maximum,
                       std::size_t parameter,
                       double drop) {
    Interval limits;
    const double top = maximum.at[parameter];
    const double unit = maximum.standardError(parameter);
    for (const double side : {-1.0, 1.0}) {
        Profile profile(likelihood, maximum, parameter);
        double inside = top;
        double atInside = 0;
        for (double far = std::sqrt(2 * drop); far < 1e3; far *= 1.5) {
            const double outside = top + side * far * unit;
            const std::optional<double> atOutside = profile.below(outside);
            if (!atOutside) {
                break;
            }
            if (*atOutside >= drop) {
                (side < 0 ? limits.low : limits.high) =
                    crossing(profile, inside, outside, atInside, *atOutside, drop);
                break;
            }
            inside = outside;
            atInside = *atOutside;
        }
    }
    return limits;
}

} // namespace bullace::statistics
