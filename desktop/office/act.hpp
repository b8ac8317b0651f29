// One act of a person at the desk: what is written, and what stood on the screen when she decided.
#pragma once

#include "core/base/clock.hpp"
#include "store/database.hpp"
#include "store/own_acts.hpp"

#include <string>
#include <vector>

namespace bullace::office {

// A subject as it was shown: nothing is applied where its heads are others by now.
struct Seen {
    std::string subject;
    std::vector<journal::Place> heads; // ascending; empty: nobody had noted anything
};

struct Act {
    std::vector<store::Draft> drafts;
    std::vector<Seen> seen;
};

// Of all heads of the subject, ascending. Errors: those of reading.
[[nodiscard]] Result<std::vector<journal::Place>> headsOf(store::Database& database,
                                                          const std::string& subject);

// Writes the act as one group, on disk when it returns. Errors: Outdated where something that was
// seen has changed since (the message names the first); those of Database::append. Then nothing was
// written.
[[nodiscard]] Result<std::vector<journal::Place>>
perform(store::Database& database, const Act& act, const Clock& clock);

// The same of an act that may not have come about: its error is the answer then.
[[nodiscard]] Result<std::vector<journal::Place>>
perform(store::Database& database, const Result<Act>& act, const Clock& clock);

// The act that takes written entries back; undo entries too, which makes what they took back count
// again. `subjects` are those of the places, in their order.
[[nodiscard]] Act takingBack(const std::vector<journal::Place>& places,
                             const std::vector<std::string>& subjects,
                             const std::string& author);

} // namespace bullace::office
