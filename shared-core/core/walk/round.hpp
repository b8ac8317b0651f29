// A round as its `round/ID/FIELD` entries tell: which rows or vines, in which order, which
// descriptors, by when; and what of it is on the plan.
#pragma once

#include "core/base/bytes.hpp"
#include "core/base/civil_date.hpp"
#include "core/vineyard/block.hpp"
#include "core/walk/route.hpp"

#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::walk {

struct Round {
    std::string id;
    std::string title;
    std::vector<std::string> where; // patterns like "B2-*" and "B2-07-*", or positions
    std::vector<std::string> descriptors;
    Order order = Order::Serpentine;
    unsigned everyNthRow = 1;
    bool bothSides = false;
    bool isBlind = false;                           // accessions are hidden
    bool isDecision = false;                        // a vine's history may be shown
    bool isOnlyWhatStandsOut = false;               // the rest is walked past
    bool asksLeast = false;                         // the least advanced stage after the stage
    bool isRepeat = false;                          // a blind repeat: values are written as samples
    std::vector<std::int64_t> stages;               // the stages offered as keys; empty: all
    std::map<std::string, unsigned> samples;        // how many, by descriptor
    std::map<std::string, double> precisionPercent; // wanted of the mean, by descriptor
    std::optional<CivilDate> from;                  // the first day
    std::optional<CivilDate> by;                    // the last day
    std::optional<CivilDate> closed;                // done, or given up, on that day
    std::vector<std::string> unknownFields;         // of a newer program; each once

    // Neither closed nor before its first day. One that is late is still offered.
    [[nodiscard]] bool isOpenOn(CivilDate date) const {
        return !(closed && *closed <= date) && !(from && date < *from);
    }
};

// Sets what `round/ID/field` says. `value` is one CBOR item (core/journal/json_value.hpp):
//   title text | where, descriptors list of text | order "serpentine" or "one-way" |
//   every-nth-row whole number from 1 | both-sides, blind, decision, only-what-stands-out, least,
//   repeat true or false | stages list of whole numbers | samples {"code": whole number from 1} |
//   precision {"code": percent, above 0 up to 100} | from, by, closed date
// null takes the field back to what it is without an entry. False where the value has another
// shape; then nothing changed. A field of another name is remembered and is true.
[[nodiscard]] bool setField(Round& round, std::string_view field, BytesView value);

// The rows that the patterns of `where` name, whole: in the order of the patterns, within one in
// the order of the plan, each once. Single positions name no rows.
[[nodiscard]] std::vector<RowPlan> rowsOf(const Round& round,
                                          const std::vector<vineyard::Block>& blocks);

// Adds the vines planted between two (B2-07-14a) among `positions` to the rows in which they stand.
void addBetween(std::vector<RowPlan>& rows, std::span<const std::string> positions);

// Whether `where` names single vines: then the walk goes through vinesOf, and not along rows.
[[nodiscard]] bool isListOfVines(const Round& round);

// The places of the plan that `where` names, each once, in its order; patterns give all of theirs.
[[nodiscard]] std::vector<std::string> vinesOf(const Round& round,
                                               const std::vector<vineyard::Block>& blocks);

// The patterns and positions of `where` that name nothing on the plan (any more).
[[nodiscard]] std::vector<std::string> goneFromPlan(const Round& round,
                                                    const std::vector<vineyard::Block>& blocks);

} // namespace bullace::walk
