#include "paper/label_sheet.hpp"

#include "paper/paper_words.hpp"
#include "paper/row_code.hpp"

#include "core/vineyard/label_code.hpp"
#include "core/vineyard/position.hpp"
#include "quick/words.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::paper {

namespace {

constexpr double kHairMm = 1e-6;

Error refused(const QString& words) {
    return {ErrorCode::InvalidInput, quick::toText(words), {}};
}

// "A1B2C3D4" is typed and called out as "A1B2 C3D4".
QString grouped(const std::string& code) {
    const QString text = quick::fromText(code);
    return text.left(text.size() / 2) + QLatin1Char(' ') + text.mid(text.size() / 2);
}

Result<Label> codedLabel(LabelKind kind, std::string_view code, QStringList words) {
    const auto read = vineyard::readLabelCode(code);
    if (!read) {
        return refused(PaperWords::noLabelCode(quick::fromText(code)));
    }
    return Label{kind, *read, grouped(*read), std::move(words)};
}

int cellsOf(const LabelSheet& sheet) {
    return sheet.columns * sheet.rows;
}

struct Stock {
    QSizeF label;
    int columns;
    int rows;
};

Stock stockOf(LabelKind kind) {
    switch (kind) {
    case LabelKind::Vine:
        return {{62, 66}, 3, 4};
    case LabelKind::RowEnd:
        return {{98, 48}, 2, 5};
    case LabelKind::Vial:
        return {{32, 16}, 6, 16};
    case LabelKind::WalkStrip:
        return {{27, 42}, 7, 6};
    case LabelKind::Bag:
    case LabelKind::SeedLot:
    case LabelKind::Pot:
        break;
    }
    return {{64, 32}, 3, 8};
}

} // namespace

Result<Label> vineLabel(std::string_view code, std::string_view position) {
    if (!vineyard::readPosition(position)) {
        return refused(PaperWords::noPosition(quick::fromText(position)));
    }
    return codedLabel(LabelKind::Vine, code, {quick::placeWords(position)});
}

Result<Label> stripLabel(std::string_view code, std::string_view position) {
    const auto place = vineyard::readPosition(position);
    if (!place) {
        return refused(PaperWords::noPosition(quick::fromText(position)));
    }
    return codedLabel(LabelKind::WalkStrip,
                      code,
                      {PaperWords::blockRow(quick::fromText(place->block), place->row),
                       PaperWords::vine(quick::vineWords(position))});
}

Result<Label> lotLabel(LabelKind kind, std::string_view code, QStringList words) {
    return codedLabel(kind, code, std::move(words));
}

Result<Label> rowEndLabel(std::string_view block, unsigned row, unsigned vineAtPost) {
    const std::string position = vineyard::writePosition({block, row, vineAtPost, 0});
    if (!vineyard::readPosition(position)) {
        return refused(PaperWords::noPosition(quick::fromText(position)));
    }
    RowCode code;
    code.block = block;
    code.row = row;
    return Label{
        LabelKind::RowEnd,
        writeRowCode(code),
        quick::fromText(position.substr(0, position.rfind('-'))),
        {PaperWords::blockRow(quick::fromText(block), row), PaperWords::postAtVine(vineAtPost)}};
}

LabelSheet usualSheet(LabelKind kind, PaperSize paper) {
    const Stock stock = stockOf(kind);
    LabelSheet sheet;
    sheet.paper = paper;
    sheet.label = stock.label;
    sheet.columns = stock.columns;
    sheet.rows = stock.rows;
    sheet.pitch = QPointF(stock.label.width(), stock.label.height());
    const QSizeF page = sizeMm(paper);
    sheet.margin = QPointF((page.width() - stock.columns * stock.label.width()) / 2,
                           (page.height() - stock.rows * stock.label.height()) / 2);
    sheet.hasCutLines = true;
    return sheet;
}

Status checkSheet(const LabelSheet& sheet) {
    if (sheet.columns < 1 || sheet.rows < 1 || cellsOf(sheet) > 10'000 ||
        !(sheet.label.width() > 0 && sheet.label.height() > 0)) {
        return refused(PaperWords::sheetNoCells());
    }
    const bool isWide = sheet.columns == 1 || sheet.pitch.x() >= sheet.label.width() - kHairMm;
    const bool isHigh = sheet.rows == 1 || sheet.pitch.y() >= sheet.label.height() - kHairMm;
    if (!isWide || !isHigh) {
        return refused(PaperWords::sheetOverlaps());
    }
    if (sheet.startCell < 0 || sheet.startCell >= cellsOf(sheet)) {
        return refused(PaperWords::startNotOnSheet(cellsOf(sheet)));
    }
    const QPointF first = sheet.margin - sheet.printerOffset;
    const QPointF last =
        first + QPointF((sheet.columns - 1) * sheet.pitch.x(), (sheet.rows - 1) * sheet.pitch.y());
    const QSizeF page = sizeMm(sheet.paper);
    const bool isOn = std::min(first.x(), first.y()) >= -kHairMm &&
                      last.x() + sheet.label.width() <= page.width() + kHairMm &&
                      last.y() + sheet.label.height() <= page.height() + kHairMm;
    return isOn ? Status() : Status(refused(PaperWords::sheetOffPaper()));
}

LabelPlace placeOf(const LabelSheet& sheet, std::size_t label) {
    const auto cells = static_cast<std::size_t>(cellsOf(sheet));
    const std::size_t cell = label + static_cast<std::size_t>(sheet.startCell);
    const auto onPage = static_cast<int>(cell % cells);
    const QPointF corner =
        sheet.margin - sheet.printerOffset +
        QPointF(onPage % sheet.columns * sheet.pitch.x(), onPage / sheet.columns * sheet.pitch.y());
    return {cell / cells, QRectF(corner, sheet.label)};
}

Result<std::vector<Page>> labelPages(std::span<const Label> labels, const LabelSheet& sheet) {
    if (const Status status = checkSheet(sheet); !status) {
        return status.error();
    }
    if (labels.empty()) {
        return refused(PaperWords::nothingToPrint());
    }
    std::vector<Page> pages;
    for (std::size_t i = 0; i < labels.size(); ++i) {
        const LabelPlace place = placeOf(sheet, i);
        pages.resize(place.page + 1, Page{sheet.paper, {}});
        auto items = labelItems(labels[i], place.boxMm);
        if (!items) {
            return items.error();
        }
        auto& onPage = pages.back().items;
        if (sheet.hasCutLines) {
            PageItem frame;
            frame.kind = PageItem::Frame;
            frame.boxMm = place.boxMm;
            frame.strokeMm = 0.1;
            frame.isDashed = true;
            onPage.push_back(frame);
        }
        onPage.insert(onPage.end(), items->begin(), items->end());
    }
    return pages;
}

} // namespace bullace::paper
