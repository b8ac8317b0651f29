// What a walk is going to be: who walks, which stops in which order, and what is asked at each. It
// is fixed when the walk begins and kept in the journal, so that a tablet that went out in the
// middle goes on at the same vine.
#pragma once

#include "core/base/civil_date.hpp"
#include "core/journal/exchange.hpp"
#include "core/walk/route.hpp"

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace bullace::field {

// One thing that is asked at every stop.
struct Ask {
    std::string descriptor;
    unsigned samples = 1;                   // wanted; more than one only of a sampled descriptor
    std::optional<double> precisionPercent; // wanted of the mean
    friend bool operator==(const Ask&, const Ask&) = default;
};

struct WalkPlan {
    std::string round; // its ID; empty for a walk without a round
    std::string title;
    std::string author;
    CivilDate date{}; // of all that is noted on the walk
    std::vector<Ask> asks;
    std::vector<std::int64_t> stages; // the round's choice; empty: all
    std::vector<walk::Stop> stops;
    bool isOneWay = false;            // each row from the same end
    bool isBlind = false;             // accessions are hidden
    bool isDecision = false;          // a vine's history may be shown before the value is in
    bool isOnlyWhatStandsOut = false; // what is left is walked past
    bool isRepeat = false;            // values are samples beside those that are there
    bool isList = false;              // chosen vines: the list is walked as one, without row ends
    journal::Vector before;           // ends of this device's journal when the walk began

    friend bool operator==(const WalkPlan&, const WalkPlan&) = default;
};

// Where the walk stands.
struct Footing {
    std::size_t stop = 0;
    std::size_t ask = 0;
    bool isAtRowEnd = false; // behind the last stop of the row in which `stop` lies
    std::size_t front = 0; // the furthest stop that was reached; one goes back there from a repair
    friend bool operator==(const Footing&, const Footing&) = default;
};

// Samples wanted beyond those of the ask, by stop and ask.
using MoreSamples = std::map<std::pair<std::size_t, std::size_t>, unsigned>;

// As bookmarks hold them: a CBOR item each. Reading gives nothing where the bytes are of another
// shape.
[[nodiscard]] Bytes writePlan(const WalkPlan& plan);
[[nodiscard]] std::optional<WalkPlan> readPlan(BytesView bytes);
[[nodiscard]] Bytes writeFooting(const Footing& footing);
[[nodiscard]] std::optional<Footing> readFooting(BytesView bytes);
// Empty bytes where nothing more is wanted, and the other way round.
[[nodiscard]] Bytes writeMoreSamples(const MoreSamples& more);
[[nodiscard]] std::optional<MoreSamples> readMoreSamples(BytesView bytes);

} // namespace bullace::field
