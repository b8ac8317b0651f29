// Row sheets: one row on paper for the day a tablet dies, with a box for each digit; its page code
// opens the matching grid at the desk.
#pragma once

#include "paper/page.hpp"

#include "core/base/civil_date.hpp"
#include "core/base/result.hpp"
#include "core/vineyard/catalogue.hpp"

#include <QString>
#include <QStringList>

#include <cstdint>
#include <string>
#include <vector>

namespace bullace::paper {

// Boxes for one number, or a line for words, for each vine.
struct RowSheetQuestion {
    struct Code {
        QString code;
        QString meaning;
    };

    QString title;
    QString unit;
    bool hasSign = false;
    int digits = 2; // before the decimal mark; 0: no boxes but a line for words
    int decimals = 0;
    int samples = 1;
    std::vector<Code> codes; // listed at the page's foot; empty where numbers say it all
};

// What a descriptor asks for on paper: boxes by its range and decimals, its codes as a list. A
// category is noted by its number in the list, from 1; a record's parts follow one another; a text
// is a line; a photo is nothing. `stages` are those offered, all where it is empty; `samples` at
// least 1.
[[nodiscard]] std::vector<RowSheetQuestion>
questionsOf(const vineyard::Asked& asked, int samples, const std::vector<std::int64_t>& stages);

struct RowSheetVine {
    QString number; // in its row: "14a"
    QString gone;   // why nothing is written there: "missing"; empty for a vine
};

struct RowSheet {
    PaperSize paper = PaperSize::Letter;
    std::string block;
    unsigned row = 0;
    bool isFromLast = false;         // walked from its last vine
    std::vector<RowSheetVine> vines; // in walking order
    std::vector<RowSheetQuestion> questions;
    std::string round;    // ID; may be empty
    QString roundTitle;   // likewise
    QStringList cautions; // cautionsOf() in paper_words.hpp
};

// The vines of the row in walking order, those planted between two with them. A place where nothing
// stands on the day is said to have no vine, unless nothing is known to stand in the whole row.
[[nodiscard]] std::vector<RowSheetVine> vinesOf(const vineyard::Catalogue& catalogue,
                                                const vineyard::Block& block,
                                                const vineyard::Row& row,
                                                CivilDate day,
                                                bool isFromLast);

// The sheet's pages, each with its head, its code (row_code.hpp) and its number. Errors:
// InvalidInput where there is no vine, no question, or more boxes than a page is wide.
[[nodiscard]] Result<std::vector<Page>> rowSheetPages(const RowSheet& sheet);

} // namespace bullace::paper
