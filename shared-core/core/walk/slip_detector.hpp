// Whether the values of a walk look as if they stood one vine along: somebody skipped a vine, or
// noted one twice. A CUSUM (Page 1954, Biometrika 41:100-115) of the log-likelihood ratio "shifted
// by one" against "in place", for each direction one, against what the last visit noted at the
// place and beside it.
#pragma once

#include "core/walk/stage_advance.hpp"

#include <optional>
#include <vector>

namespace bullace::walk {

// The last `vines` stops fit better one vine along.
struct Slip {
    int along = 0;       // +1: they look like the next vine in walking order; -1: the one before
    unsigned vines = 0;  // stops since the shift seems to have begun, this one included
    double evidence = 0; // the CUSUM in natural logarithms
};

// A plain value: a copy taken before add() is the undo. It needs vines that differ; in a row of one
// clone it sees nothing.
class SlipDetector {
public:
    // A stop in walking order: its value, and the last visit's values here, at the stop before and
    // at the stop after. Whole numbers: stage steps (descriptors::stageStep) or scores; others are
    // rounded. A stop without a value is not added. That all vines moved on since the last visit is
    // estimated from the whole walk.
    void add(double value,
             std::optional<double> here,
             std::optional<double> before,
             std::optional<double> after);

    [[nodiscard]] std::optional<Slip> slip() const;

    // A new row begins: a shift does not go on from one row to the next.
    void startRow();
    // A person looked and found the stops in place: the evidence so far counts for nothing.
    void putAside() { startRow(); }

private:
    struct Seen {
        short value = 0;
        std::optional<short> here;
        std::optional<short> before;
        std::optional<short> after;
    };
    struct Sum {
        double evidence = 0;
        unsigned vines = 0;
    };

    void step(const Seen& seen);
    static void grow(Sum& sum, double ratio);
    void replay();

    std::vector<Seen> row_;
    StageAdvance advance_; // of the whole walk
    Sum onward_;           // along +1
    Sum back_;             // along -1
};

} // namespace bullace::walk
