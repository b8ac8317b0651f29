// A plot in the words and numbers of the screen's language: its axes, its notes, itself for who
// does not see it, and the table of its data.
#pragma once

#include "core/report/plot.hpp"

#include <QString>
#include <QStringList>

#include <vector>

namespace bullace::plots {

[[nodiscard]] QString axisTitle(const report::PlotAxis& axis); // "Yield (kg)"
[[nodiscard]] QString tickWords(const report::PlotTick& tick); // "14 May", "0.5", "A022"
// How many, from when to when, how what is missing was treated, and the cautions: a line each.
[[nodiscard]] QStringList noteLines(const report::PlotNotes& notes);
// What is drawn, for each series where it begins, ends, is lowest and highest, and the notes.
[[nodiscard]] QString plotSummary(const report::Plot& plot);
[[nodiscard]] QString nothingNoted(); // in place of data

struct PlotTableText {
    QStringList header;
    std::vector<QStringList> rows;
};
[[nodiscard]] PlotTableText plotTableText(const report::Plot& plot);

} // namespace bullace::plots
