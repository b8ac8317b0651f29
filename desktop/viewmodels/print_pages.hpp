// Labels and row sheets of this station, from what somebody asked for to pages.
#pragma once

#include "office/labelling.hpp"
#include "paper/label_sheet.hpp"
#include "paper/row_sheet.hpp"

#include <QPointF>

#include <optional>
#include <string>
#include <vector>

namespace bullace::desk {

struct PrintWish {
    // Nothing: row sheets.
    std::optional<paper::LabelKind> kind = paper::LabelKind::Vine;
    std::string of; // "B2-07", "juice", an accession; of row sheets a row, a block or a round
    std::vector<std::string> descriptors; // of row sheets without a round
    bool isFromLast = false;              // row sheets are walked from the last vine
    int firstFree = 1;                    // of a sheet of labels that was begun
    QPointF printerOffset;                // mm, to the right and down
    paper::PaperSize size = paper::PaperSize::Letter;
};

// The places that get labels: vines or lots by their kind of label, of row ends the rows' two
// posts. Errors: InvalidInput, in words that say what can be typed.
[[nodiscard]] Result<std::vector<std::string>>
placesFor(const vineyard::Catalogue& catalogue, const PrintWish& wish, CivilDate today);

// `labels` as labelsOf() gives them for placesFor(), each with its code. Errors: those of
// labelPages().
[[nodiscard]] Result<std::vector<paper::Page>>
labelPagesFor(const vineyard::Catalogue& catalogue,
              const PrintWish& wish,
              const std::vector<office::Labelled>& labels);

// The rows that get sheets, as "B2-07". Errors: InvalidInput.
[[nodiscard]] Result<std::vector<std::string>> rowsFor(const vineyard::Catalogue& catalogue,
                                                       const PrintWish& wish);
// All their pages. Errors: those of rowsFor() and rowSheetPages().
[[nodiscard]] Result<std::vector<paper::Page>>
sheetPagesFor(const vineyard::Catalogue& catalogue, const PrintWish& wish, CivilDate today);

} // namespace bullace::desk
