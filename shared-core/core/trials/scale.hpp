// Scales on which counts, percentages and scores can be analysed: values brought onto one, means
// told back from it, and which one the records speak for.
#pragma once

#include "core/base/remark.hpp"
#include "core/base/result.hpp"
#include "core/statistics/estimate.hpp"

#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace bullace::trials {

enum class Scale {
    AsItIs,
    Logarithm,   // natural, of the count and 1
    SquareRoot,  // of the count and 3/8 (Anscombe 1948, Biometrika 35:246-254)
    Logit,       // of a percentage; 0 and 100 are put right first
    NormalScores // of the ranks (Blom 1958)
};
// "logarithm", with lower case and hyphens.
[[nodiscard]] std::string_view nameOf(Scale scale);
[[nodiscard]] std::optional<Scale> scaleOf(std::string_view name);

// The values of one response on a scale, and the way back.
class ScaledResponse {
public:
    // NaN is missing and stays so. Of percentages, 0 and 100 have no logit: where they occur, every
    // p becomes (p(n - 1) + 50)/n (Smithson & Verkuilen 2006, Psychol. Methods 11:54-71).
    // Errors  InvalidInput where a value cannot stand on the scale: a count below 0, a percentage
    //         out of 0 to 100; the message names the record, from 1.
    [[nodiscard]] static Result<ScaledResponse> of(std::span<const double> values, Scale scale);

    [[nodiscard]] Scale scale() const { return scale_; }
    [[nodiscard]] const std::vector<double>& values() const { return values_; }
    // What the change of scale means for the reader; empty as it is.
    [[nodiscard]] const Remarks& remarks() const { return remarks_; }

    // A value of the scale as one of the response; of a mean it is no mean but what stands in the
    // middle: of logarithms a geometric mean, of ranks about a median. Counts never below 0,
    // percentages from 0 to 100, of ranks within what was recorded.
    [[nodiscard]] double back(double onScale) const;
    // With its limits told back; they lie unevenly, so there is no standard error.
    [[nodiscard]] statistics::Estimate back(const statistics::Estimate& onScale) const;

private:
    [[nodiscard]] double fromScores(double score) const;

    Scale scale_ = Scale::AsItIs;
    std::vector<double> values_;
    double count_ = 0; // of values that are not missing
    bool areEndsMoved_ = false;
    std::vector<std::pair<double, double>> scores_; // score and value, ascending
    Remarks remarks_;
};

enum class ResponseKind { Measurement, Count, Percentage, Score };

struct ScaleAdvice {
    Scale scale = Scale::AsItIs;
    // Of log variance on log mean over the groups (Taylor 1961, Nature 189:732-735): 0 where they
    // vary alike, 1 as counts by chance, 2 where the standard deviation goes with the mean. Nothing
    // with fewer than 3 groups that have a mean and a variance above 0.
    std::optional<double> taylorSlope{};
    Remark reason; // why this scale
};

// For the records of each treatment. Of counts and measurements by the power 1 - slope/2 that evens
// the variances out (Bartlett 1947, Biometrics 3:39-52): as they are up to a slope of 0.5, square
// root up to 1.5, logarithm above; measurements below 0 stay as they are. Percentages as they are
// while all means lie within 20 to 80, otherwise logits. Scores as they are with five or more of
// their steps in use, otherwise normal scores (both common practice, no source).
[[nodiscard]] ScaleAdvice adviseScale(std::span<const std::vector<double>> groups,
                                      ResponseKind kind);

} // namespace bullace::trials
