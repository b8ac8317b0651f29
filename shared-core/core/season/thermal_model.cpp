#include "core/season/thermal_model.hpp"

#include "core/season/onset_interval.hpp"
#include "core/statistics/distributions.hpp"

#include <algorithm>
#include <cmath>
#include <set>

namespace bullace::season {

namespace {

using weather::DailyDays;
using weather::DegreeDayMethod;

constexpr std::size_t kFewestYears = 3;
constexpr int kSeasonDays = 366;
constexpr int kSecondYear = 400; // no later day of season is looked for

// One year's degree-days on each day of season from 1; empty behind the first gap from its start.
struct DailyHeat {
    int firstDay = 1;
    std::vector<double> sums; // at the end of firstDay, firstDay + 1, …

    // The sum at a day between whole days: a day's heat is spread evenly over it, and day d ends at
    // d + 0.5, since dates are of whole days.
    [[nodiscard]] std::optional<double> at(double day) const {
        const double place = day - (firstDay - 0.5);
        if (place <= 0) {
            return 0;
        }
        const auto whole = static_cast<std::size_t>(place);
        if (whole >= sums.size()) {
            return std::nullopt;
        }
        const double before = whole == 0 ? 0 : sums[whole - 1];
        return before + (place - std::floor(place)) * (sums[whole] - before);
    }

    [[nodiscard]] std::optional<double> dayOf(double sum) const {
        const auto found = std::ranges::lower_bound(sums, sum);
        if (found == sums.end()) {
            return std::nullopt;
        }
        const auto i = static_cast<std::size_t>(found - sums.begin());
        const double before = i == 0 ? 0 : sums[i - 1];
        const double part = sums[i] > before ? (sum - before) / (sums[i] - before) : 1;
        return firstDay - 0.5 + static_cast<double>(i) + part;
    }
};

DailyHeat heatOf(const DailyDays& record, int year, std::chrono::month_day start, double baseC) {
    const CivilDate first = std::chrono::year(year) / start.month() / start.day();
    DailyHeat heat{static_cast<int>(dayOfSeason(first, year)), {}};
    const auto curve = weather::heatCurve(
        record, {start, kSeasonDays}, {DegreeDayMethod::SingleSine, {baseC, {}}}, year);
    if (curve) {
        heat.sums.reserve(curve->days.size());
        for (const weather::HeatDay& day : curve->days) {
            heat.sums.push_back(day.sum);
        }
    }
    return heat;
}

// One base and start with what each year had needed.
struct Choice {
    double baseC = 0;
    std::chrono::month_day start;
    std::vector<DailyHeat> heat; // by year
    std::vector<double> needed;  // by year
};

double meanWithout(const std::vector<double>& values, const std::set<std::size_t>& without) {
    double sum = 0;
    for (std::size_t i = 0; i < values.size(); ++i) {
        sum += without.contains(i) ? 0 : values[i];
    }
    return sum / static_cast<double>(values.size() - without.size());
}

class Choosing {
public:
    Choosing(std::vector<StageYear> years, std::vector<Choice> choices)
        : years_(std::move(years)),
          choices_(std::move(choices)) {}

    [[nodiscard]] std::optional<double>
    predicted(const Choice& choice, std::size_t year, std::set<std::size_t> without) const {
        without.insert(year);
        return choice.heat[year].dayOf(meanWithout(choice.needed, without));
    }

    // The choice of the least error, and that error; years in `without` play no part.
    [[nodiscard]] std::pair<const Choice*, double>
    best(const std::set<std::size_t>& without) const {
        std::pair<const Choice*, double> found{nullptr, 0};
        for (const Choice& choice : choices_) {
            double squares = 0;
            std::size_t count = 0;
            bool isUsable = true;
            for (std::size_t i = 0; i < years_.size(); ++i) {
                if (without.contains(i)) {
                    continue;
                }
                const auto day = predicted(choice, i, without);
                isUsable = isUsable && day.has_value();
                const double off = day.value_or(0) - years_[i].day;
                squares += off * off;
                ++count;
            }
            const double error = std::sqrt(squares / static_cast<double>(count));
            if (isUsable && (found.first == nullptr || error < found.second)) {
                found = {&choice, error};
            }
        }
        return found;
    }

    [[nodiscard]] std::optional<ThermalModel> model() const {
        const auto [choice, error] = best({});
        if (choice == nullptr) {
            return std::nullopt;
        }
        ThermalModel made;
        made.baseC = choice->baseC;
        made.start = choice->start;
        made.needed = meanWithout(choice->needed, {});
        made.chosenError = error;
        std::vector<double> days;
        for (const StageYear& year : years_) {
            days.push_back(year.day);
        }
        double squares = 0;
        double calendar = 0;
        for (std::size_t i = 0; i < years_.size(); ++i) {
            const Choice* without = best({i}).first;
            const auto day = predicted(without == nullptr ? *choice : *without, i, {});
            made.past.push_back({years_[i].year, days[i], day.value_or(days[i] + kSeasonDays)});
            squares += std::pow(made.past.back().predicted - days[i], 2);
            calendar += std::pow(meanWithout(days, {i}) - days[i], 2);
        }
        const auto count = static_cast<double>(years_.size());
        made.pastError = std::sqrt(squares / count);
        made.calendarError = std::sqrt(calendar / count);
        return made;
    }

private:
    std::vector<StageYear> years_;
    std::vector<Choice> choices_;
};

std::vector<StageYear> usable(const DailyDays& record,
                              std::span<const StageYear> past,
                              const ThermalGrid& grid,
                              ThermalFit& fit) {
    std::vector<StageYear> years(past.begin(), past.end());
    std::ranges::sort(years, {}, &StageYear::year);
    std::vector<StageYear> used;
    for (std::size_t i = 0; i < years.size(); ++i) {
        const bool isTwice = (i > 0 && years[i - 1].year == years[i].year) ||
                             (i + 1 < years.size() && years[i + 1].year == years[i].year);
        const bool isKnown = std::ranges::all_of(grid.starts, [&](const auto& start) {
            return heatOf(record, years[i].year, start, 0).at(years[i].day).has_value();
        });
        if (isTwice || !isKnown) {
            fit.leftOut.push_back(years[i].year);
            fit.remarks.push_back(
                {BULLACE_SENTENCE("Remark",
                                  "%1 is left out of the model: its weather has a gap before the "
                                  "stage, or the year stands twice."),
                 {std::int64_t{years[i].year}}});
        } else {
            used.push_back(years[i]);
            fit.usedYears.push_back(years[i].year);
        }
    }
    return used;
}

Choice choiceOf(const DailyDays& record,
                const std::vector<StageYear>& years,
                std::chrono::month_day start,
                double baseC) {
    Choice choice{baseC, start, {}, {}};
    for (const StageYear& year : years) {
        choice.heat.push_back(heatOf(record, year.year, start, baseC));
        choice.needed.push_back(choice.heat.back().at(year.day).value_or(0));
    }
    return choice;
}

bool isGrid(const ThermalGrid& grid) {
    return !grid.basesC.empty() && !grid.starts.empty() &&
           std::ranges::all_of(grid.basesC, [](double base) { return std::isfinite(base); }) &&
           std::ranges::all_of(grid.starts, [](const std::chrono::month_day& start) {
               return start.ok() && start != std::chrono::February / 29;
           });
}

void remarkOn(ThermalFit& fit) {
    if (fit.usedYears.size() < kFewestYears) {
        fit.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "There are too few years for a forecast (years: %1, needed: %2)."),
             {static_cast<std::int64_t>(fit.usedYears.size()), std::int64_t{kFewestYears}}});
    } else if (!fit.model) {
        fit.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "No base temperature and start reach the stage in all years: there "
                              "is no forecast."),
             {}});
    } else if (fit.model->pastError >= fit.model->calendarError) {
        fit.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                "Degree-days have forecast this stage no better "
                                                "than its mean date of other years."),
                               {}});
    }
}

} // namespace

Result<ThermalFit>
fitThermalModel(const DailyDays& record, std::span<const StageYear> past, const ThermalGrid& grid) {
    if (!isGrid(grid)) {
        return Error{ErrorCode::InvalidInput,
                     "There is no base temperature or no start to try, or one of them is none.",
                     {}};
    }
    for (const StageYear& year : past) {
        if (!std::isfinite(year.day) || year.day < 1 || year.day > kSecondYear) {
            return Error{ErrorCode::InvalidInput,
                         "The stage's day in " + std::to_string(year.year) +
                             " is no day of a season.",
                         {}};
        }
    }
    ThermalFit fit;
    std::vector<StageYear> years = usable(record, past, grid, fit);
    if (years.size() >= kFewestYears) {
        std::vector<Choice> choices;
        for (const std::chrono::month_day start : grid.starts) {
            // A start behind a year's stage could not have told it.
            const bool isBefore = std::ranges::all_of(years, [&](const StageYear& year) {
                const CivilDate first = std::chrono::year(year.year) / start.month() / start.day();
                return dayOfSeason(first, year.year) < year.day;
            });
            for (const double base : isBefore ? grid.basesC : std::vector<double>{}) {
                choices.push_back(choiceOf(record, years, start, base));
            }
        }
        fit.model = Choosing(std::move(years), std::move(choices)).model();
    }
    remarkOn(fit);
    return fit;
}

namespace {

// This season's days until today, then those of another year by the same day of season.
std::optional<double> dayWith(const DailyHeat& soFar, const DailyHeat& other, double needed) {
    if (const auto day = soFar.dayOf(needed)) {
        return day;
    }
    const std::size_t known = soFar.sums.size();
    const double have = known == 0 ? 0 : soFar.sums.back();
    const double otherHad = known == 0 ? 0 : other.sums[known - 1];
    return other.dayOf(needed - have + otherHad);
}

void combine(const ThermalModel& model, Forecast& made) {
    double sum = 0;
    for (const auto& [year, day] : made.byWeather) {
        sum += day;
    }
    const auto count = static_cast<double>(made.byWeather.size());
    const double mean = sum / count;
    double squares = 0;
    for (const auto& [year, day] : made.byWeather) {
        squares += (day - mean) * (day - mean);
    }
    const double weather = made.byWeather.size() > 1 ? squares / (count - 1) * (1 + 1 / count) : 0;
    const double error = std::sqrt(weather + model.pastError * model.pastError);
    const auto freedom = static_cast<double>(model.past.size() - 1);
    made.day =
        statistics::estimateAround(mean, error, statistics::studentTQuantile(0.975, freedom));
}

} // namespace

Forecast forecastStage(const DailyDays& record, const ThermalFit& fit, int year, CivilDate today) {
    Forecast made;
    if (!fit.model) {
        made.remarks = fit.remarks;
        return made;
    }
    const ThermalModel& model = *fit.model;
    const DailyDays known(record.begin(), record.upper_bound(today));
    const DailyHeat soFar = heatOf(known, year, model.start, model.baseC);
    const CivilDate first = std::chrono::year(year) / model.start.month() / model.start.day();
    const auto days = static_cast<int>(soFar.sums.size());
    if (days > 0) {
        made.knownUntil = addDays(first, days - 1);
        made.soFar = soFar.sums.back();
    }
    if (first <= today && days < daysBetween(first, today) - 2) {
        made.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                 "The weather of this season is not known without "
                                                 "a gap: other years stand for it from %1 on."),
                                {addDays(first, days)}});
    }
    made.isPast = soFar.dayOf(model.needed).has_value();
    for (const int other : weather::yearsOf(record)) {
        const DailyHeat heat = heatOf(record, other, model.start, model.baseC);
        const bool isCovering =
            other != year && heat.sums.size() >= soFar.sums.size() && !heat.sums.empty();
        const auto day = isCovering ? dayWith(soFar, heat, model.needed) : std::optional<double>();
        if (day) {
            made.byWeather.emplace_back(other, *day);
        }
    }
    if (made.byWeather.empty()) {
        made.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "No other year's weather is complete enough to stand for what is to "
                              "come: there is no forecast."),
             {}});
        return made;
    }
    if (made.byWeather.size() == 1 && !made.isPast) {
        made.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "Only one other year's weather is complete: how weather differs "
                              "between years is not in the interval."),
             {}});
    }
    combine(model, made);
    return made;
}

} // namespace bullace::season
