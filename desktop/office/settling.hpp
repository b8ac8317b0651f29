// The ways to settle a conflict, each as one act that can be undone. Nothing is written here: the
// desk's writer performs the act, and refuses it where the conflict is another by then.
#pragma once

#include "office/act.hpp"
#include "office/case_file.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::office {

// Who decides, and why. The reason may be one of kReasons or any words; not empty.
struct Decider {
    std::string author;
    std::string why;
};

// Reasons by one key. They are stored as these words, whatever language the screen speaks.
inline constexpr std::string_view kPhotoShows = "the photo shows it";
inline constexpr std::string_view kKnowsVine = "knows the vine";
inline constexpr std::string_view kTypingSlip = "typing slip";

// The value counts from now on; null: nothing does. Errors: InvalidInput where the descriptor
// cannot have the value (the message says what it can have).
[[nodiscard]] Result<Act> ruleFor(const vineyard::Catalogue& catalogue,
                                  const CaseFile& file,
                                  BytesView value,
                                  const Decider& decider);

// Both are right, as two samples: the observation is ruled to be nothing by itself, and each value
// becomes a sample of it. Errors: InvalidInput for what is no observation or is a sample; those of
// reading.
[[nodiscard]] Result<Act>
keepAsSamples(store::Database& database, const CaseFile& file, const Decider& decider);

// One side was noted at another vine: it moves there, the rest stays. Errors: InvalidInput where
// `position` is no position, or the rest does not agree without it; those of reading.
[[nodiscard]] Result<Act> moveSide(store::Database& database,
                                   const CaseFile& file,
                                   std::size_t side,
                                   const std::string& position,
                                   const Decider& decider);

// Somebody looks again, blind: the vine becomes a stop of the round of second looks from `from` on.
// The conflict waits for a ruling that shows what was seen. Errors: InvalidInput for what stands at
// no vine; those of reading.
[[nodiscard]] Result<Act> lookAgain(store::Database& database,
                                    const CaseFile& file,
                                    CivilDate from,
                                    const std::string& title,
                                    const Decider& decider);
// The ID of the round of second looks that begins on the day.
[[nodiscard]] std::string lookAgainRound(CivilDate from);

// What the newest act of this office was that has not been undone; empty where there is none.
struct Undone {
    std::vector<std::string> subjects;
    std::vector<journal::Place> undos; // that were written; taking them back is the redo
};
// Takes back the newest act of this office that counts. Errors: those of reading and writing.
[[nodiscard]] Result<Undone>
undoLast(store::Database& database, const std::string& author, const Clock& clock);

// A subject for one more sample of the observation by this device, which has not used it yet.
[[nodiscard]] Result<std::string>
nextSample(store::Database& database, const std::string& observation, unsigned further = 0);

} // namespace bullace::office
