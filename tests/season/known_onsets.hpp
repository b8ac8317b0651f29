// Interval-censored data whose estimates are known from outside: (after, by], open where a bound is
// lacking.
#pragma once

#include "core/season/onset_interval.hpp"

#include <string_view>
#include <vector>

namespace bullace::season {

struct KnownOnset {
    std::string_view group;
    int year;
    OnsetInterval onset;
};

inline constexpr double kOpen = statistics::kUnbounded;

// Invented: full bloom as day of year, 3 accessions x 8 vines x 2 years; the numbers that tests
// compare with it were computed in R 4.2.2, package survival 3.5.3.
inline const std::vector<KnownOnset> kBloom{
    {"Acc1", 2021, {157, 161}}, {"Acc1", 2021, {157, 161}}, {"Acc1", 2021, {157, 161}},
    {"Acc1", 2021, {157, 161}}, {"Acc1", 2021, {154, 157}}, {"Acc1", 2021, {157, 167}},
    {"Acc1", 2021, {161, 164}}, {"Acc1", 2021, {154, 157}}, {"Acc2", 2021, {151, 154}},
    {"Acc2", 2021, {151, 154}}, {"Acc2", 2021, {148, 151}}, {"Acc2", 2021, {-kOpen, 151}},
    {"Acc2", 2021, {151, 157}}, {"Acc2", 2021, {151, 154}}, {"Acc2", 2021, {148, 151}},
    {"Acc2", 2021, {151, 154}}, {"Acc3", 2021, {162, 162}}, {"Acc3", 2021, {161, 164}},
    {"Acc3", 2021, {164, 167}}, {"Acc3", 2021, {161, 164}}, {"Acc3", 2021, {161, 164}},
    {"Acc3", 2021, {161, 164}}, {"Acc3", 2021, {164, 167}}, {"Acc3", 2021, {161, 164}},
    {"Acc1", 2022, {162, 166}}, {"Acc1", 2022, {162, 166}}, {"Acc1", 2022, {159, 162}},
    {"Acc1", 2022, {159, 162}}, {"Acc1", 2022, {162, 166}}, {"Acc1", 2022, {155, 159}},
    {"Acc1", 2022, {159, 162}}, {"Acc1", 2022, {159, 162}}, {"Acc2", 2022, {159, 162}},
    {"Acc2", 2022, {159, 162}}, {"Acc2", 2022, {155, 159}}, {"Acc2", 2022, {155, 159}},
    {"Acc2", 2022, {155, 159}}, {"Acc2", 2022, {162, 166}}, {"Acc2", 2022, {155, 159}},
    {"Acc2", 2022, {155, 159}}, {"Acc3", 2022, {166, 169}}, {"Acc3", 2022, {166, 169}},
    {"Acc3", 2022, {162, 166}}, {"Acc3", 2022, {166, 169}}, {"Acc3", 2022, {162, 166}},
    {"Acc3", 2022, {166, 169}}, {"Acc3", 2022, {166, 169}}, {"Acc3", 2022, {169, kOpen}}};

// Invented: days to first sporulation by accession; computed likewise.
inline const std::vector<KnownOnset> kLatent{
    {"Res", 0, {10, 12}}, {"Res", 0, {8, 12}},     {"Res", 0, {10, 12}},    {"Res", 0, {12, 14}},
    {"Res", 0, {10, 12}}, {"Res", 0, {4, 5}},      {"Res", 0, {8, 12}},     {"Res", 0, {4, 6}},
    {"Res", 0, {10, 14}}, {"Res", 0, {10, 12}},    {"Res", 0, {12, kOpen}}, {"Res", 0, {7, 12}},
    {"Res", 0, {12, 14}}, {"Res", 0, {7, 10}},     {"Res", 0, {5, 7}},      {"Res", 0, {7, 8}},
    {"Res", 0, {12, 14}}, {"Res", 0, {5, 7}},      {"Res", 0, {5, 6}},      {"Res", 0, {4, 5}},
    {"Res", 0, {8, 10}},  {"Res", 0, {8, 14}},     {"Res", 0, {7, 8}},      {"Res", 0, {12, kOpen}},
    {"Res", 0, {12, 14}}, {"Sus", 0, {5, 7}},      {"Sus", 0, {6, 7}},      {"Sus", 0, {5, 7}},
    {"Sus", 0, {5, 7}},   {"Sus", 0, {-kOpen, 4}}, {"Sus", 0, {8, 10}},     {"Sus", 0, {5, 6}},
    {"Sus", 0, {4, 5}},   {"Sus", 0, {8, 12}},     {"Sus", 0, {4, 5}},      {"Sus", 0, {2, 4}},
    {"Sus", 0, {5, 7}},   {"Sus", 0, {7, 8}},      {"Sus", 0, {5, 6}},      {"Sus", 0, {8, 10}},
    {"Sus", 0, {6, 8}},   {"Sus", 0, {4, 6}},      {"Sus", 0, {8, 10}},     {"Sus", 0, {4, 5}},
    {"Sus", 0, {6, 7}},   {"Sus", 0, {5, 6}},      {"Sus", 0, {4, 6}},      {"Sus", 0, {8, 10}},
    {"Sus", 0, {8, 10}},  {"Sus", 0, {2, 5}}};

// Beadle et al. 1984, months to cosmetic deterioration after radiotherapy alone, as in Finkelstein
// & Wolfe 1985, Biometrics 41:933-945, and Klein & Moeschberger, Survival Analysis, Table 1.18.
inline const std::vector<KnownOnset> kCosmesis{
    {"", 0, {-kOpen, 5}}, {"", 0, {-kOpen, 7}}, {"", 0, {-kOpen, 8}}, {"", 0, {4, 11}},
    {"", 0, {5, 11}},     {"", 0, {5, 12}},     {"", 0, {6, 10}},     {"", 0, {7, 14}},
    {"", 0, {7, 16}},     {"", 0, {11, 15}},    {"", 0, {11, 18}},    {"", 0, {17, 25}},
    {"", 0, {17, 25}},    {"", 0, {18, 26}},    {"", 0, {19, 35}},    {"", 0, {25, 37}},
    {"", 0, {26, 40}},    {"", 0, {27, 34}},    {"", 0, {36, 44}},    {"", 0, {36, 48}},
    {"", 0, {37, 44}},    {"", 0, {15, kOpen}}, {"", 0, {17, kOpen}}, {"", 0, {18, kOpen}},
    {"", 0, {22, kOpen}}, {"", 0, {24, kOpen}}, {"", 0, {24, kOpen}}, {"", 0, {32, kOpen}},
    {"", 0, {33, kOpen}}, {"", 0, {34, kOpen}}, {"", 0, {36, kOpen}}, {"", 0, {36, kOpen}},
    {"", 0, {37, kOpen}}, {"", 0, {37, kOpen}}, {"", 0, {37, kOpen}}, {"", 0, {38, kOpen}},
    {"", 0, {40, kOpen}}, {"", 0, {45, kOpen}}, {"", 0, {46, kOpen}}, {"", 0, {46, kOpen}},
    {"", 0, {46, kOpen}}, {"", 0, {46, kOpen}}, {"", 0, {46, kOpen}}, {"", 0, {46, kOpen}},
    {"", 0, {46, kOpen}}, {"", 0, {46, kOpen}}};

// The onsets of one group, or of all.
inline std::vector<OnsetInterval> onsetsOf(const std::vector<KnownOnset>& known,
                                           std::string_view group = {}) {
    std::vector<OnsetInterval> onsets;
    for (const KnownOnset& one : known) {
        if (group.empty() || one.group == group) {
            onsets.push_back(one.onset);
        }
    }
    return onsets;
}

} // namespace bullace::season
