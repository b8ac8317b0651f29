#include "core/trials/descriptor_correlation.hpp"

#include "core/trials/mixed_search_matrix.hpp"

#include <Eigen/LU>
#include <algorithm>
#include <array>
#include <cmath>

namespace bullace::trials {

namespace {

using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr int kTwo = 2;

Error wrong(std::string message) {
    return {ErrorCode::InvalidInput, std::move(message), {}};
}

// The values of both, each with mean 0 and deviation 1, so that one model fits either.
struct Scaled {
    std::array<std::vector<double>, kTwo> values; // of each row of the table; NaN is missing
    std::array<double, kTwo> deviation{};
};

Result<Scaled>
scaled(const TrialTable& table, const std::string& otherName, const std::vector<double>& other) {
    Scaled scaled{{table.response, other}, {}};
    const std::array<std::string, kTwo> names{table.responseName, otherName};
    for (std::size_t descriptor = 0; descriptor < kTwo; ++descriptor) {
        double sum = 0;
        double squares = 0;
        double n = 0;
        for (const double value : scaled.values[descriptor]) {
            sum += std::isfinite(value) ? value : 0;
            n += std::isfinite(value) ? 1 : 0;
        }
        for (const double value : scaled.values[descriptor]) {
            squares += std::isfinite(value) ? std::pow(value - sum / n, 2) : 0;
        }
        if (n < 3 || !(squares > 0)) {
            return wrong("The values of " + names[descriptor] +
                         " do not vary, or are fewer than 3.");
        }
        scaled.deviation[descriptor] = std::sqrt(squares / (n - 1));
        for (double& value : scaled.values[descriptor]) {
            value = (value - sum / n) / scaled.deviation[descriptor];
        }
    }
    return scaled;
}

// The design of one descriptor at all plots, doubled: each of its columns once for either.
class Doubled {
public:
    Doubled(const MixedDesign& single, const std::vector<std::size_t>& rows, const Scaled& scaled)
        : single_(single) {
        design_.descriptors = kTwo;
        design_.means = {0, 0};
        for (std::size_t plot = 0; plot < rows.size(); ++plot) {
            for (std::size_t descriptor = 0; descriptor < kTwo; ++descriptor) {
                const double value = scaled.values[descriptor][rows[plot]];
                if (std::isfinite(value)) {
                    add(plot, static_cast<int>(descriptor), value);
                }
            }
        }
        finish();
    }
    [[nodiscard]] MixedDesign take() { return std::move(design_); }

private:
    using Triplet = Eigen::Triplet<double, std::int32_t>;

    void add(std::size_t plot, int descriptor, double value) {
        const auto row = static_cast<std::int32_t>(values_.size());
        const auto place = static_cast<Eigen::Index>(plot);
        for (Sparse::InnerIterator it(single_.transposed, place); it; ++it) {
            const auto column = static_cast<int>(it.row()) * kTwo + descriptor;
            entries_.emplace_back(column, row, it.value());
        }
        values_.push_back(value);
        design_.plotOf.push_back(static_cast<std::uint32_t>(plot));
        design_.descriptorOf.push_back(static_cast<std::uint32_t>(descriptor));
    }

    // Fixed columns of a descriptor that follow from its others, since it lacks some plots, go.
    void finish() {
        const int fixed = single_.fixedColumns() * kTwo;
        Sparse all(single_.columns() * kTwo, static_cast<Eigen::Index>(values_.size()));
        all.setFromTriplets(entries_.begin(), entries_.end());
        const std::vector<bool> kept = independentColumns(all.topRows(fixed));
        std::vector<int> to(static_cast<std::size_t>(all.rows()), -1);
        for (int column = 0; column < fixed; ++column) {
            if (kept[static_cast<std::size_t>(column)]) {
                to[static_cast<std::size_t>(column)] = design_.fixedColumns();
                design_.fixed.push_back(single_.fixed[static_cast<std::size_t>(column / kTwo)]);
            }
        }
        const int shift = fixed - design_.fixedColumns();
        for (int column = fixed; column < all.rows(); ++column) {
            to[static_cast<std::size_t>(column)] = column - shift;
        }
        std::vector<Triplet> moved;
        for (const Triplet& entry : entries_) {
            if (const int place = to[static_cast<std::size_t>(entry.row())]; place >= 0) {
                moved.emplace_back(place, entry.col(), entry.value());
            }
        }
        design_.transposed.resize(all.rows() - shift, all.cols());
        design_.transposed.setFromTriplets(moved.begin(), moved.end());
        design_.random = single_.random;
        for (RandomBlock& block : design_.random) {
            block.parts = {"one", "other"};
            block.isCorrelated = true;
            block.first = block.first * kTwo - shift;
        }
        design_.response =
            Eigen::Map<const VectorXd>(values_.data(), static_cast<Eigen::Index>(values_.size()));
    }

    const MixedDesign& single_;
    MixedDesign design_;
    std::vector<Triplet> entries_;
    std::vector<double> values_;
};

// r = c / sqrt(v w), and its error from the covariance matrix of (v, c, w).
Correlation correlationOf(double one,
                          double covariance,
                          double other,
                          const std::optional<Eigen::Matrix3d>& errors) {
    Correlation correlation;
    correlation.value = std::clamp(covariance / std::sqrt(one * other), -1.0, 1.0);
    correlation.isAtBoundary = std::abs(correlation.value) > 1 - 1e-6;
    if (errors && !correlation.isAtBoundary) {
        const Eigen::Vector3d gradient(-correlation.value / (2 * one),
                                       1 / std::sqrt(one * other),
                                       -correlation.value / (2 * other));
        const double variance = gradient.dot(*errors * gradient);
        if (variance > 0) {
            correlation.standardError = std::sqrt(variance);
        }
    }
    return correlation;
}

// Where (v, c, w) of each term stand among the free parameters; nothing where one does not.
using Places = std::array<Eigen::Index, 3>;
std::optional<Places> placesOf(const std::vector<Parameter>& free, std::size_t term) {
    Places places{};
    const std::array<std::pair<int, int>, 3> wanted{{{0, 0}, {1, 0}, {1, 1}}};
    for (std::size_t i = 0; i < wanted.size(); ++i) {
        const auto found = std::ranges::find_if(free, [&](const Parameter& parameter) {
            return parameter.term == term && parameter.row == wanted[i].first &&
                   parameter.column == wanted[i].second;
        });
        if (found == free.end()) {
            return {};
        }
        places[i] = found - free.begin();
    }
    return places;
}

class Telling {
public:
    Telling(MixedEquations& equations, const Search& search, const Scaled& scaled)
        : equations_(equations),
          search_(search),
          scaled_(scaled) {
        if (!search.isSingular) {
            equations.logLikelihood(search.at);
            const MatrixXd information = equations.slope(search.free).information;
            const Eigen::FullPivLU<MatrixXd> factor(information);
            if (factor.isInvertible()) {
                covariance_ = factor.inverse();
            }
        }
    }

    void tell(DescriptorCorrelation& result) const {
        const auto& random = equations_.design().random;
        MatrixXd sum = MatrixXd::Zero(kTwo, kTwo);
        for (std::size_t term = 0; term <= random.size(); ++term) {
            const bool isRandom = term < random.size();
            const MatrixXd& own = isRandom ? search_.at.random[term] : search_.at.residual;
            sum += own;
            result.terms.push_back(termOf(isRandom ? random[term].name : "residual", own, term));
        }
        result.phenotypic = correlationOf(sum(0, 0), sum(1, 0), sum(1, 1), errorsOfSum());
    }

private:
    TermCorrelation termOf(const std::string& name, const MatrixXd& own, std::size_t term) const {
        const auto& deviation = scaled_.deviation;
        TermCorrelation told{name,
                             own(0, 0) * deviation[0] * deviation[0],
                             own(1, 1) * deviation[1] * deviation[1],
                             own(1, 0) * deviation[0] * deviation[1],
                             {}};
        if (own(0, 0) > 1e-9 && own(1, 1) > 1e-9) {
            told.correlation = correlationOf(own(0, 0), own(1, 0), own(1, 1), errorsOf(term));
        }
        return told;
    }

    [[nodiscard]] std::optional<Eigen::Matrix3d> errorsOf(std::size_t term) const {
        const auto places = placesOf(search_.free, term);
        if (!covariance_ || !places) {
            return {};
        }
        Eigen::Matrix3d errors;
        for (int i = 0; i < 3; ++i) {
            for (int j = 0; j < 3; ++j) {
                errors(i, j) = (*covariance_)((*places)[static_cast<std::size_t>(i)],
                                              (*places)[static_cast<std::size_t>(j)]);
            }
        }
        return errors;
    }

    // Of the sums over all terms.
    [[nodiscard]] std::optional<Eigen::Matrix3d> errorsOfSum() const {
        if (!covariance_) {
            return {};
        }
        MatrixXd adding = MatrixXd::Zero(3, covariance_->rows());
        for (std::size_t i = 0; i < search_.free.size(); ++i) {
            const Parameter& parameter = search_.free[i];
            adding(parameter.row + parameter.column, static_cast<Eigen::Index>(i)) = 1;
        }
        return Eigen::Matrix3d(adding * *covariance_ * adding.transpose());
    }

    MixedEquations& equations_;
    const Search& search_;
    const Scaled& scaled_;
    std::optional<MatrixXd> covariance_;
};

void remark(const Search& search, DescriptorCorrelation& result) {
    if (search.isSingular) {
        result.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                   "A covariance matrix of %1 and %2 is on its "
                                                   "boundary: a correlation of 1 or -1 there says "
                                                   "that the trial is small, not that they are the "
                                                   "same. Standard errors cannot be given."),
                                  {result.one, result.other}});
    }
    if (!search.hasConverged) {
        result.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "The search for the variances did not come to an "
                              "end; the numbers are not to be relied on."),
             {}});
    }
}

} // namespace

const TermCorrelation* DescriptorCorrelation::term(std::string_view name) const {
    const auto found = std::ranges::find_if(
        terms, [name](const TermCorrelation& each) { return each.name == name; });
    return found == terms.end() ? nullptr : &*found;
}

Result<DescriptorCorrelation> correlateDescriptors(const TrialTable& table,
                                                   const std::string& otherName,
                                                   const std::vector<double>& other,
                                                   const MixedSpec& spec) {
    const auto scaledOnes = scaled(table, otherName, other);
    if (!scaledOnes) {
        return scaledOnes.error();
    }
    // A plot is a row that has either; what the single design takes for its values does not matter.
    TrialTable plots = table;
    DescriptorCorrelation result;
    result.one = table.responseName;
    result.other = otherName;
    for (std::size_t row = 0; row < plots.rows(); ++row) {
        const bool hasOne = std::isfinite(table.response[row]);
        const bool hasOther = std::isfinite(other[row]);
        result.both += hasOne && hasOther ? 1U : 0U;
        result.oneAlone += hasOne && !hasOther ? 1U : 0U;
        result.otherAlone += hasOther && !hasOne ? 1U : 0U;
        plots.response[row] = hasOne || hasOther ? static_cast<double>(row) : std::nan("");
    }
    if (result.both < 3) {
        return wrong("Fewer than 3 plots have both " + result.one + " and " + otherName + ".");
    }
    const auto single = designOf(plots, spec);
    if (!single) {
        return single.error();
    }
    std::vector<std::size_t> rows;
    for (const double row : single->table.response) {
        rows.push_back(static_cast<std::size_t>(row));
    }
    const MixedDesign design = Doubled(*single, rows, *scaledOnes).take();
    MixedEquations equations(design);
    const auto search = searchVariances(equations);
    if (!search) {
        return wrong("The fixed effects fit the values exactly: there is no variance to divide.");
    }
    result.logLikelihood = search->logLikelihood;
    result.hasConverged = search->hasConverged;
    Telling(equations, *search, *scaledOnes).tell(result);
    remark(*search, result);
    return result;
}

} // namespace bullace::trials
