// The order in which one person passes the places of a walk: along rows, there and back along both
// sides, or through chosen vines; and how several people share the places without a word between
// their tablets.
#pragma once

#include <string>
#include <vector>

namespace bullace::walk {

// Of the wire, seen by somebody who stands at the row's first vine and looks along it.
enum class Side { Whole, Left, Right };

struct Stop {
    std::string position;
    Side side = Side::Whole;

    friend bool operator==(const Stop&, const Stop&) = default;
};

enum class Order {
    Serpentine, // the next row from the end at which one is
    OneWay,     // each row from the same end
};

enum class End { First, Last }; // of a row: at its first or at its last vine

// A row as the plan has it. Missing and dead vines are places too.
struct RowPlan {
    std::string block;
    unsigned row = 0;
    unsigned vines = 0;               // places along the wire, numbered from 1
    std::vector<std::string> between; // positions of vines planted between two, like B2-07-14a
};

// What one of several people takes: `mine` from 0, below `of`. What is whose depends on the places
// alone, not on the end at which somebody begins, so that tablets that never met agree.
struct Share {
    unsigned mine = 0;
    unsigned of = 1;
    enum class By {
        Stops, // vine numbers: for two people the odd (0) and the even (1) ones; 14a goes with 14
        Sides, // 0 the left, 1 the right side of every row; `of` must be 2
        Rows,  // every of-th of the rows that are walked
    } by = By::Stops;
};

struct RouteWish {
    std::vector<RowPlan> rows; // in walking order
    Order order = Order::Serpentine;
    End start = End::First;   // of the first row
    unsigned everyNthRow = 1; // 2: the first, third, fifth row of the list
    bool bothSides = false;   // up one side of a row and back along the other
    Share share;
};

// The stops of one person in the order in which she passes them. With both sides she ends each row
// where she began it and a serpentine goes on from there; the wire stays on the same hand: from the
// first vine the left side first, from the last vine the right one. A share that cannot be (mine
// not below of, sides of other than two people) and everyNthRow 0 have no stops.
[[nodiscard]] std::vector<Stop> routeOf(const RouteWish& wish);

// A chosen list of vines, each once, along the rows as a serpentine; `start` is the end of the
// first row. What is no position stands last, in the order of its bytes.
[[nodiscard]] std::vector<Stop> routeThrough(std::vector<std::string> positions, End start);

} // namespace bullace::walk
