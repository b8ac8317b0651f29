// A small station with six invented years: daily weather, and the stages of four accessions on
// visits four days apart. What its views have to say can be told from how it was made.
#pragma once

#include "core/base/civil_date.hpp"
#include "core/base/units.hpp"
#include "support/desk_stations.hpp"

#include <array>
#include <cmath>
#include <string>

namespace bullace::test {

inline constexpr int kFirstYear = 2020;
inline constexpr int kLastYear = 2025;

class SeasonStation {
public:
    // Everything that it knows, as lines to import.
    std::string lines() {
        addCollection();
        for (int year = kFirstYear; year <= kLastYear; ++year) {
            addWeather(year);
            addStages(year);
        }
        addConflict();
        return std::move(lines_);
    }

    // The mean of a day, °C: a warm year has its spring earlier.
    static double meanOf(CivilDate day) {
        const int year = static_cast<int>(day.year());
        const CivilDate newYear = day.year() / std::chrono::January / 1;
        const double ofYear = daysBetween(newYear, day);
        const double swing = std::sin((ofYear - 105) * 2 * 3.14159265358979 / 365);
        const double restless = 4 * std::sin(ofYear * 1.7 + year);
        return 16 + 11 * swing + restless + (year % 3) * 0.8;
    }
    // Full bloom of an accession (0 to 3) that year: two days apart from one to the next.
    static double bloomOf(std::size_t accession, int year) {
        return 140 + 2 * static_cast<double>(accession) - 3.0 * (year % 3);
    }

private:
    void add(const std::string& origin,
             const std::string& kind,
             const std::string& subject,
             const std::string& json) {
        int& seq = origin == kOffice ? officeSeq_ : origin == kFirst ? firstSeq_ : secondSeq_;
        lines_ += lineOf({origin, ++seq, "im", kind, subject, json});
    }
    void catalog(const std::string& subject, const std::string& json) {
        add(kOffice, "catalog", subject, json);
    }

    static std::string idOf(std::size_t accession) { return "A00" + std::to_string(accession + 1); }
    static std::string positionOf(std::size_t accession, int vine) {
        return "B1-0" + std::to_string(accession + 1) + "-0" + std::to_string(vine);
    }

    void addCollection() {
        catalog("block/B1/rows", "[[1,6],[2,6],[3,6],[4,6]]");
        constexpr std::array<int, 4> kSexes{4, 3, 1, 4};
        for (std::size_t a = 0; a < kSexes.size(); ++a) {
            catalog("accession/" + idOf(a) + "/flower-sex", std::to_string(kSexes[a]));
            for (int vine = 1; vine <= kVines; ++vine) {
                catalog("planting/" + positionOf(a, vine) + "/2018-03-01",
                        R"({"accession":")" + idOf(a) + R"(","until":null})");
            }
        }
    }

    void addWeather(int year) {
        const CivilDate end = std::chrono::year(year) / 12 / 31;
        for (CivilDate day = std::chrono::year(year) / 1 / 1; day <= end; day = addDays(day, 1)) {
            // Nobody read the thermometer for three days of 2022, nor after 10 May 2025.
            const bool isLacking = (day >= std::chrono::year(2022) / 8 / 1 &&
                                    day <= std::chrono::year(2022) / 8 / 3) ||
                                   day > std::chrono::year(kLastYear) / 5 / 10;
            if (isLacking) {
                continue;
            }
            const std::string under = "weather/north field/" + writeDate(day) + "/";
            catalog(under + "TMAX", fixedText(meanOf(day) + 6, 1));
            catalog(under + "TMIN", fixedText(meanOf(day) - 6, 1));
        }
    }

    // By days from full bloom.
    static int stageAt(double days) {
        return days < -12  ? 53
               : days < -6 ? 57
               : days < -3 ? 61
               : days < 0  ? 63
               : days < 4  ? 65
               : days < 8  ? 68
                           : 71;
    }

    void addStages(int year) {
        for (int day = 116; day <= 172; day += 4) {
            const CivilDate date = addDays(std::chrono::year(year) / 1 / 1, day - 1);
            // The present season has only begun.
            if (date > std::chrono::year(kLastYear) / 5 / 8) {
                break;
            }
            for (std::size_t a = 0; a < 4; ++a) {
                for (int vine = 1; vine <= kVines; ++vine) {
                    const double bloom = bloomOf(a, year) + 1.5 * (vine - 3.5);
                    const std::string at =
                        "obs/" + positionOf(a, vine) + "/" + writeDate(date) + "/";
                    add(kFirst, "observe", at + "stage", std::to_string(stageAt(day - bloom)));
                    if (a == 3 && vine == kVines) { // flowers all summer
                        add(kFirst,
                            "observe",
                            at + "stage-least",
                            std::to_string(stageAt(day - bloom - 20)));
                    }
                }
            }
        }
    }

    // Two people at one vine on one day.
    void addConflict() {
        const std::string at = "obs/B1-01-01/2025-05-09/stage";
        add(kFirst, "observe", at, "53");
        add(kSecond, "observe", at, "65");
    }

    static constexpr int kVines = 6;
    static constexpr const char* kOffice = "s0000000000000009.1";
    static constexpr const char* kFirst = "t0000000000000001.1";
    static constexpr const char* kSecond = "t0000000000000002.1";
    std::string lines_;
    int officeSeq_ = 0;
    int firstSeq_ = 0;
    int secondSeq_ = 0;
};

} // namespace bullace::test
