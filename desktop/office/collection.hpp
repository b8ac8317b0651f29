// The collection as a person edits it: each thing (a block, an accession, a round …) as a card of
// named fields, typed as text; and the acts that change many of them at once.
#pragma once

#include "office/act.hpp"

#include "core/vineyard/catalogue.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::office {

enum class CardKind { Accession, Block, Person, Round, Descriptor, Lot, Cross };

// How a field's value is typed.
enum class FieldType {
    Text,
    Passport, // a text that the standard limits
    Date,     // 2026-05-14
    Whole,    // a whole number, 0 or more
    YesNo,
    Texts,     // with commas between them
    Wholes,    // likewise
    Numbers,   // "stage 3, clusters 5": a number for each code
    Range,     // "0 to 35"
    Rows,      // "1: 40, 2: 38": each row with its places
    Rule,      // "mean within 5 %"
    ChosenWord // one of `words`
};

struct FieldForm {
    std::string_view field;
    FieldType type = FieldType::Text;
    std::span<const std::string_view> words{};
};
// The fields that a card of the kind can have, in their order.
[[nodiscard]] std::vector<FieldForm> formsOf(CardKind kind);
// "accession", "block", …: the first part of its subjects.
[[nodiscard]] std::string_view cardWord(CardKind kind);

// The text as the field's value; empty text is null, which takes the field back. Errors:
// InvalidInput, which says what the field takes.
[[nodiscard]] Result<Bytes> fieldValue(const FieldForm& form, std::string_view text);
// The value as it would be typed; of another shape as JSON.
[[nodiscard]] std::string fieldText(const FieldForm& form, BytesView value);

struct CardField {
    FieldForm form;
    std::string field; // as stored; forms of unknown fields are Text
    std::string text;
    std::vector<journal::Place> heads;
    bool isOpen = false;
    bool isKnown = true;
};
struct Card {
    CardKind kind = CardKind::Accession;
    std::string id;
    std::vector<CardField>
        fields; // all that it can have, then those that this version does not know
};
// Errors: those of reading.
[[nodiscard]] Result<Card>
readCard(store::Database& database, CardKind kind, const std::string& id);

// Whether a tablet gave the ID: it begins with six hex digits of the device and "-".
[[nodiscard]] bool isFromField(std::string_view id);

// IDs with a name for each, ascending by ID.
struct CardLine {
    std::string id;
    std::string name;
    std::string more;         // a status, how many rows, …
    bool isFromField = false; // opened on a tablet; the office gives it its own number
};
[[nodiscard]] std::vector<CardLine> linesOf(const vineyard::Catalogue& catalogue, CardKind kind);

// Writes one field over what was seen of it. Errors: InvalidInput for an ID that cannot be one.
[[nodiscard]] Result<Act> setField(CardKind kind,
                                   const std::string& id,
                                   const std::string& field,
                                   Bytes value,
                                   const std::vector<journal::Place>& seen,
                                   const std::string& author,
                                   const std::string& why);

// A run of vines planted on one day, in one act.
struct PlantingRun {
    std::string first; // position
    std::string last;  // of the same row; the same as `first` for one vine
    std::string accession;
    bool isNumbered = false; // each vine is an accession of its own: A100-1, A100-2, …
    CivilDate from;
};
// What stands there ends with the new planting. Errors: InvalidInput where the run is none, or a
// place is not on the plan; those of reading.
[[nodiscard]] Result<Act> plantRun(store::Database& database,
                                   const vineyard::Catalogue& catalogue,
                                   const PlantingRun& run,
                                   const std::string& author,
                                   const std::string& why);
// The vines of a run stand there until the day, the last on which they do. Errors: InvalidInput
// where nothing stands at one of them on that day; those of reading.
[[nodiscard]] Result<Act> removeRun(store::Database& database,
                                    const vineyard::Catalogue& catalogue,
                                    const std::string& first,
                                    const std::string& last,
                                    CivilDate until,
                                    const std::string& author,
                                    const std::string& why);
// From the day on, the vines of a run are called by numbers `by` greater (or less): what was noted
// before keeps its position. Errors: InvalidInput where a new number is below 1, or already another
// vine's.
[[nodiscard]] Result<Act> renumberRun(store::Database& database,
                                      const vineyard::Catalogue& catalogue,
                                      const std::string& first,
                                      const std::string& last,
                                      int by,
                                      CivilDate from,
                                      const std::string& author,
                                      const std::string& why);
// The positions from `first` to `last` along one row. Errors: InvalidInput.
[[nodiscard]] Result<std::vector<std::string>> runOf(const std::string& first,
                                                     const std::string& last);

} // namespace bullace::office
