#include "core/fruit/variation.hpp"

#include "core/fruit/sample_size.hpp"
#include "core/statistics/distributions.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::fruit {

namespace {

constexpr double kMostVines = 1e6;

// Sums that the mean squares and their expectations are made of. Values are taken from the first
// one, so that many equal leading digits do no harm.
struct Sums {
    double values = 0;
    double vines = 0;
    double accessions = 0;
    double vineSquaresOverAccession = 0; // Σ Σ n_ij²/n_i
    double vineSquares = 0;              // Σ Σ n_ij²
    double accessionSquares = 0;         // Σ n_i²
    double ofAccessions = 0;             // sums of squares
    double ofVines = 0;
    double ofSamples = 0;
    double mean = 0;
};

double sumOf(std::span<const double> values, double origin) {
    double sum = 0;
    for (const double value : values) {
        sum += value - origin;
    }
    return sum;
}

struct Part {
    double n = 0;
    double mean = 0;
};

Part partOf(const AccessionVines& vines, double origin) {
    Part part;
    for (const VineSamples& samples : vines) {
        part.n += static_cast<double>(samples.size());
        part.mean += sumOf(samples, origin);
    }
    part.mean = part.n > 0 ? part.mean / part.n : 0;
    return part;
}

void addVines(const AccessionVines& vines, const Part& accession, double origin, Sums& sums) {
    for (const VineSamples& samples : vines) {
        if (samples.empty()) {
            continue;
        }
        const auto n = static_cast<double>(samples.size());
        const double mean = sumOf(samples, origin) / n;
        sums.vines += 1;
        sums.vineSquares += n * n;
        sums.vineSquaresOverAccession += n * n / accession.n;
        sums.ofVines += n * (mean - accession.mean) * (mean - accession.mean);
        for (const double value : samples) {
            sums.ofSamples += (value - origin - mean) * (value - origin - mean);
        }
    }
}

Sums sumsOf(const std::vector<AccessionVines>& accessions, double origin) {
    Sums sums;
    std::vector<Part> parts;
    for (const AccessionVines& vines : accessions) {
        parts.push_back(partOf(vines, origin));
        sums.values += parts.back().n;
        sums.mean += parts.back().n * parts.back().mean;
    }
    sums.mean /= sums.values;
    for (std::size_t i = 0; i < accessions.size(); ++i) {
        const Part& part = parts[i];
        if (part.n == 0) {
            continue;
        }
        sums.accessions += 1;
        sums.accessionSquares += part.n * part.n;
        sums.ofAccessions += part.n * (part.mean - sums.mean) * (part.mean - sums.mean);
        addVines(accessions[i], part, origin, sums);
    }
    sums.mean += origin;
    return sums;
}

std::optional<VarianceLine> lineOf(double freedom, double squares) {
    return freedom > 0 ? std::optional(VarianceLine{freedom, squares, squares / freedom, {}, {}})
                       : std::nullopt;
}

void compare(std::optional<VarianceLine>& line, const std::optional<VarianceLine>& with) {
    if (line && with && with->meanSquare > 0) {
        line->f = line->meanSquare / with->meanSquare;
        line->p = statistics::fAbove(*line->f, line->freedom, with->freedom);
    }
}

constexpr std::string_view kVinesBelowZero =
    BULLACE_SENTENCE("Remark",
                     "The variance between vines comes out below 0 and is given as 0: the values "
                     "do not show any.");
constexpr std::string_view kAccessionsBelowZero =
    BULLACE_SENTENCE("Remark",
                     "The variance between accessions comes out below 0 and is given as 0: the "
                     "values do not show any.");

double notBelowZero(double component, std::string_view sentence, Remarks& remarks) {
    if (component < 0) {
        remarks.push_back({sentence, {}});
    }
    return std::max(0.0, component);
}

void addComponents(const Sums& sums, VarianceParts& parts) {
    if (!parts.ofSamples) {
        parts.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                  "Each vine has one value: what varies within a "
                                                  "vine cannot be told from what varies between "
                                                  "vines."),
                                 {}});
        return;
    }
    parts.withinVine = parts.ofSamples->meanSquare;
    double vines = 0;
    if (parts.ofVines) {
        parts.vinesInVines = (sums.values - sums.vineSquaresOverAccession) / parts.ofVines->freedom;
        vines = (parts.ofVines->meanSquare - *parts.withinVine) / parts.vinesInVines;
        parts.betweenVines = notBelowZero(vines, kVinesBelowZero, parts.remarks);
    }
    if (parts.ofAccessions && parts.ofVines) {
        const double freedom = parts.ofAccessions->freedom;
        parts.vinesInAccessions =
            (sums.vineSquaresOverAccession - sums.vineSquares / sums.values) / freedom;
        parts.accessionsInAccessions =
            (sums.values - sums.accessionSquares / sums.values) / freedom;
        const double rest =
            parts.ofAccessions->meanSquare - *parts.withinVine - parts.vinesInAccessions * vines;
        parts.betweenAccessions =
            notBelowZero(rest / parts.accessionsInAccessions, kAccessionsBelowZero, parts.remarks);
    } else if (parts.ofAccessions) {
        parts.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                  "Each accession has one vine: what varies "
                                                  "between vines cannot be told from what varies "
                                                  "between accessions."),
                                 {}});
    }
}

} // namespace

Result<VarianceParts> varianceParts(const std::vector<AccessionVines>& accessions) {
    std::optional<double> origin;
    for (const AccessionVines& vines : accessions) {
        for (const VineSamples& samples : vines) {
            if (!std::ranges::all_of(samples, [](double x) { return std::isfinite(x); })) {
                return Error{ErrorCode::InvalidInput, "A value is not a finite number.", ""};
            }
            if (!origin && !samples.empty()) {
                origin = samples.front();
            }
        }
    }
    if (!origin) {
        return Error{ErrorCode::InvalidInput, "There is no value.", ""};
    }
    const Sums sums = sumsOf(accessions, *origin);
    VarianceParts parts;
    parts.accessions = static_cast<std::size_t>(sums.accessions);
    parts.vines = static_cast<std::size_t>(sums.vines);
    parts.values = static_cast<std::size_t>(sums.values);
    parts.mean = sums.mean;
    parts.ofAccessions = lineOf(sums.accessions - 1, sums.ofAccessions);
    parts.ofVines = lineOf(sums.vines - sums.accessions, sums.ofVines);
    parts.ofSamples = lineOf(sums.values - sums.vines, sums.ofSamples);
    compare(parts.ofAccessions, parts.ofSamples);
    compare(parts.ofVines, parts.ofSamples);
    addComponents(sums, parts);
    return parts;
}

std::optional<Summary> summaryOf(std::span<const double> values) {
    if (values.empty()) {
        return std::nullopt;
    }
    const Spread spread = spreadOf(values);
    Summary summary{spread.count, spread.mean, spread.sd, {}, {}, 0, 0};
    const auto [least, greatest] = std::ranges::minmax(values);
    summary.least = least;
    summary.greatest = greatest;
    if (spread.sd) {
        const double error = *spread.sd / std::sqrt(static_cast<double>(spread.count));
        const double half = statistics::studentTQuantile(0.975, spread.count - 1.0) * error;
        summary.standardError = error;
        summary.interval = statistics::Interval{spread.mean - half, spread.mean + half};
    }
    return summary;
}

std::optional<Summary> summaryOfVines(const AccessionVines& vines) {
    std::vector<double> means;
    Summary of;
    for (const VineSamples& samples : vines) {
        if (const auto vine = summaryOf(samples)) {
            of.least = means.empty() ? vine->least : std::min(of.least, vine->least);
            of.greatest = means.empty() ? vine->greatest : std::max(of.greatest, vine->greatest);
            of.n += vine->n;
            means.push_back(vine->mean);
        }
    }
    std::optional<Summary> summary = summaryOf(means);
    if (summary) {
        summary->n = of.n;
        summary->least = of.least;
        summary->greatest = of.greatest;
    }
    return summary;
}

std::optional<TwoStagePlan>
twoStagePlan(double between, double within, double wantedError, const TwoStageCosts& costs) {
    const bool isMeant = between >= 0 && within >= 0 && between + within > 0 && wantedError > 0 &&
                         costs.ofVine > 0 && costs.ofSample > 0 &&
                         std::isfinite(between + within + wantedError);
    if (!isMeant) {
        return std::nullopt;
    }
    // Where vines do not differ, one vine is as good as many: all samples on it.
    const double wanted = wantedError * wantedError;
    const double best =
        between > 0 ? std::sqrt(within / between * costs.ofVine / costs.ofSample) : within / wanted;
    if (best > kMostVines) {
        return std::nullopt;
    }
    std::optional<TwoStagePlan> cheapest;
    for (const double each : {std::floor(best), std::ceil(best)}) {
        const double samples = std::max(1.0, each);
        const double vines =
            std::max(1.0, std::ceil((between + within / samples) / wanted * (1 - 1e-12)));
        const double cost = vines * (costs.ofVine + samples * costs.ofSample);
        if (vines <= kMostVines && (!cheapest || cost < cheapest->cost)) {
            cheapest = TwoStagePlan{static_cast<std::size_t>(vines),
                                    static_cast<std::size_t>(samples),
                                    std::sqrt((between + within / samples) / vines),
                                    cost};
        }
    }
    return cheapest;
}

} // namespace bullace::fruit
