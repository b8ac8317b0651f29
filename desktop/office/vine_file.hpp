// Everything that was ever noted at a vine's place or of an accession, and the whole history of one
// value: who wrote it, when, what it was replaced by, why.
#pragma once

#include "office/act.hpp"
#include "office/case_file.hpp"

#include "core/merge/settle.hpp"
#include "core/vineyard/catalogue.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bullace::office {

struct VineValue {
    std::string subject;
    std::string position; // as it was called on the day
    std::string date;
    std::string descriptor;
    std::string sample; // "origin,n"; empty for an observation
    Bytes value;        // empty where it is open or retracted
    merge::State state = merge::State::Settled;
};

struct VineFile {
    std::string position;  // as asked for; empty for an accession
    std::string accession; // that stands there now, or that was asked for
    std::vector<vineyard::Planting>
        plantings;                 // of the place, or of the accession; the newest first
    std::vector<VineValue> values; // the newest day first
};

// Of the vine's place, whatever it was called and whatever stood there. `position` as it is called
// today. Errors: those of reading.
[[nodiscard]] Result<VineFile> readVine(store::Database& database,
                                        const vineyard::Catalogue& catalogue,
                                        const std::string& position,
                                        CivilDate today);
// Of an accession, wherever it stood.
[[nodiscard]] Result<VineFile> readAccession(store::Database& database,
                                             const vineyard::Catalogue& catalogue,
                                             const std::string& accession);
// Of a lot: what was measured of it at the bench.
[[nodiscard]] Result<VineFile> readLot(store::Database& database, const std::string& lot);

// One entry of a subject's history.
struct HistoryLine {
    Side entry;
    bool isHead = false;
    bool isUndone = false;
    std::optional<journal::Standing> uncounted; // why it counts for nothing
    std::vector<journal::Place> over;           // what it was meant to replace
    std::vector<journal::Place> replacedBy;     // counting entries that name it
};
struct SubjectHistory {
    std::string subject;
    std::optional<store::StateRow> state;
    std::vector<HistoryLine> lines; // the newest first
};
// Errors: those of reading.
[[nodiscard]] Result<SubjectHistory> readHistory(store::Database& database,
                                                 const std::string& subject);

// Puts a value right, with a reason: over what stands now. null takes it back. Where several values
// stand against each other it is a ruling. Errors: InvalidInput without a reason.
[[nodiscard]] Result<Act> correct(const SubjectHistory& history,
                                  BytesView value,
                                  const std::optional<std::string>& as,
                                  const std::string& author,
                                  const std::string& why);

} // namespace bullace::office
