// Sheets of labels with QR codes: for vines, row ends, bags, vials, seed lots, pots, and the strip
// that is carried along a row whose labels cannot be read.
#pragma once

#include "paper/page.hpp"

#include "core/base/result.hpp"

#include <QPointF>
#include <QString>
#include <QStringList>

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::paper {

enum class LabelKind { Vine, RowEnd, Bag, Vial, SeedLot, Pot, WalkStrip };
inline constexpr int kLabelKinds = 7;

// What one label says. The code names a place or a lot; what grows there is looked up by date.
struct Label {
    LabelKind kind = LabelKind::Vine;
    std::string code;  // as the QR code says it
    QString typable;   // the same to be typed or called out, in groups
    QStringList words; // place or contents, a line each; a line too long for the label is wrapped
};

// Least height of a capital of the typable code on the kind's labels: 8 mm on vines, 10 mm on row
// ends (the row itself), 4 mm on bags, pots and seed lots, 2 mm on vials, 2.5 mm on strips. Those
// for vines are from a measurement of codes and letters at 30 to 70 cm, the others common practice,
// no source.
[[nodiscard]] double leastCodeCapsMm(LabelKind kind);

// Labels with the station's label code (vineyard::readLabelCode). Errors: InvalidInput, where the
// code is none, or the position is none.
[[nodiscard]] Result<Label> vineLabel(std::string_view code, std::string_view position);
[[nodiscard]] Result<Label> stripLabel(std::string_view code, std::string_view position);
[[nodiscard]] Result<Label> lotLabel(LabelKind kind, std::string_view code, QStringList words);
// At the post of a row's first or last vine: a row code (row_code.hpp). Errors: InvalidInput.
[[nodiscard]] Result<Label> rowEndLabel(std::string_view block, unsigned row, unsigned vineAtPost);

// A sheet of equal labels, in mm. The first label's corner lies at the margins.
struct LabelSheet {
    PaperSize paper = PaperSize::Letter;
    QSizeF label;   // width and height of one
    QPointF margin; // left and upper
    QPointF pitch;  // from one label's left or upper side to the next one's
    int columns = 1;
    int rows = 1;
    QPointF printerOffset; // what this printer puts too far right and down is taken off
    int startCell = 0;     // of a partly used sheet: the first free label, along the lines, from 0
    bool hasCutLines = false; // on plain paper: frames round the labels
};

// Sheets that hold the kind's labels on plain paper to be cut, or on a printer's own stock once
// their sizes are set.
[[nodiscard]] LabelSheet usualSheet(LabelKind kind, PaperSize paper);

// Errors: InvalidInput where labels lie over each other or off the paper (with the offset), where
// there is no cell, or the start cell is not on the sheet.
[[nodiscard]] Status checkSheet(const LabelSheet& sheet);

struct LabelPlace {
    std::size_t page = 0;
    QRectF boxMm; // on the paper, as the printer is told
};
// Where the label with that index goes; the sheet must be a good one.
[[nodiscard]] LabelPlace placeOf(const LabelSheet& sheet, std::size_t label);

// One label in a box. Errors: InvalidInput where the code would be too small to be read (modules
// under 0.4 mm), or the code's letters do not fit in their least size.
[[nodiscard]] Result<std::vector<PageItem>> labelItems(const Label& label, const QRectF& boxMm);

// All labels on as many sheets as they need. Errors: those of checkSheet() and labelItems(); of no
// labels InvalidInput.
[[nodiscard]] Result<std::vector<Page>> labelPages(std::span<const Label> labels,
                                                   const LabelSheet& sheet);

// Frames of all labels with their numbers, two rulers of 150 mm and what to do with them: printed
// on plain paper and laid over a sheet of labels. Without the printer's offset, for it is what is
// measured.
[[nodiscard]] Page testPage(const LabelSheet& sheet);

} // namespace bullace::paper
