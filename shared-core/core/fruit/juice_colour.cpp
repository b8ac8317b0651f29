#include "core/fruit/juice_colour.hpp"

#include "core/fruit/sample_size.hpp"
#include "core/statistics/distributions.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace bullace::fruit {

using statistics::Estimate;

namespace {

constexpr double kMostPigment = 1e6; // mg per 100 g; more than the berry weighs

// The limits of t know nothing of where a measure ends.
std::optional<Estimate> within(std::optional<Estimate> mean, double low, double high) {
    if (mean && mean->interval) {
        mean->interval = statistics::Interval{std::max(low, mean->interval->low),
                                              std::min(high, mean->interval->high)};
    }
    return mean;
}

std::optional<Estimate> meanOf(const std::vector<double>& values) {
    if (values.empty()) {
        return std::nullopt;
    }
    const Spread spread = spreadOf(values);
    if (!spread.sd) {
        return Estimate{spread.mean, {}, {}};
    }
    const double error = *spread.sd / std::sqrt(static_cast<double>(spread.count));
    return statistics::estimateAround(
        spread.mean, error, statistics::studentTQuantile(0.975, spread.count - 1.0));
}

Status checkSamples(std::span<const PigmentSample> samples) {
    for (std::size_t sample = 0; sample < samples.size(); ++sample) {
        for (std::size_t i = 0; i < kPigments; ++i) {
            const auto& value = samples[sample][i];
            if (value && !(*value >= 0 && *value <= kMostPigment)) {
                return Error{ErrorCode::InvalidInput,
                             "Sample " + std::to_string(sample + 1) + " has a value of " +
                                 std::string(nameOf(static_cast<Pigment>(i))) +
                                 " that cannot be one.",
                             {}};
            }
        }
    }
    return {};
}

// Of a sample with all five measured and some of them above 0.
std::optional<double> totalOf(const PigmentSample& sample) {
    double total = 0;
    for (const auto& value : sample) {
        if (!value) {
            return std::nullopt;
        }
        total += *value;
    }
    return total > 0 ? std::optional(total) : std::nullopt;
}

void addMeans(PigmentProfile& profile, std::span<const PigmentSample> samples) {
    for (std::size_t i = 0; i < kPigments; ++i) {
        std::vector<double> values;
        for (const PigmentSample& sample : samples) {
            if (sample[i]) {
                values.push_back(*sample[i]);
            }
        }
        profile.measured[i] = values.size();
        profile.mgPer100g[i] = within(meanOf(values), 0, statistics::kUnbounded);
    }
}

void addShares(PigmentProfile& profile, std::span<const PigmentSample> samples) {
    std::vector<double> totals;
    std::array<std::vector<double>, kPigments> shares;
    for (const PigmentSample& sample : samples) {
        const auto total = totalOf(sample);
        for (std::size_t i = 0; total && i < kPigments; ++i) {
            shares[i].push_back(100 * *sample[i] / *total);
        }
        if (total) {
            totals.push_back(*total);
        }
    }
    profile.complete = totals.size();
    profile.totalMgPer100g = within(meanOf(totals), 0, statistics::kUnbounded);
    for (std::size_t i = 0; i < kPigments; ++i) {
        profile.sharePercent[i] = within(meanOf(shares[i]), 0, 100);
    }
}

void addRatio(PigmentProfile& profile, std::span<const PigmentSample> samples) {
    std::vector<double> logs;
    for (const PigmentSample& sample : samples) {
        const auto& delphinidin = sample[static_cast<std::size_t>(Pigment::Delphinidin)];
        const auto& malvidin = sample[static_cast<std::size_t>(Pigment::Malvidin)];
        if (delphinidin && malvidin && *delphinidin > 0 && *malvidin > 0) {
            logs.push_back(std::log(*malvidin / *delphinidin));
        }
    }
    profile.ratios = logs.size();
    const auto mean = meanOf(logs);
    if (!mean) {
        profile.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "No sample has both malvidin and delphinidin above 0: their ratio "
                              "cannot be told."),
             {}});
        return;
    }
    Estimate ratio{std::exp(mean->value), {}, {}};
    if (mean->interval) {
        ratio.standardError = ratio.value * *mean->standardError;
        const double high = std::exp(mean->interval->high);
        ratio.interval = statistics::Interval{std::exp(mean->interval->low), high};
    }
    profile.malvidinToDelphinidin = ratio;
}

void addGuide(PigmentProfile& profile) {
    const auto& malvidin = profile.mgPer100g[static_cast<std::size_t>(Pigment::Malvidin)];
    if (!malvidin) {
        return;
    }
    profile.guide = AgainstGuide::Undecided;
    if (malvidin->interval && malvidin->interval->low >= kMalvidinGuide) {
        profile.guide = AgainstGuide::Reaches;
    } else if (malvidin->interval && malvidin->interval->high < kMalvidinGuide) {
        profile.guide = AgainstGuide::Below;
    }
    profile.remarks.push_back(
        {BULLACE_SENTENCE("Remark",
                          "Guide value: red wine's colour was good from %1 mg of malvidin "
                          "3,5-diglucoside in 100 g of fresh grapes on (Ballinger and others, "
                          "1970s)."),
         {Remark::Number{kMalvidinGuide, 0}}});
}

} // namespace

std::string_view nameOf(Pigment pigment) {
    constexpr std::array<std::string_view, kPigments> kNames{
        "delphinidin", "cyanidin", "petunidin", "peonidin", "malvidin"};
    return kNames[static_cast<std::size_t>(pigment)];
}

Result<PigmentProfile> pigmentProfile(std::span<const PigmentSample> samples) {
    if (const Status checked = checkSamples(samples); !checked) {
        return checked.error();
    }
    PigmentProfile profile;
    profile.samples = samples.size();
    addMeans(profile, samples);
    addShares(profile, samples);
    addRatio(profile, samples);
    addGuide(profile);
    if (profile.complete < profile.samples) {
        profile.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "Samples without all five pigments, or with none at all, left out of "
                              "the shares: %1."),
             {static_cast<std::int64_t>(profile.samples - profile.complete)}});
    }
    if (profile.samples == 1) {
        profile.remarks.push_back(
            {BULLACE_SENTENCE("Remark", "One sample alone: how far samples differ is not known."),
             {}});
    }
    return profile;
}

} // namespace bullace::fruit
