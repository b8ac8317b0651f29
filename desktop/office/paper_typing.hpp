// A row sheet typed from paper: twice, since one look at what was typed leaves many times more
// errors than typing it again (Barchard et al. 2008: 28 times). What differs is put right
// before anything is written.
#pragma once

#include "office/bench.hpp"

#include "core/base/civil_date.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bullace::office {

struct PaperTyping {
    std::string code;     // of the page, or the row: what was typed to begin
    std::string observer; // whose notes they are
    CivilDate day;
    std::vector<std::string> places; // as they stand on the page
    std::vector<BenchColumn> columns;
    // Texts as typed, of the first and the second pass: by place, then by column.
    std::vector<std::vector<std::string>> passes[2];
    int pass = 0; // 0 and 1 while it is typed, 2 while what differs is put right

    // Both passes empty, each as large as places and columns.
    void clear();
};

struct PaperDifference {
    std::size_t place = 0;
    std::size_t column = 0;
};

// A cell of a sheet: as readTyped(), and of a word its number in the sheet's list, from 1.
[[nodiscard]] Result<Typed> readPaper(const vineyard::Asked& asked,
                                      std::string_view text,
                                      const UnitWishes& wishes,
                                      const WordCode& codeOf = {});

// Where the passes do not say the same value, or one says nothing, or cannot be read.
[[nodiscard]] std::vector<PaperDifference> differencesOf(const vineyard::Catalogue& catalogue,
                                                         const PaperTyping& typing,
                                                         const UnitWishes& wishes,
                                                         const WordCode& codeOf = {});

// All that was typed, as one act of its observer. It stands beside what tablets noted: the sheet
// knew nothing of that. Errors: InvalidInput where passes differ still, or nothing was typed; those
// of reading.
[[nodiscard]] Result<Act> sheetAct(store::Database& database,
                                   const vineyard::Catalogue& catalogue,
                                   const PaperTyping& typing,
                                   const UnitWishes& wishes,
                                   const WordCode& codeOf = {});

// Kept beside the entries, so that an evening's typing outlives the evening. Nothing where none is
// kept, or in another shape.
[[nodiscard]] Result<std::optional<PaperTyping>> readTyping(store::Database& database);
[[nodiscard]] Status keepTyping(store::Database& database,
                                const std::optional<PaperTyping>& typing);

} // namespace bullace::office
