// The weather of a site by seasons, as pictures and tables: this season's heat against that of
// other years, freezes, and what each winter and summer added up to.
#pragma once

#include "desk/study.hpp"

#include "core/weather/heat_band.hpp"

#include <QString>

namespace bullace::desk {

// What was asked of a site's record.
struct AskedWeather {
    const weather::DailyDays* record = nullptr;
    int season = 0;
    weather::HeatRule rule;
    QString ruleWords;    // "single sine above 10 °C"
    double latitude = 34; // degrees, north positive
    CivilDate today;
    Unit degrees; // as temperatures are shown

    [[nodiscard]] weather::Hemisphere where() const {
        return latitude < 0 ? weather::Hemisphere::South : weather::Hemisphere::North;
    }
    // From 1 January, in the south from 1 July.
    [[nodiscard]] weather::SeasonSpan span() const;
    // The season's days as far as they can be known: until today, or the record's last day.
    [[nodiscard]] weather::Period known() const;
};

// The sum of degree-days over the season, with the band of up to ten other complete years; the
// curve ends at the first day that is lacking. Fills in the study's words, picture and remarks.
void addHeat(const AskedWeather& asked, Study& study);

// One line for each season of the record, the newest first: heat, frosts, and the winter before.
void addSeasonTable(const AskedWeather& asked, Study& study);

// The freezes from the winter before the season to its end: picture and table.
void addFreezes(const AskedWeather& asked, Study& study);

} // namespace bullace::desk
