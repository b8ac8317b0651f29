#include "desk/print_pages.hpp"

#include "desk/desk_words.hpp"
#include "office/bench.hpp"
#include "paper/paper_words.hpp"

#include "quick/trade_words.hpp"

#include <QCoreApplication>

#include <algorithm>

namespace bullace::desk {

using paper::LabelKind;
using quick::fromText;
using quick::toText;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(PrintPages)
};

constexpr std::string_view kLot = "lot:";

bool isOfVines(LabelKind kind) {
    return kind == LabelKind::Vine || kind == LabelKind::WalkStrip;
}

Error refused(const QString& words) {
    return {ErrorCode::InvalidInput, toText(words), {}};
}

// "B2-07" of a position in it.
std::string rowOf(std::string_view position) {
    return std::string(position.substr(0, position.rfind('-')));
}

std::vector<std::string> rowsOfBlock(const vineyard::Block& block) {
    std::vector<std::string> rows;
    for (const vineyard::Row& row : block.rows) {
        rows.push_back(rowOf(vineyard::writePosition({block.code, row.number, 1, 0})));
    }
    return rows;
}

QStringList lotWords(const vineyard::Catalogue& catalogue, std::string_view id) {
    for (const vineyard::Lot& lot : catalogue.lots()) {
        if (lot.id == id) {
            QStringList words{
                fromText(lot.number.empty() ? lot.id : lot.number),
                Tr::tr("%1 of %2").arg(quick::tradeWord(lot.kind), fromText(lot.from))};
            return words;
        }
    }
    return {fromText(id)};
}

Result<paper::Label>
labelOf(const vineyard::Catalogue& catalogue, LabelKind kind, const office::Labelled& one) {
    if (kind == LabelKind::Vine) {
        return paper::vineLabel(one.code, one.place);
    }
    if (kind == LabelKind::WalkStrip) {
        return paper::stripLabel(one.code, one.place);
    }
    return paper::lotLabel(
        kind, one.code, lotWords(catalogue, std::string_view(one.place).substr(kLot.size())));
}

Result<std::vector<paper::Label>> rowEnds(const vineyard::Catalogue& catalogue,
                                          const PrintWish& wish) {
    const auto rows = rowsFor(catalogue, wish);
    if (!rows) {
        return rows.error();
    }
    std::vector<paper::Label> labels;
    for (const std::string& text : *rows) {
        const auto position = vineyard::readPosition(text + "-01");
        const vineyard::Block* block = catalogue.block(position->block);
        for (const vineyard::Row& row : block->rows) {
            for (const unsigned vine : {1U, row.vines}) {
                if (row.number != position->row) {
                    continue;
                }
                auto label = paper::rowEndLabel(block->code, row.number, vine);
                if (!label) {
                    return label.error();
                }
                labels.push_back(std::move(*label));
            }
        }
    }
    return labels;
}

paper::RowSheet sheetOf(const vineyard::Catalogue& catalogue,
                        const PrintWish& wish,
                        const vineyard::Block& block,
                        const vineyard::Row& row,
                        CivilDate today) {
    const walk::Round* round = catalogue.round(wish.of);
    paper::RowSheet sheet;
    sheet.paper = wish.size;
    sheet.block = block.code;
    sheet.row = row.number;
    sheet.isFromLast = wish.isFromLast;
    sheet.vines = paper::vinesOf(catalogue, block, row, today, wish.isFromLast);
    sheet.cautions = paper::cautionsOf(block, today);
    if (round != nullptr) {
        sheet.round = round->id;
        sheet.roundTitle = fromText(round->title);
    }
    for (const std::string& code : round != nullptr ? round->descriptors : wish.descriptors) {
        const vineyard::Asked* asked = catalogue.descriptor(code);
        if (asked == nullptr) {
            continue;
        }
        const unsigned samples =
            round != nullptr && round->samples.contains(code) ? round->samples.at(code) : 1U;
        const auto questions =
            paper::questionsOf(*asked,
                               static_cast<int>(samples),
                               round != nullptr ? round->stages : std::vector<std::int64_t>{});
        sheet.questions.insert(sheet.questions.end(), questions.begin(), questions.end());
    }
    return sheet;
}

} // namespace

Result<std::vector<std::string>>
placesFor(const vineyard::Catalogue& catalogue, const PrintWish& wish, CivilDate today) {
    if (!wish.kind || *wish.kind == LabelKind::RowEnd) {
        return rowsFor(catalogue, wish);
    }
    std::vector<std::string> places;
    if (const vineyard::Block* block = catalogue.block(wish.of)) {
        places = vineyard::positionsOf(*block);
    } else {
        auto meant = office::placesMeant(catalogue, wish.of, today);
        if (!meant) {
            return meant;
        }
        places = std::move(*meant);
    }
    const bool isVines = isOfVines(*wish.kind);
    std::erase_if(places, [isVines](const std::string& place) {
        return std::string_view(place).starts_with(kLot) == isVines;
    });
    if (places.empty()) {
        return refused(isVines ? Tr::tr("Labels for vines are of a block, a row, a run or an "
                                        "accession.")
                               : Tr::tr("Labels of this kind are of lots: a lot, or a kind of "
                                        "lots like juice."));
    }
    return places;
}

Result<std::vector<paper::Page>> labelPagesFor(const vineyard::Catalogue& catalogue,
                                               const PrintWish& wish,
                                               const std::vector<office::Labelled>& labels) {
    paper::LabelSheet sheet = paper::usualSheet(*wish.kind, wish.size);
    sheet.startCell = wish.firstFree - 1;
    sheet.printerOffset = wish.printerOffset;
    if (*wish.kind == LabelKind::RowEnd) {
        const auto ends = rowEnds(catalogue, wish);
        return ends ? paper::labelPages(*ends, sheet)
                    : Result<std::vector<paper::Page>>(ends.error());
    }
    std::vector<paper::Label> made;
    for (const office::Labelled& one : labels) {
        auto label = labelOf(catalogue, *wish.kind, one);
        if (!label) {
            return label.error();
        }
        made.push_back(std::move(*label));
    }
    return paper::labelPages(made, sheet);
}

Result<std::vector<std::string>> rowsFor(const vineyard::Catalogue& catalogue,
                                         const PrintWish& wish) {
    std::vector<std::string> rows;
    if (const walk::Round* round = catalogue.round(wish.of)) {
        for (const walk::RowPlan& row : walk::rowsOf(*round, catalogue.blocks())) {
            rows.push_back(rowOf(vineyard::writePosition({row.block, row.row, 1, 0})));
        }
    } else if (const vineyard::Block* block = catalogue.block(wish.of)) {
        rows = rowsOfBlock(*block);
    } else {
        for (const vineyard::Block& one : catalogue.blocks()) {
            for (const std::string& row : rowsOfBlock(one)) {
                if (row == wish.of) {
                    rows.push_back(row);
                }
            }
        }
    }
    if (rows.empty()) {
        return refused(
            Tr::tr("\"%1\" is no row, no block and no round along rows.").arg(fromText(wish.of)));
    }
    return rows;
}

Result<std::vector<paper::Page>>
sheetPagesFor(const vineyard::Catalogue& catalogue, const PrintWish& wish, CivilDate today) {
    const auto rows = rowsFor(catalogue, wish);
    if (!rows) {
        return rows.error();
    }
    std::vector<paper::Page> pages;
    for (const std::string& text : *rows) {
        const auto position = vineyard::readPosition(text + "-01");
        const vineyard::Block* block = catalogue.block(position->block);
        for (const vineyard::Row& row : block->rows) {
            if (row.number != position->row) {
                continue;
            }
            auto more = paper::rowSheetPages(sheetOf(catalogue, wish, *block, row, today));
            if (!more) {
                return more.error();
            }
            std::move(more->begin(), more->end(), std::back_inserter(pages));
        }
    }
    return pages;
}

} // namespace bullace::desk
