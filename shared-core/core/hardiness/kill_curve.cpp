#include "core/hardiness/kill_curve.hpp"

#include "core/hardiness/kill_remarks.hpp"
#include "core/statistics/distributions.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::hardiness {

using statistics::Estimate;
using statistics::Interval;

namespace {

std::vector<DoseRow> dosesOf(std::span<const FreezeRow> rows) {
    std::vector<DoseRow> doses;
    doses.reserve(rows.size());
    for (const FreezeRow& row : rows) {
        doses.push_back({-row.temperatureC, row.counted, row.dead});
    }
    return doses;
}

// From degrees of frost to temperatures; + 0.0 lets no "-0" be shown.
double temperature(double frost) {
    return -frost + 0.0;
}
Interval temperatures(const Interval& frost) {
    return {temperature(frost.high), temperature(frost.low)};
}
std::optional<Interval> temperatures(const std::optional<Interval>& frost) {
    return frost ? std::optional(temperatures(*frost)) : std::nullopt;
}

void describeRows(KillCurve& curve, std::span<const FreezeRow> rows) {
    for (const FreezeRow& row : rows) {
        if (row.counted == 0) {
            ++curve.rowsEmpty;
            continue;
        }
        const bool isFirst = curve.rowsUsed == 0;
        curve.warmestC = isFirst ? row.temperatureC : std::max(curve.warmestC, row.temperatureC);
        curve.coldestC = isFirst ? row.temperatureC : std::min(curve.coldestC, row.temperatureC);
        ++curve.rowsUsed;
        curve.counted += row.counted;
        curve.dead += row.dead;
    }
}

bool isBeyond(const KillCurve& curve, double temperatureC) {
    return temperatureC > curve.warmestC || temperatureC < curve.coldestC;
}

// The estimate with the limits that it is to carry.
void chooseLimits(KillPoint& point, const std::optional<Interval>& plain, bool isPoor) {
    point.temperatureC.interval = plain;
    if (!isPoor || !point.scaled) {
        return;
    }
    point.temperatureC.standardError = point.scaled->standardError;
    point.limitsBy = point.scaled->fieller ? LimitsBy::ScaledFieller : LimitsBy::ScaledDelta;
    point.temperatureC.interval =
        point.scaled->fieller ? *point.scaled->fieller : point.scaled->delta;
}

KillPoint killPoint(const DosePoint& of, const KillCurve& curve) {
    KillPoint point;
    point.part = of.part;
    point.temperatureC = {temperature(of.x), of.error, {}};
    point.isBeyondTested = isBeyond(curve, point.temperatureC.value);
    point.delta = temperatures(of.delta);
    point.fieller = temperatures(of.fieller);
    point.profile = temperatures(of.profile);
    if (of.scaled) {
        point.scaled = KillPoint::Scaled{
            of.scaled->error, temperatures(of.scaled->delta), temperatures(of.scaled->fieller)};
    }
    chooseLimits(point, point.profile, curve.fit->goodness.isPoor());
    return point;
}

void addPlainCurve(KillCurve& curve,
                   std::span<const DoseRow> doses,
                   const KillCurveOptions& options) {
    auto fit = fitDoses(doses, options.link);
    if (!fit || !(fit->slope > 0)) {
        return;
    }
    curve.fit = std::move(*fit);
    for (const double part : options.parts) {
        curve.points.push_back(killPoint(pointOf(doses, *curve.fit, part), curve));
    }
}

void addNaturalCurve(KillCurve& curve,
                     std::span<const DoseRow> doses,
                     const KillCurveOptions& options) {
    const auto found = fitNaturalMortality(doses, *options.control, options.link, options.parts);
    if (!found) {
        return;
    }
    curve.natural = found->fit;
    for (const NaturalMortalityPoint& of : found->points) {
        KillPoint point;
        point.part = of.part;
        point.delta = temperatures(of.delta);
        point.profile = temperatures(of.profile);
        point.temperatureC = {temperature(of.x), of.error, point.profile};
        point.isBeyondTested = isBeyond(curve, point.temperatureC.value);
        curve.points.push_back(std::move(point));
    }
}

void addMeanKill(KillCurve& curve, std::span<const KillShare> shares) {
    const auto trim = leastTrim(shares);
    const auto mean = trim ? spearmanKarber(shares, *trim) : std::nullopt;
    if (!mean) {
        return;
    }
    curve.meanKill = MeanKill{{temperature(mean->mean), {}, {}}, mean->trim};
    if (mean->variance > 0) {
        curve.meanKill->temperatureC = statistics::estimateAround(
            temperature(mean->mean), std::sqrt(mean->variance), statistics::kNormal95);
    }
}

void addBracket(KillCurve& curve, std::span<const KillShare> shares) {
    for (std::size_t i = 1; i < shares.size(); ++i) {
        if (shares[i - 1].killed < 0.5 && shares[i].killed >= 0.5) {
            curve.bracket = KillBracket{temperature(shares[i - 1].x), temperature(shares[i].x)};
        }
    }
}

Status checkOptions(const KillCurveOptions& options) {
    for (const double part : options.parts) {
        if (!(part > 0 && part < 1)) {
            return Error{ErrorCode::InvalidInput,
                         "A share of the buds to be killed must lie between 0 and 100 %.",
                         {}};
        }
    }
    if (!options.control) {
        return {};
    }
    const DoseRow control{0, options.control->counted, options.control->dead};
    if (!checkDoses({&control, 1}) || control.counted == 0) {
        return Error{
            ErrorCode::InvalidInput,
            "The control that was not frozen needs a count, and no more dead than counted.",
            {}};
    }
    return {};
}

} // namespace

Result<KillCurve> killCurve(std::span<const FreezeRow> rows, const KillCurveOptions& options) {
    const std::vector<DoseRow> doses = dosesOf(rows);
    if (const Status checked = checkDoses(doses); !checked) {
        return checked.error();
    }
    if (const Status checked = checkOptions(options); !checked) {
        return checked.error();
    }
    KillCurve curve;
    describeRows(curve, rows);
    const std::vector<DoseRow> pooled = pooledDoses(doses);
    curve.overlap = overlapOf(pooled);
    if (options.control) {
        addNaturalCurve(curve, doses, options);
    } else {
        addPlainCurve(curve, doses, options);
    }
    const auto corrected = options.control ? killSharesAgainst(pooled, *options.control)
                                           : Result<std::vector<KillShare>>(killShares(pooled));
    if (corrected) {
        addMeanKill(curve, *corrected);
        addBracket(curve, *corrected);
    }
    curve.remarks = remarksOn(curve, options.control.has_value());
    if (!corrected) {
        curve.remarks.push_back(remarkOnControl());
    }
    return curve;
}

Result<KillComparison> compareKill(std::span<const FreezeGroup> groups, Link link) {
    std::vector<DoseGroup> doses;
    for (const FreezeGroup& group : groups) {
        doses.push_back({group.accession, dosesOf(group.rows)});
        if (const Status checked = checkDoses(doses.back().rows); !checked) {
            return Error{
                checked.error().code, group.accession + ": " + checked.error().message, {}};
        }
    }
    auto compared = compareBySlope(doses, link);
    if (!compared) {
        return compared.error();
    }
    KillComparison comparison;
    comparison.remarks = remarksOn(*compared);
    if (!compared->fit) {
        return comparison;
    }
    for (const CommonSlope::Group& of : compared->fit->groups) {
        const auto source = std::ranges::find(doses, of.name, &DoseGroup::name);
        const std::vector<DoseRow> tested = pooledDoses(source->rows);
        const bool isBeyondTested = of.x50 < tested.front().x || of.x50 > tested.back().x;
        comparison.accessions.push_back(
            {of.name,
             {temperature(of.x50), of.error, temperatures(of.fieller).value_or(Interval{})},
             isBeyondTested});
    }
    for (const CommonSlope::Difference& of : compared->fit->differences) {
        comparison.differences.push_back(
            {of.one,
             of.other,
             {temperature(of.x50), of.error, temperatures(of.interval)},
             -of.z,
             of.p,
             of.pHolm});
    }
    comparison.fit = std::move(compared->fit);
    return comparison;
}

std::string_view nameOf(Link link) {
    switch (link) {
    case Link::Logit:
        return "logit";
    case Link::Probit:
        return "probit";
    case Link::ComplementaryLogLog:
        return "complementary log-log";
    }
    return "";
}

} // namespace bullace::hardiness
