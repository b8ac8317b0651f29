// What a winter's hours of cold, and a spring's hours of warmth, add up to. Temperatures in °C, one
// for each hour, without gaps: who has gaps names them first.
#pragma once

#include <span>

namespace bullace::weather {

// Hours at or below 7.2 °C (45 °F): the older definition.
[[nodiscard]] int chillHoursBelow(std::span<const double> hourly);
// Hours from 0 to 7.2 °C, both included. Source  Weinberger 1950, Proc. Am. Soc. Hort. Sci. 56:122.
[[nodiscard]] int chillHoursBetween(std::span<const double> hourly);

// Units of one hour, -1 to 1. Source  Richardson, Seeley & Walker 1974, HortScience 9:331-332; the
// limits in °C, which are no exact conversions of those in °F.
[[nodiscard]] double utahUnit(double celsius);
[[nodiscard]] double utahUnits(std::span<const double> hourly);

// Portions of the Dynamic Model at the end of the hours.
// Source  Fishman, Erez & Couvillon 1987, J. Theor. Biol. 124:473-483 and 126:309-321; constants of
// Erez et al. 1990, Acta Hortic. 276:165-174 (kelvin is °C + 273 there).
[[nodiscard]] double chillPortions(std::span<const double> hourly);

// Growing degree hours of one hour: 0 at 4 °C, 21 at 25 °C, 0 at 36 °C.
// Source  Anderson, Richardson & Kesner 1986, Acta Hortic. 184:71-78.
[[nodiscard]] double growingDegreeHour(double celsius);

// Hours from sunrise to sunset, the sun's upper edge at the horizon; `dayOfYear` from 1, latitude
// in degrees, north is positive. 0 and 24 where the sun does not rise or set.
// Source  Spencer 1971, Search 2:172; Almorox, Hontoria & Benito 2005, Energy Convers. Manag. 46.
[[nodiscard]] double dayLengthHours(double latitude, int dayOfYear);

} // namespace bullace::weather
