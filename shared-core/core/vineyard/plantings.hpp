// What stood at a position on a date: plantings follow one another at a place, and rows are
// renumbered.
#pragma once

#include "core/base/civil_date.hpp"
#include "core/vineyard/renumbering.hpp"

#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::vineyard {

// One `planting/POSITION/DATE` with its settled value.
struct Planting {
    std::string position; // as it was called on `from`
    CivilDate from;       // the first day on which the vine stands there
    std::string accession;
    std::optional<CivilDate> until; // the last such day; nothing: until the next planting
};

// All plantings of a station. Nothing changes in it once it is made.
class Plantings {
public:
    // Plantings in any order. At one place each ends the one before, on the day before its own, and
    // earlier where `until` says so. One whose `until` lies before its `from` never stands, but
    // ends the one before. Of two from one date the last in the list counts.
    explicit Plantings(std::vector<Planting> plantings, Renumberings renumberings = {});

    // What stood on `date` at the place that was called `position` on that date; nothing where the
    // place was empty. The planting is valid as long as this object is.
    [[nodiscard]] const Planting* at(std::string_view position, CivilDate date) const;

    // The same, for a position that was written on another date than the one asked for.
    [[nodiscard]] const Planting*
    at(std::string_view position, CivilDate written, CivilDate date) const;

    // The last day on which the planting stood: its `until`, or the day before the next one at its
    // place, whichever is earlier. Nothing where it stands still.
    [[nodiscard]] std::optional<CivilDate> lastDay(const Planting& planting) const;

    // All plantings at a place, by date; `position` as it was called on `written`.
    [[nodiscard]] std::span<const Planting> history(std::string_view position,
                                                    CivilDate written) const;

    [[nodiscard]] const Renumberings& renumberings() const { return renumberings_; }

    // Wherever and whenever the accession was planted, by newest position and then by date.
    [[nodiscard]] std::vector<const Planting*> of(std::string_view accession) const;

    // The first day on which each accession stood anywhere.
    [[nodiscard]] std::map<std::string, CivilDate, std::less<>> firstDays() const;

    // Everything that stood on `date`, in the order of block, row and vine (by newest position).
    [[nodiscard]] std::vector<const Planting*> standing(CivilDate date) const;

private:
    [[nodiscard]] const Planting* inPlace(const std::vector<Planting>& place, CivilDate date) const;

    Renumberings renumberings_;
    std::map<std::string, std::vector<Planting>, std::less<>> places_; // by newest position
};

} // namespace bullace::vineyard
