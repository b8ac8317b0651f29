// Something that looks wrong though nothing conflicts, as data: what it is about, the numbers that
// speak for it, and the repair that a person may choose.
#pragma once

#include "core/base/bytes.hpp"
#include "core/base/civil_date.hpp"
#include "core/journal/origin.hpp"
#include "core/merge/shifted_row.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::merge {

enum class FindingKind {
    ShiftedRow,        // a run of values stands along the row from where it belongs
    TenTimes,          // ten times, or a tenth of, what would fit
    InchForMillimetre, // what would fit in another unit
    StageBackwards,    // a stage behind an earlier day's
    OutOfRange,        // outside of the descriptor's range, or no code of its list
    FarFromHistory,    // unlike the vine's own history
    FarFromNeighbours, // unlike the vines around it on that day
    EmptyPosition,     // a value where no vine stood
    FutureDate,        // noted for a day that has not come
    ClockOff,          // a device's clock far from the days that it notes
    FarApart,          // two places far apart, noted within seconds on one device
    UnknownSubject     // of no known form
};
inline constexpr int kFindingKinds = 12;

// "shifted-row", …: stable words for listings and for what was put aside.
[[nodiscard]] std::string_view findingWord(FindingKind kind);

// One value of a repair: null takes the subject's value back.
struct Repair {
    std::string subject;
    Bytes value;
};

struct Finding {
    FindingKind kind = FindingKind::UnknownSubject;
    std::vector<std::string> subjects; // the first names it
    Bytes value;                       // of the first subject
    std::optional<double> number;      // that looks wrong
    std::optional<double> other;       // what it is compared with, or would be
    std::optional<CivilDate> on;       // the day of that
    std::optional<ShiftedRun> run;     // of a shifted row
    std::int64_t off = 0;              // a clock's days, or seconds between two places
    std::string device;                // of clocks and places far apart: the origin
    std::string deviceName;            // as the station calls it; may be empty
    std::vector<Repair> repair;        // empty where a person has to decide what is right
};

// One plain English sentence, for the console.
[[nodiscard]] std::string findingWords(const Finding& finding);

// The value of a remark that puts a finding aside, as long as the subject's heads are those it
// names.
[[nodiscard]] Bytes asideValue(FindingKind kind);
[[nodiscard]] bool putsAside(BytesView remark, FindingKind kind);

} // namespace bullace::merge
