#include "field/rounds.hpp"

namespace bullace::field {

namespace {

bool isClosedAt(const vineyard::Catalogue& catalogue, std::string_view position, CivilDate today) {
    const auto read = vineyard::readPosition(position);
    const vineyard::Block* block = read ? catalogue.block(read->block) : nullptr;
    return block != nullptr && block->isClosed(today);
}

std::vector<Ask> asksOf(const vineyard::Catalogue& catalogue, const walk::Round& round) {
    std::vector<Ask> asks;
    for (const std::string& code : round.descriptors) {
        if (catalogue.descriptor(code) == nullptr) {
            continue;
        }
        const auto samples = round.samples.find(code);
        const auto precision = round.precisionPercent.find(code);
        asks.push_back({code,
                        samples == round.samples.end() ? 1 : samples->second,
                        precision == round.precisionPercent.end()
                            ? std::nullopt
                            : std::optional(precision->second)});
        if (code == "stage" && round.asksLeast) {
            asks.push_back({"stage-least", 1, {}});
        }
    }
    return asks;
}

std::vector<walk::Stop> stopsOf(const vineyard::Catalogue& catalogue,
                                const walk::Round& round,
                                const std::vector<RowProgress>& rows,
                                const WalkWish& wish,
                                CivilDate today) {
    if (walk::isListOfVines(round)) {
        std::vector<std::string> places = walk::vinesOf(round, catalogue.blocks());
        std::erase_if(places, [&](const std::string& position) {
            return isClosedAt(catalogue, position, today);
        });
        return walk::routeThrough(std::move(places), wish.end);
    }
    walk::RouteWish route;
    for (std::size_t i = wish.firstRow.value_or(0); i < rows.size(); ++i) {
        route.rows.push_back(rows[i].row);
        if (!wish.isWholeRound) {
            break;
        }
    }
    route.order = round.order;
    route.start = wish.end;
    route.everyNthRow = round.everyNthRow;
    route.bothSides = round.bothSides;
    route.share = wish.share;
    return walk::routeOf(route);
}

} // namespace

Result<WalkPlan> planWalk(store::Database& database,
                          const vineyard::Catalogue& catalogue,
                          const walk::Round& round,
                          const WalkWish& wish,
                          CivilDate today) {
    const Result<std::vector<RowProgress>> rows = rowsOn(database, catalogue, round, today);
    if (!rows) {
        return rows.error();
    }
    WalkPlan plan;
    plan.round = round.id;
    plan.title = round.title;
    plan.author = wish.author;
    plan.date = today;
    plan.asks = asksOf(catalogue, round);
    plan.stages = round.stages;
    plan.stops = stopsOf(catalogue, round, *rows, wish, today);
    plan.isOneWay = round.order == walk::Order::OneWay;
    plan.isBlind = round.isBlind;
    plan.isDecision = round.isDecision;
    plan.isOnlyWhatStandsOut = round.isOnlyWhatStandsOut;
    plan.isRepeat = round.isRepeat;
    plan.isList = walk::isListOfVines(round);
    if (plan.asks.empty()) {
        return Error{ErrorCode::InvalidInput,
                     "This round asks for nothing that this tablet knows. Sync, or ask the office "
                     "for a newer version.",
                     {}};
    }
    if (plan.stops.empty()) {
        return Error{ErrorCode::InvalidInput,
                     "None of this round's rows can be walked today: they are not on the plan any "
                     "more, or their block is closed.",
                     {}};
    }
    return plan;
}

} // namespace bullace::field
