#include "desk/stage_table.hpp"

#include "core/season/onset_summary.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>

#include <cmath>
#include <utility>

namespace bullace::desk {

using quick::fromText;
using season::AccessionSeason;
using season::OnsetInterval;
using season::YearOnset;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(StageTable)
};

QString halfText(const season::OnsetSummary& summary, int year) {
    if (const auto* normal = summary.of(season::OnsetLaw::Normal)) {
        const QString day = seasonDayText(normal->middle.value, year);
        return normal->middle.interval ? QStringLiteral("%1 (%2)").arg(
                                             day, seasonSpanText(*normal->middle.interval, year))
                                       : day;
    }
    return summary.half ? seasonSpanText({summary.half->after, summary.half->by}, year)
                        : Tr::tr("cannot be told");
}

QString halfHeat(const season::OnsetSummary& summary) {
    if (const auto* normal = summary.of(season::OnsetLaw::Normal)) {
        return estimateText(normal->middle, 0);
    }
    return summary.half ? intervalText({summary.half->after, summary.half->by}, 0) : QString();
}

QString rangeText(const std::vector<OnsetInterval>& onsets, int year) {
    statistics::Interval range{statistics::kUnbounded, -statistics::kUnbounded};
    for (const OnsetInterval& onset : onsets) {
        if (std::isfinite(onset.by)) {
            range.low = std::min(range.low, onset.by);
            range.high = std::max(range.high, onset.by);
        }
    }
    return range.low <= range.high ? seasonSpanText(range, year) : Tr::tr("none was seen there");
}

// A limit beyond any season bounds nothing.
constexpr double kMostDays = 366;
constexpr double kMostDegreeDays = 10'000;

statistics::Interval within(const statistics::Interval& limits, double most) {
    return {limits.low < -most ? -statistics::kUnbounded : limits.low,
            limits.high > most ? statistics::kUnbounded : limits.high};
}

QString differenceText(const std::vector<YearOnset>& onsets,
                       const std::vector<YearOnset>& others,
                       season::OnsetUnit unit,
                       const std::string& accession,
                       NamedRemarks& named) {
    const int decimals = unit == season::OnsetUnit::Days ? 1 : 0;
    const double most = unit == season::OnsetUnit::Days ? kMostDays : kMostDegreeDays;
    if (onsets.empty() || others.empty()) {
        return {};
    }
    const auto made = season::differenceTo(onsets, others);
    if (!made) {
        return {};
    }
    named.add(accession, made->remarks);
    if (made->difference) {
        const auto limits =
            within(made->difference->interval.value_or(statistics::Interval{}), most);
        const bool isTold = std::isfinite(limits.low) || std::isfinite(limits.high);
        return isTold ? estimateText({made->difference->value, {}, limits}, decimals)
                      : Tr::tr("cannot be told");
    }
    const auto limits = made->bounds ? within(*made->bounds, most) : statistics::Interval{};
    return std::isfinite(limits.low) || std::isfinite(limits.high) ? intervalText(limits, decimals)
                                                                   : Tr::tr("cannot be told");
}

void addRow(const QString& words,
            const AccessionSeason& one,
            const AskedSeason& asking,
            const std::string& reference,
            StageRows& into) {
    NamedRemarks& named = into.remarks;
    const auto summary = season::summariseOnset(one.onsets);
    if (!summary) {
        return;
    }
    named.add(one.accession, summary->remarks);
    std::vector<YearOnset> onsets;
    season::addOnsets(one, onsets);
    const AccessionSeason* other = reference == one.accession ? nullptr : asking.of(reference);
    std::vector<YearOnset> others;
    if (other != nullptr && !reference.empty()) {
        season::addOnsets(*other, others);
    }
    const auto* normal = summary->of(season::OnsetLaw::Normal);
    GridRow row;
    row.key = fromText(one.accession);
    row.isStrong = reference == one.accession;
    row.cells << words << QString::number(summary->counts.telling()) << halfText(*summary, one.year)
              << (normal != nullptr ? numberText(normal->spread, 1) : QString())
              << differenceText(onsets, others, season::OnsetUnit::Days, one.accession, named);
    if (asking.hasHeat()) {
        const auto heat = season::onHeat(onsets, asking.curves);
        named.add(one.accession, heat.remarks);
        const auto onDegrees = season::summariseOnset(daysOnly(heat.onsets));
        row.cells << (onDegrees ? halfHeat(*onDegrees) : QString())
                  << differenceText(heat.onsets,
                                    season::onHeat(others, asking.curves).onsets,
                                    season::OnsetUnit::DegreeDays,
                                    one.accession,
                                    named);
    }
    row.cells << rangeText(one.onsets, one.year);
    into.rows.push_back(std::move(row));
}

} // namespace

std::vector<OnsetInterval> daysOnly(const std::vector<YearOnset>& onsets) {
    std::vector<OnsetInterval> days;
    for (const YearOnset& onset : onsets) {
        days.push_back(onset.onset);
    }
    return days;
}

void addStageColumns(const StudyGround& ground,
                     const AskedSeason& asking,
                     const std::string& reference,
                     Study& study) {
    const auto index = ground.notes.accession(reference);
    const QString name = index ? fromText(ground.notes.accessions[*index].id) : QString();
    study.columns = {{Tr::tr("Accession"), 16, false, true},
                     {Tr::tr("Vines"), 5, true},
                     {Tr::tr("Half of them (95 %)"), 23},
                     {Tr::tr("SD, d"), 5, true},
                     {Tr::tr("To %1, d", "days").arg(name), 16, true}};
    if (asking.hasHeat()) {
        study.columns.push_back({Tr::tr("Half, °C d"), 16, true});
        study.columns.push_back({Tr::tr("To %1, °C d", "degree-days").arg(name), 15, true});
    }
    study.columns.push_back({Tr::tr("First to last"), 16});
}

void addStageRows(const StudyGround& ground,
                  const AskedSeason& asking,
                  const AccessionSeason& one,
                  const std::string& reference,
                  StageRows& into) {
    const auto index = ground.notes.accession(one.accession);
    const QString words = fromText(ground.notes.accessions[*index].words);
    into.remarks.add(one.accession, one.remarks);
    if (!one.onsets.empty()) {
        addRow(words, one, asking, reference, into);
    }
    for (const auto& [onsets, title] :
         {std::pair(&one.everbearingMost, Tr::tr("%1, everbearing, most")),
          std::pair(&one.everbearingLeast, Tr::tr("%1, everbearing, least"))}) {
        if (!onsets->empty()) {
            AccessionSeason apart{one.accession, one.year, *onsets, {}, {}, 0, 0, {}};
            addRow(title.arg(words), apart, asking, {}, into);
        }
    }
}

} // namespace bullace::desk
