// The station's settled observations as plain tables, one for each descriptor, as the sciences take
// them: what stood where is already looked up, and what could not be used is there with its reason.
#pragma once

#include "core/base/bytes.hpp"
#include "core/base/civil_date.hpp"
#include "core/weather/ghcn.hpp"

#include <cstddef>
#include <cstdint>
#include <limits>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::season {

// One planting: a vine from the day on which it was planted, until another stood there.
struct NotedVine {
    std::string position; // as it was called when it was planted
    std::size_t accession = 0;
};
inline constexpr std::uint32_t kNoVine = std::numeric_limits<std::uint32_t>::max();

struct NotedAccession {
    std::string id;
    std::string words; // as it is called, "A022 Brindlecap"
    std::string taxon; // as the office has it; empty where nobody said
    bool isVerified = false;
    std::optional<int> flowerSex; // OIV 151
    std::string status{};         // cultivar, selection, seedling …
    std::string mother{};         // ids of its parents; empty where they are not known
    std::string father{};
    bool hasOpenParents = false; // people disagree about one of them: it is not known then
    std::string cross{};         // of which it is a seedling, by its id
    std::string earlier{};       // the id under which the same vine was known before
    std::optional<std::int32_t> planted{}; // the first day on which it stood anywhere
};

// A number at a vine on a day. Low and high are the least and the greatest value that people noted
// of it, where they differ; else all three are the same. Samples come one by one.
struct NumberNote {
    std::uint32_t vine = 0;
    std::int32_t day = 0; // since 1970-01-01
    double value = 0;
    double low = 0;
    double high = 0;
};
// A value that is a code or a text.
struct WordNote {
    std::uint32_t vine = 0;
    std::int32_t day = 0;
    std::uint32_t word = 0; // in StationNotes::words
};
// A value that is a record, as CBOR; at a vine or on a lot.
struct RecordNote {
    std::uint32_t vine = kNoVine;
    std::uint32_t lot = 0; // in StationNotes::lots, where it is on a lot
    std::int32_t day = 0;
    Bytes value;
};
// Looked at, or meant to be, without a value: the reason is a word.
struct MissNote {
    std::uint32_t vine = 0;
    std::int32_t day = 0;
    std::uint32_t word = 0;
};
// Two or more values that nobody has settled yet.
struct OpenNote {
    std::uint32_t vine = kNoVine;
    std::int32_t day = 0;
    std::string subject;
};

// One person's own value where several noted the same vine on the same day, also where they agreed
// or somebody settled it since; and of blind repeats.
struct PersonNote {
    std::uint32_t vine = 0;
    std::int32_t day = 0;
    std::uint32_t author = 0; // in StationNotes::words
    double value = 0;
};

struct NotedLot {
    std::string id;
    std::string kind;
    std::optional<std::size_t> accession; // from which it was taken, where that is known
    // Of seed: from which cross, counts, and days since 1970-01-01.
    std::string cross{};
    std::optional<std::int64_t> seeds{};
    std::optional<std::int64_t> sinkers{}; // seeds that sink in water
    std::optional<std::int64_t> germinated{};
    std::optional<std::int32_t> day{}; // on which it was taken
    std::optional<std::int32_t> stratified{};
    std::optional<std::int32_t> sown{};
    std::optional<std::int32_t> germinatedOn{};
};

// A cross as the office has it; accessions by their ids.
struct NotedCross {
    std::string id;
    std::string number; // the office's own; empty of one that was only opened in the field
    std::string mother;
    std::string father;
    std::string pollenLot{};
    bool isClosed = false;
};

// All that was noted of one descriptor.
struct DescriptorNotes {
    std::vector<NumberNote> numbers;
    std::vector<WordNote> words;
    std::vector<RecordNote> records;
    std::vector<MissNote> missed;
    std::vector<OpenNote> open;
    std::vector<PersonNote> people;
};

struct StationNotes {
    std::vector<NotedAccession> accessions;
    std::vector<NotedVine> vines;
    std::vector<NotedLot> lots;
    std::vector<NotedCross> crosses;
    std::vector<std::string> words; // of word notes, reasons and authors
    std::map<std::string, DescriptorNotes, std::less<>> of;
    std::map<std::string, std::map<CivilDate, weather::DailyWeather>, std::less<>>
        weather;                  // by site
    std::size_t observations = 0; // that were read
    std::size_t elsewhere = 0;    // at places where nothing stood on the day: left out

    // Empty where nothing was noted of it.
    [[nodiscard]] const DescriptorNotes& notesOf(std::string_view descriptor) const;
    [[nodiscard]] std::optional<std::size_t> accession(std::string_view id) const;
};

[[nodiscard]] inline CivilDate dateOfDay(std::int32_t day) {
    return std::chrono::sys_days(std::chrono::days(day));
}
[[nodiscard]] inline std::int32_t dayOfDate(CivilDate date) {
    return static_cast<std::int32_t>(std::chrono::sys_days(date).time_since_epoch().count());
}

// The calendar year, which a season is called by.
[[nodiscard]] inline int yearOfDay(std::int32_t day) {
    return static_cast<int>(dateOfDay(day).year());
}

// Years in which any of the descriptors was noted, the newest first.
[[nodiscard]] std::vector<int> yearsOf(const StationNotes& notes,
                                       std::span<const std::string_view> descriptors);

// The numbers with taxa in the place of accessions, and accessions in that of vines: what repeats
// in a taxon are its accessions. Accessions without a taxon are one of that name.
[[nodiscard]] StationNotes byTaxon(const StationNotes& notes, const std::string& withoutTaxon);

} // namespace bullace::season
