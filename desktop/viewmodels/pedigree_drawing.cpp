#include "desk/pedigree_drawing.hpp"

#include "quick/trade_words.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>

namespace bullace::desk {

using breeding::LayoutKind;
using breeding::LayoutLine;
using quick::fromText;
using quick::toText;
using report::DrawingBox;
using report::DrawingLine;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(PedigreeDrawing)
};

constexpr double kBoxWideMm = 36;
constexpr double kBoxHighMm = 14;
constexpr double kKnotMm = 2.6;
constexpr double kBesideMm = 41; // from one node of a layer to the next
constexpr double kLayerMm = 17;
constexpr double kAsideMm = 13; // of the dots, from the middle where the lines are
constexpr double kMoreMm = 2.6; // room for the dots of relatives that are not drawn

report::DrawingPoint placeOf(const breeding::LayoutPoint& at) {
    return {at.x * kBesideMm + kBoxWideMm / 2, at.y * kLayerMm + kBoxHighMm / 2 + 2 * kMoreMm};
}

DrawingBox boxAround(report::DrawingPoint middle, double width, double height) {
    return {
        DrawingBox::Plain, {middle.x - width / 2, middle.y - height / 2}, width, height, {}, {}};
}

DrawingBox individualBox(const season::StationNotes& notes,
                         const std::string& id,
                         const breeding::LayoutNode& node) {
    DrawingBox box = boxAround(placeOf(node.at), kBoxWideMm, kBoxHighMm);
    box.name = id;
    box.words = {id};
    const auto at = notes.accession(id);
    if (!at) {
        box.kind = DrawingBox::Faint;
        box.words.push_back(toText(Tr::tr("not in the collection")));
    } else {
        const season::NotedAccession& accession = notes.accessions[*at];
        const QString name = nameAlone(accession);
        if (!name.isEmpty()) {
            box.words.push_back(toText(name));
        }
        if (!accession.status.empty()) {
            box.words.push_back(toText(quick::tradeWord(accession.status)));
        }
    }
    box.kind = node.isFocus ? DrawingBox::Strong : box.kind;
    return box;
}

struct LineLook {
    DrawingLine::Kind kind;
    QString name;
};

LineLook lookOf(LayoutLine line) {
    switch (line) {
    case LayoutLine::Mother:
        return {DrawingLine::Solid, Tr::tr("mother")};
    case LayoutLine::Pollen:
        return {DrawingLine::Dashed, Tr::tr("father")};
    case LayoutLine::Selfing:
        return {DrawingLine::Double, Tr::tr("selfing")};
    case LayoutLine::Offspring:
        return {DrawingLine::Solid, Tr::tr("offspring")};
    }
    return {};
}

// From the foot of a box to the head of another, and upright past the boxes beside which it goes
// by: so that no line runs behind a box.
std::vector<report::DrawingPoint> wayOf(const breeding::PedigreeLayout& layout,
                                        const breeding::LayoutEdge& edge) {
    constexpr double kHalf = kBoxHighMm / 2;
    std::vector<report::DrawingPoint> way;
    for (std::size_t i = 0; i < edge.points.size(); ++i) {
        const report::DrawingPoint at = placeOf(edge.points[i]);
        const bool isFirst = i == 0;
        const bool isLast = i + 1 == edge.points.size();
        const bool isKnot = (isFirst && layout.nodes[edge.from].kind == LayoutKind::Cross) ||
                            (isLast && layout.nodes[edge.to].kind == LayoutKind::Cross);
        if (isKnot) {
            way.push_back(at);
            continue;
        }
        if (!isFirst) {
            way.push_back({at.x, at.y - kHalf});
        }
        if (!isLast) {
            way.push_back({at.x, at.y + kHalf});
        }
    }
    return way;
}

void addMore(const breeding::LayoutNode& node, report::Drawing& drawing) {
    const report::DrawingPoint at = placeOf(node.at);
    const double away = kBoxHighMm / 2 + kMoreMm / 2;
    if (node.hasHiddenParents) {
        drawing.texts.push_back({{at.x - kAsideMm, at.y - away}, "…"});
    }
    if (node.hasHiddenOffspring) {
        drawing.texts.push_back({{at.x - kAsideMm, at.y + away}, "…"});
    }
}

// A cross is called by its parents.
void nameKnots(report::Drawing& drawing) {
    for (const DrawingLine& line : drawing.lines) {
        if (!line.from || !line.to || drawing.boxes[*line.to].kind != DrawingBox::Knot) {
            continue;
        }
        std::string& name = drawing.boxes[*line.to].name;
        const std::string& parent = drawing.boxes[*line.from].name;
        if (line.kind == DrawingLine::Double) {
            name = parent + " × " + parent;
        } else if (line.kind == DrawingLine::Dashed) {
            name += " × " + parent;
        } else {
            name = parent + name;
        }
    }
}

std::vector<report::DrawingKey> keyOf(const report::Drawing& drawing) {
    bool isSelfed = false;
    bool hasFaint = false;
    for (const DrawingLine& line : drawing.lines) {
        isSelfed = isSelfed || line.kind == DrawingLine::Double;
    }
    for (const DrawingBox& box : drawing.boxes) {
        hasFaint = hasFaint || box.kind == DrawingBox::Faint;
    }
    std::vector<report::DrawingKey> key{
        {DrawingLine::Solid, {}, toText(Tr::tr("mother, and offspring"))},
        {DrawingLine::Dashed, {}, toText(Tr::tr("father"))}};
    if (isSelfed) {
        key.push_back({DrawingLine::Double, {}, toText(Tr::tr("selfing"))});
    }
    key.push_back({{}, DrawingBox::Knot, toText(Tr::tr("a cross"))});
    if (hasFaint) {
        key.push_back({{}, DrawingBox::Faint, toText(Tr::tr("not in the collection"))});
    }
    return key;
}

} // namespace

QString nameAlone(const season::NotedAccession& accession) {
    const QString words = fromText(accession.words);
    const qsizetype space = words.indexOf(QLatin1Char(' '));
    return space < 0 ? QString() : words.mid(space + 1);
}

report::Drawing pedigreeDrawing(const season::StationNotes& notes,
                                const breeding::Pedigree& pedigree,
                                const breeding::PedigreeLayout& layout,
                                const QString& title) {
    report::Drawing drawing;
    drawing.title = toText(title);
    drawing.width = layout.width * kBesideMm + kBoxWideMm;
    drawing.height = layout.height * kLayerMm + kBoxHighMm + 4 * kMoreMm;
    for (const breeding::LayoutNode& node : layout.nodes) {
        if (node.kind == LayoutKind::Cross) {
            drawing.boxes.push_back(boxAround(placeOf(node.at), kKnotMm, kKnotMm));
            drawing.boxes.back().kind = DrawingBox::Knot;
        } else {
            const auto individual = static_cast<std::size_t>(node.individual);
            drawing.boxes.push_back(individualBox(notes, pedigree.names[individual], node));
            addMore(node, drawing);
        }
    }
    for (const breeding::LayoutEdge& edge : layout.edges) {
        const LineLook look = lookOf(edge.line);
        DrawingLine line{look.kind, {}, edge.from, edge.to, toText(look.name)};
        line.points = wayOf(layout, edge);
        drawing.lines.push_back(std::move(line));
    }
    nameKnots(drawing);
    drawing.key = keyOf(drawing);
    if (!drawing.texts.empty()) {
        drawing.notes.push_back(toText(Tr::tr("… stands where more relatives are not drawn.")));
    }
    return drawing;
}

} // namespace bullace::desk
