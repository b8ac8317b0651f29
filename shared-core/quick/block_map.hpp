// The block map: rows and vines in true planting order as cells, coloured by what was noted there.
// Plain functions over a plain table, so that the same picture goes on the glass, on paper and
// through a test.
#pragma once

#include <QColor>
#include <QPointF>
#include <QRectF>
#include <QString>
#include <QStringList>

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

QT_BEGIN_NAMESPACE
class QPainter;
QT_END_NAMESPACE

namespace bullace::quick {

struct BlockMapCell {
    // What is to be told of a vine. Each but Value has a shape of its own, so that none is told by
    // colour alone; Empty is a place where nothing was ever planted, or nothing on that date.
    enum State { Value, NotObserved, Missing, Dead, Open, Empty };

    QString position; // "B2-07-14a"
    int vine = 0;     // its number along the wire; 14a has 14, too, and shares that place
    State state = Empty;
    std::optional<double> value; // on the scale; a Value without one is drawn without a fill
    QString text;                // a few symbols, written into the cell where they fit
    bool isMarked = false;       // something looks wrong there: a finding

    bool operator==(const BlockMapCell&) const = default;
};
inline constexpr std::size_t kBlockMapStates = 6;

struct BlockMapRow {
    enum Walk { Unwalked, FromFirst, FromLast };

    QString block;                   // where it differs from the row before, a heading stands above
    QString number;                  // as it is said
    Walk walk = Unwalked;            // the end at which the walk begins
    std::vector<BlockMapCell> cells; // by vine along the wire, 14 before 14a
};

struct BlockMapStep {
    QString label;   // "12 to 14"
    double upTo = 0; // the greatest value of the step; not looked at for classes
};

// What the fills mean. Ordered: up to seven steps, from low to high. Classes: up to eight, each
// with a marker beside its colour; a cell's value is the class's place in `steps`. Diverging: up to
// seven steps, an odd number, the middle one for no difference. Plain: no fills.
struct BlockMapScale {
    enum Kind { Plain, Ordered, Classes, Diverging };

    Kind kind = Plain;
    QString title; // what the fills tell: "Bud break"
    QString unit;  // "percent"; empty where there is none
    std::vector<BlockMapStep> steps;
};

struct BlockMapPicture {
    QString title;     // one line above the map; may be empty
    QStringList notes; // lines below it: date, how many, how missing values were treated
    std::vector<BlockMapRow> rows; // in planting order
    BlockMapScale scale;
    std::optional<double> northDegrees; // where north is, clockwise from the picture's top
};

struct BlockMapLook {
    QColor ink = Qt::black;
    QColor paper = Qt::white;
    QString family;
    int textPx = 12;   // of all words, in the painter's units
    qreal pxPerMm = 4; // the painter's units in a millimetre
    double zoom = 1;   // 1 shows all; at least 1
    QPointF pan;       // how far the cells are moved to the left and up, in the painter's units
};

struct BlockMapPlace {
    std::size_t row = 0;
    std::size_t cell = 0;

    bool operator==(const BlockMapPlace&) const = default;
};

// Steps of even width from `least` to `greatest`, at most `most` (1 to 7), their bounds at round
// numbers (1, 2 or 5 times a power of ten apart); the first and last take what lies outside. Labels
// are written in the language of the screen. For a diverging scale there are seven, symmetric about
// 0, and the greatest difference lies in an outer one. Values must be finite; where greatest is not
// above least there is one step.
[[nodiscard]] std::vector<BlockMapStep>
orderedSteps(double least, double greatest, std::size_t most);
[[nodiscard]] std::vector<BlockMapStep> divergingSteps(double greatestDifference);

// The place of a value among the steps; nothing for a Plain scale, for no value and for a class
// that is not in the list.
[[nodiscard]] std::optional<std::size_t> stepOf(const BlockMapScale& scale,
                                                const std::optional<double>& value);

struct BlockMapCounts {
    std::array<int, kBlockMapStates> states{}; // by BlockMapCell::State
    std::vector<int> steps;                    // of the scale, as many as it has
    int marked = 0;
    int cells = 0;
};
[[nodiscard]] BlockMapCounts countsOf(const BlockMapPicture& picture);

// The map in words, for who does not see it: how many rows and vines, what was found, what is
// missing.
[[nodiscard]] QString blockMapSummary(const BlockMapPicture& picture);
// One cell in words: "B2 · row 7 · vine 14: 65, marked".
[[nodiscard]] QString blockMapWords(const BlockMapPicture& picture, const BlockMapPlace& place);

// Draws the picture into `size` at the painter's origin, with its legend and the counts in it, and
// leaves the painter as it was. Missing: an open frame with a cross. Dead: a filled dot. Not
// observed: hatch. Open: a frame of which one half is filled. Empty: a dash on the wire. Marked: a
// triangle in the cell's corner. Rows run from left to right between their two posts; an arrow
// stands at the post where the walk begins.
void paintBlockMap(QPainter& painter,
                   const BlockMapPicture& picture,
                   const BlockMapLook& look,
                   QSizeF size);

} // namespace bullace::quick
