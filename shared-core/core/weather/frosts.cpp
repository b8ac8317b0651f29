#include "core/weather/frosts.hpp"

#include <algorithm>

namespace bullace::weather {

namespace {

constexpr int kHalfYear = 182;

std::optional<double> leastOf(const DailyDays& record, CivilDate day) {
    const auto found = record.find(day);
    return found == record.end() ? std::nullopt : found->second.least;
}

// From midsummer on in one direction until the first frost.
struct Search {
    std::optional<CivilDate> frost;
    std::vector<HeatGap> unknown; // ascending in the direction of the search
};

Search searchFrom(const DailyDays& record, CivilDate midsummer, int direction, double thresholdC) {
    Search search;
    for (int i = direction > 0 ? 1 : 0; i <= kHalfYear; ++i) {
        const CivilDate day = addDays(midsummer, direction * i);
        const auto least = leastOf(record, day);
        if (least && *least <= thresholdC) {
            search.frost = day;
            break;
        }
        if (least) {
            continue;
        }
        const bool goesOn =
            !search.unknown.empty() && std::abs(daysBetween(search.unknown.back().last, day)) == 1;
        if (goesOn) {
            search.unknown.back().last = day;
        } else {
            search.unknown.push_back({day, day});
        }
    }
    return search;
}

void remarkOn(const Search& search, Remarks& remarks) {
    for (const HeatGap& gap : search.unknown) {
        remarks.push_back({BULLACE_SENTENCE("Remark",
                                            "There may have been a frost from %1 to %2, of which "
                                            "no least temperature is known."),
                           {std::min(gap.first, gap.last), std::max(gap.first, gap.last)}});
    }
}

} // namespace

FrostYear frostsOf(const DailyDays& record, int year, Hemisphere where, double thresholdC) {
    using namespace std::chrono;
    const CivilDate midsummer = where == Hemisphere::North
                                    ? CivilDate(std::chrono::year(year) / July / 15)
                                    : CivilDate(std::chrono::year(year) / January / 15);
    FrostYear made;
    made.year = year;
    made.thresholdC = thresholdC;
    const Search spring = searchFrom(record, midsummer, -1, thresholdC);
    const Search autumn = searchFrom(record, midsummer, 1, thresholdC);
    made.lastOfSpring = spring.frost;
    made.firstOfAutumn = autumn.frost;
    made.isSpringCertain = spring.unknown.empty();
    made.isAutumnCertain = autumn.unknown.empty();
    if (made.lastOfSpring && made.firstOfAutumn) {
        made.daysBetweenThem = daysBetween(*made.lastOfSpring, *made.firstOfAutumn) - 1;
    }
    const auto end = record.upper_bound(addDays(midsummer, kHalfYear));
    for (auto day = record.lower_bound(addDays(midsummer, -kHalfYear)); day != end; ++day) {
        if (day->second.least) {
            made.lowest = std::min(made.lowest.value_or(*day->second.least), *day->second.least);
        }
    }
    remarkOn(spring, made.remarks);
    remarkOn(autumn, made.remarks);
    return made;
}

std::vector<Freeze> freezesOf(const DailyDays& record, const Period& period, double thresholdC) {
    std::vector<Freeze> freezes;
    const auto end = record.upper_bound(period.last);
    for (auto at = record.lower_bound(period.first); at != end; ++at) {
        const auto& [day, weather] = *at;
        if (!weather.least || *weather.least > thresholdC) {
            continue;
        }
        const bool goesOn = !freezes.empty() && daysBetween(freezes.back().last, day) == 1;
        if (!goesOn) {
            freezes.push_back({day, day, *weather.least, day, false});
        }
        Freeze& freeze = freezes.back();
        freeze.last = day;
        if (*weather.least < freeze.lowest) {
            freeze.lowest = *weather.least;
            freeze.lowestOn = day;
        }
    }
    for (Freeze& freeze : freezes) {
        freeze.isBesideGap = !leastOf(record, addDays(freeze.first, -1)) ||
                             !leastOf(record, addDays(freeze.last, 1));
    }
    return freezes;
}

} // namespace bullace::weather
