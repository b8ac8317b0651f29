// One line finds it: positions, accessions, labels, people, crosses, lots, and the words of notes.
// Kept in memory, so that an answer takes milliseconds at a station of a million entries.
#pragma once

#include "office/desk.hpp"

#include "core/vineyard/catalogue.hpp"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::office {

enum class FoundKind { Position, Accession, Label, Person, Cross, Lot, Round, Note };

struct Found {
    FoundKind kind = FoundKind::Position;
    std::string id;   // position, accession, person's code, …; of a label and a note the position
    std::string text; // a name, a label, the words of a note
    std::string detail; // what stands at the position, the day of a note
};

class SearchIndex {
public:
    // Errors: those of reading; Cancelled.
    [[nodiscard]] static Result<SearchIndex> build(store::Database& database,
                                                   const vineyard::Catalogue& catalogue,
                                                   CivilDate today,
                                                   const Token& token);

    // What holds all words of the query, letters' size aside; what begins with it first, then by
    // kind. At most `most`.
    [[nodiscard]] std::vector<Found> find(std::string_view query, std::size_t most) const;
    [[nodiscard]] std::size_t size() const { return items_.size(); }

private:
    struct Item {
        Found found;
        std::uint32_t begin = 0; // of its folded words in text_
        std::uint32_t length = 0;
    };
    void add(Found found);

    std::vector<Item> items_; // by kind
    std::string text_;        // folded words of all items, one after the other
};

// Small letters, and letters without their accents: "Púrpura" is "purpura". Bytes that are no
// letter of the Latin alphabets stay as they are.
[[nodiscard]] std::string folded(std::string_view text);

} // namespace bullace::office
