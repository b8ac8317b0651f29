// A drawing as data: boxes with words, joined by lines, at places in millimetres. Nothing here
// draws; a drawing that cannot be shown can be read as a table from the same data.
#pragma once

#include "core/base/result.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace bullace::report {

// Letters of a drawing are so high, with their tails: who draws with larger ones makes all of it
// larger by the same share, so that words keep their room.
inline constexpr double kDrawingTextMm = 3.3;

struct DrawingPoint {
    double x = 0; // mm from the left
    double y = 0; // mm from above
};

struct DrawingBox {
    enum Kind {
        Plain,
        Strong, // what the drawing is about: a thick edge
        Faint,  // stands back: a dashed edge
        Knot    // a small mark where lines meet
    };
    Kind kind = Plain;
    DrawingPoint at;   // its upper left corner
    double width = 30; // mm, above 0
    double height = 10;
    std::vector<std::string>
        words{};        // a line each, the first of them bold; cut short where too long
    std::string name{}; // for the table: which accession, which cross
};

struct DrawingLine {
    enum Kind { Solid, Dashed, Double };
    Kind kind = Solid;
    std::vector<DrawingPoint> points; // two at least
    // What it joins, and as what, for the table.
    std::optional<std::size_t> from{}; // boxes
    std::optional<std::size_t> to{};
    std::string name{}; // "mother"
};

// Words that stand free; `at` is the middle of their line.
struct DrawingText {
    DrawingPoint at;
    std::string words;
};

// What a kind of line or box stands for.
struct DrawingKey {
    std::optional<DrawingLine::Kind> line{};
    std::optional<DrawingBox::Kind> box{};
    std::string words;
};

struct Drawing {
    std::string title;
    double width = 0; // mm, above 0: all boxes and lines are inside
    double height = 0;
    std::vector<DrawingBox> boxes;
    std::vector<DrawingLine> lines;
    std::vector<DrawingText> texts;
    std::vector<DrawingKey> key;
    std::vector<std::string> notes; // sentences below it
};

// Whether it can be drawn. Errors: InvalidInput; the message names the box or line: a number that
// is not finite, a box without width or height, something outside of the drawing (by more than a
// tenth of a millimetre), a line of less than two points or between boxes that are not there.
[[nodiscard]] Status checkDrawing(const Drawing& drawing);

// The same data as a table: a row for each line that joins two boxes, in their order, then one for
// each box that no line joins and that is no knot.
struct DrawingRow {
    std::string from;
    std::string line;
    std::string to;
};
[[nodiscard]] std::vector<DrawingRow> tableOf(const Drawing& drawing);

// How many boxes of a kind there are.
[[nodiscard]] std::size_t countOf(const Drawing& drawing, DrawingBox::Kind kind);

} // namespace bullace::report
