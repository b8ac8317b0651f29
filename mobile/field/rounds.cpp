#include "field/rounds.hpp"

#include "core/journal/subject.hpp"

#include <algorithm>
#include <set>

namespace bullace::field {

namespace {

// Vines of a round in walking order, whatever its shape.
std::vector<std::string> placesOf(const Catalogue& catalogue, const walk::Round& round) {
    return walk::vinesOf(round, catalogue.blocks());
}

bool isClosedAt(const Catalogue& catalogue, std::string_view position, CivilDate today) {
    const auto read = vineyard::readPosition(position);
    const vineyard::Block* block = read ? catalogue.block(read->block) : nullptr;
    return block != nullptr && block->isClosed(today);
}

std::string firstKnown(const Catalogue& catalogue, const walk::Round& round) {
    for (const std::string& code : round.descriptors) {
        if (catalogue.descriptor(code) != nullptr) {
            return code;
        }
    }
    return {};
}

// Whether the vine has been noted for the round: since its first day, or today where it has none.
Result<bool> isNoted(store::Database& database,
                     const walk::Round& round,
                     const std::string& code,
                     const std::string& position,
                     CivilDate today) {
    const std::string place = "obs/" + position + "/";
    bool isThere = false;
    const Status read =
        database.eachStateBetween(place + writeDate(round.from.value_or(today)),
                                  place + writeDate(today) + "~",
                                  [&](const store::StateRow& row) {
                                      isThere =
                                          journal::readSubject(row.subject).descriptor == code &&
                                          row.state != merge::State::Retracted;
                                      return !isThere;
                                  });
    if (!read) {
        return read.error();
    }
    return isThere;
}

Status addAuthors(store::Database& database,
                  const std::string& position,
                  CivilDate today,
                  std::set<std::string>& people) {
    const std::string day = "obs/" + position + "/" + writeDate(today);
    std::vector<std::string> subjects;
    if (Status read = database.eachState(day,
                                         [&](const store::StateRow& row) {
                                             subjects.push_back(row.subject);
                                             return true;
                                         });
        !read) {
        return read;
    }
    for (const std::string& subject : subjects) {
        const auto heads = database.heads(subject);
        if (!heads) {
            return heads.error();
        }
        for (const store::HeadRow& head : *heads) {
            const auto entry = journal::readEntry(head.entry);
            if (entry) {
                people.insert(std::string(entry->author));
            }
        }
    }
    return {};
}

std::vector<Ask> asksOf(const Catalogue& catalogue, const walk::Round& round) {
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

std::vector<walk::Stop> stopsOf(const Catalogue& catalogue,
                                const walk::Round& round,
                                const std::vector<RowProgress>& rows,
                                const WalkWish& wish,
                                CivilDate today) {
    if (walk::isListOfVines(round)) {
        std::vector<std::string> places = placesOf(catalogue, round);
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

Result<std::vector<RoundProgress>>
roundsOn(store::Database& database, const Catalogue& catalogue, CivilDate today) {
    std::vector<RoundProgress> all;
    for (const walk::Round& round : catalogue.rounds()) {
        if (!round.isOpenOn(today)) {
            continue;
        }
        RoundProgress progress;
        progress.round = &round;
        progress.isLate = round.by && *round.by < today;
        progress.gone = walk::goneFromPlan(round, catalogue.blocks());
        for (const std::string& code : round.descriptors) {
            if (catalogue.descriptor(code) == nullptr) {
                progress.unknown.push_back(code);
            }
        }
        const std::string code = firstKnown(catalogue, round);
        for (const std::string& position : placesOf(catalogue, round)) {
            ++progress.stops;
            const Result<bool> noted = isNoted(database, round, code, position, today);
            if (!noted) {
                return noted.error();
            }
            progress.done += *noted ? 1U : 0U;
        }
        all.push_back(std::move(progress));
    }
    std::stable_sort(all.begin(), all.end(), [](const RoundProgress& a, const RoundProgress& b) {
        const CivilDate never{
            std::chrono::year(9999), std::chrono::month(12), std::chrono::day(31)};
        return a.round->by.value_or(never) < b.round->by.value_or(never);
    });
    return all;
}

Result<std::vector<RowProgress>> rowsOn(store::Database& database,
                                        const Catalogue& catalogue,
                                        const walk::Round& round,
                                        CivilDate today) {
    std::vector<RowProgress> rows;
    const std::string code = firstKnown(catalogue, round);
    for (walk::RowPlan& plan : walk::rowsOf(round, catalogue.blocks())) {
        const vineyard::Block* block = catalogue.block(plan.block);
        if (block != nullptr && block->isClosed(today)) {
            continue;
        }
        plan.between = catalogue.between(plan.block, plan.row);
        RowProgress progress{plan, 0, 0, {}};
        walk::RouteWish along;
        along.rows = {plan};
        std::set<std::string> people;
        for (const walk::Stop& stop : walk::routeOf(along)) {
            ++progress.stops;
            const Result<bool> noted = isNoted(database, round, code, stop.position, today);
            if (!noted) {
                return noted.error();
            }
            progress.done += *noted ? 1U : 0U;
            if (Status added = addAuthors(database, stop.position, today, people); !added) {
                return added.error();
            }
        }
        progress.people.assign(people.begin(), people.end());
        rows.push_back(std::move(progress));
    }
    return rows;
}

std::vector<BlockCaution>
cautionsOf(const Catalogue& catalogue, const walk::Round& round, CivilDate today) {
    std::set<std::string, std::less<>> codes;
    for (const std::string& position : placesOf(catalogue, round)) {
        const auto read = vineyard::readPosition(position);
        if (read) {
            codes.insert(std::string(read->block));
        }
    }
    std::vector<BlockCaution> cautions;
    for (const vineyard::Block& block : catalogue.blocks()) {
        if (codes.count(block.code) > 0 && (block.isClosed(today) || !block.mayTaste(today))) {
            cautions.push_back({block.code,
                                block.name,
                                block.isClosed(today) ? block.closedUntil : std::nullopt,
                                block.noTastingUntil});
        }
    }
    return cautions;
}

Result<WalkPlan> planWalk(store::Database& database,
                          const Catalogue& catalogue,
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
