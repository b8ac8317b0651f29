#include "plots/drawing_words.hpp"

#include "quick/words.hpp"

#include <QCoreApplication>

namespace bullace::plots {

namespace {

using quick::fromText;

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(Drawings)
};

} // namespace

QString drawingSummary(const report::Drawing& drawing) {
    const auto knots = report::countOf(drawing, report::DrawingBox::Knot);
    QStringList said;
    if (!drawing.title.empty()) {
        said << Tr::tr("%1.").arg(fromText(drawing.title));
    }
    said << Tr::tr("%n box(es).", nullptr, static_cast<int>(drawing.boxes.size() - knots))
         << Tr::tr("%n line(s).", nullptr, static_cast<int>(drawing.lines.size()));
    for (const report::DrawingBox& box : drawing.boxes) {
        if (box.kind == report::DrawingBox::Strong) {
            said << Tr::tr("In the middle: %1.").arg(fromText(box.name));
        }
    }
    for (const std::string& note : drawing.notes) {
        said << fromText(note);
    }
    return said.join(QLatin1Char(' '));
}

DrawingTableText drawingTableText(const report::Drawing& drawing) {
    DrawingTableText table;
    table.header << Tr::tr("From") << Tr::tr("Line") << Tr::tr("To");
    for (const report::DrawingRow& row : report::tableOf(drawing)) {
        table.rows.push_back({fromText(row.from), fromText(row.line), fromText(row.to)});
    }
    return table;
}

} // namespace bullace::plots
