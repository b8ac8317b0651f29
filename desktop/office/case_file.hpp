// Everything that a person needs in order to settle one conflict: the values that stand against
// each other, what was agreed before, what stands around the vine, and what the rule would do.
#pragma once

#include "office/conflict_cause.hpp"
#include "office/day_heat.hpp"
#include "office/desk.hpp"

#include "core/merge/rulebook.hpp"
#include "core/merge/settle.hpp"
#include "core/vineyard/catalogue.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace bullace::office {

// One head.
struct Side {
    journal::Place place;
    Digest digest;
    std::string author;
    std::string device; // its name; letter and digits where it has none
    std::optional<journal::Wall> wall;
    journal::Kind kind = journal::Kind::Observe;
    Bytes value; // one CBOR item; null: taken back
    std::optional<std::string> why;
    std::optional<std::string> as; // as typed
};

// A conflict in the list.
struct Waiting {
    std::string subject;
    Cause cause = Cause::Apart;
    std::int64_t sinceMs = 0;   // when the younger of its values was noted; 0 where nobody knows
    bool isLookedAgain = false; // a second look was asked for
};

// A value of the same descriptor on another day, or at another vine.
struct Dated {
    std::string position;
    std::string date;
    Bytes value; // empty where the subject is open
    merge::State state = merge::State::Settled;
};

struct CaseFile {
    std::string subject;
    journal::SubjectForm form = journal::SubjectForm::Unknown;
    std::string place; // position, lot:ID, or the collection's ID
    std::string date;
    std::string descriptor; // of an observation; else the field
    std::string accession;  // that stood there on that day
    merge::State state = merge::State::Open;
    Bytes value; // what it is settled as; empty where it is open
    Cause cause = Cause::Apart;
    std::vector<Side> sides;           // in an order that is fixed for a conflict, and random
    std::optional<Side> agreed;        // the last value that all sides had seen
    std::optional<Dated> before;       // at this vine, this year
    std::optional<Dated> after;        // likewise
    std::optional<Dated> lastSeason;   // within ten days of the day, a year before
    std::vector<Dated> row;            // the vines around it on that day, itself among them
    std::vector<Dated> season;         // this vine, this year
    std::vector<Dated> sisters;        // other vines of the accession on that day
    std::vector<Dated> looks;          // a second look, blind, that was taken since
    std::optional<std::string> round;  // in which a second look was asked for
    std::vector<std::string> photos;   // SHA-256, hex, of that vine and day
    std::vector<std::string> notes;    // likewise
    std::optional<std::uint64_t> rule; // its number in the rulebook; nothing: the descriptor's own
    descriptors::Rule ruleItself;
    std::optional<double> spread; // of numbers, or of stages in steps
    std::optional<DayHeat> heat;  // of stages and percentages: the season's until that day
};

// All that wait for a person, grouped by cause and then in the order of the rows. Errors: those of
// reading; Cancelled.
[[nodiscard]] Result<std::vector<Waiting>> waitingConflicts(store::Database& database,
                                                            const Token& token);

// How many vines to either side of it are shown.
inline constexpr unsigned kNeighbours = 4;

// Errors: those of reading; NotFound where nothing was ever noted under the subject.
[[nodiscard]] Result<CaseFile> readCase(store::Database& database,
                                        const vineyard::Catalogue& catalogue,
                                        const std::string& subject);

// The names of devices, by letter and digits ("t7c19e4a2b05d3f68").
[[nodiscard]] std::map<std::string, std::string> deviceNames(store::Database& database);

// The value of `remark` entries by which a second look at a subject is asked for.
[[nodiscard]] Bytes lookAgainValue(const std::string& round);

// Whether the place is still a stop of the round: a second look that was asked for can be undone.
[[nodiscard]] bool
isStopOf(store::Database& database, std::string_view round, std::string_view place);

} // namespace bullace::office
