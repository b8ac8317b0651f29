// Runs of vines: planted, taken out, called by other numbers.
#include "office/collection.hpp"

#include "core/journal/json_value.hpp"
#include "store/json_reader.hpp"

#include <algorithm>

namespace bullace::office {

using vineyard::Position;

namespace {

store::Draft catalogDraft(const std::string& subject,
                          Bytes value,
                          const std::string& author,
                          const std::string& why) {
    store::Draft draft;
    draft.author = author;
    draft.kind = journal::Kind::Catalog;
    draft.subject = subject;
    draft.value = std::move(value);
    if (!why.empty()) {
        draft.why = why;
    }
    return draft;
}

// Adds the draft over what stands there now.
Status add(store::Database& database, store::Draft draft, Act& act) {
    auto heads = headsOf(database, draft.subject);
    if (!heads) {
        return heads.error();
    }
    draft.over = *heads;
    act.seen.push_back({draft.subject, std::move(*heads)});
    act.drafts.push_back(std::move(draft));
    return {};
}

Bytes plantingValue(const std::string& accession, const std::optional<CivilDate>& until) {
    return journal::MapValue()
        .add("accession", journal::textValue(accession))
        .add("until", until ? journal::textValue(writeDate(*until)) : journal::nullValue())
        .bytes();
}

Status addSeedling(store::Database& database,
                   const std::string& family,
                   const std::string& id,
                   const std::string& author,
                   const std::string& why,
                   Act& act) {
    Status added = add(
        database,
        catalogDraft("accession/" + id + "/status", journal::textValue("seedling"), author, why),
        act);
    for (const char* parent : {"mother", "father"}) {
        const auto row = database.state("accession/" + family + "/" + parent);
        if (!row) {
            return row.error();
        }
        const Result<Bytes> value =
            *row ? store::readJson((*row)->valueJson) : Result<Bytes>(Bytes{});
        if (added && *row && !(*row)->valueJson.empty() && value) {
            added = add(
                database, catalogDraft("accession/" + id + "/" + parent, *value, author, why), act);
        }
    }
    return added;
}

Error notOnPlan(const std::string& position) {
    return {ErrorCode::InvalidInput,
            position + " is not on the plan. Give its row more places first.",
            {}};
}

} // namespace

Result<std::vector<std::string>> runOf(const std::string& first, const std::string& last) {
    const auto from = vineyard::readPosition(first);
    const auto to = vineyard::readPosition(last);
    if (!from || !to || from->block != to->block || from->row != to->row || to->vine < from->vine ||
        (from->letter != 0 && first != last)) {
        return Error{
            ErrorCode::InvalidInput,
            "A run goes from one vine to a later one of the same row: B2-07-14 to B2-07-30.",
            {}};
    }
    std::vector<std::string> run;
    if (first == last) {
        return std::vector<std::string>{first};
    }
    for (unsigned vine = from->vine; vine <= to->vine; ++vine) {
        run.push_back(vineyard::writePosition({from->block, from->row, vine, 0}));
    }
    return run;
}

Result<Act> plantRun(store::Database& database,
                     const vineyard::Catalogue& catalogue,
                     const PlantingRun& run,
                     const std::string& author,
                     const std::string& why) {
    const auto positions = runOf(run.first, run.last);
    if (!positions) {
        return positions.error();
    }
    if (run.accession.empty() || run.accession.size() > 56 ||
        run.accession.find('/') != std::string::npos) {
        return Error{ErrorCode::InvalidInput, "Say which accession is planted.", {}};
    }
    Act act;
    std::size_t number = 0;
    for (const std::string& position : *positions) {
        const auto read = vineyard::readPosition(position);
        const vineyard::Block* block = catalogue.block(read->block);
        if (block == nullptr || !vineyard::isOnPlan(*block, *read)) {
            return notOnPlan(position);
        }
        const std::string accession =
            run.isNumbered ? run.accession + "-" + std::to_string(++number) : run.accession;
        Status added = run.isNumbered
                           ? addSeedling(database, run.accession, accession, author, why, act)
                           : Status{};
        added = added ? add(database,
                            catalogDraft("planting/" + position + "/" + writeDate(run.from),
                                         plantingValue(accession, {}),
                                         author,
                                         why),
                            act)
                      : std::move(added);
        if (!added) {
            return added.error();
        }
    }
    return act;
}

Result<Act> removeRun(store::Database& database,
                      const vineyard::Catalogue& catalogue,
                      const std::string& first,
                      const std::string& last,
                      CivilDate until,
                      const std::string& author,
                      const std::string& why) {
    const auto positions = runOf(first, last);
    if (!positions) {
        return positions.error();
    }
    Act act;
    for (const std::string& position : *positions) {
        const vineyard::Planting* planting = catalogue.plantings().at(position, until);
        if (planting == nullptr) {
            return Error{ErrorCode::InvalidInput,
                         "Nothing stands at " + position + " on " + writeDate(until) + ".",
                         {}};
        }
        if (Status added =
                add(database,
                    catalogDraft("planting/" + planting->position + "/" + writeDate(planting->from),
                                 plantingValue(planting->accession, until),
                                 author,
                                 why),
                    act);
            !added) {
            return added.error();
        }
    }
    return act;
}

Result<Act> renumberRun(store::Database& database,
                        const vineyard::Catalogue& catalogue,
                        const std::string& first,
                        const std::string& last,
                        int by,
                        CivilDate from,
                        const std::string& author,
                        const std::string& why) {
    const auto positions = runOf(first, last);
    if (!positions) {
        return positions.error();
    }
    journal::MapValue map;
    const Position begin = *vineyard::readPosition(positions->front());
    const vineyard::Block* block = catalogue.block(begin.block);
    for (const std::string& position : *positions) {
        const Position old = *vineyard::readPosition(position);
        const std::int64_t vine = std::int64_t{old.vine} + by;
        if (by == 0 || vine < 1 || vine > vineyard::kGreatestNumber) {
            return Error{ErrorCode::InvalidInput,
                         "The numbers would go below 1. Vines are numbered from 1.",
                         {}};
        }
        Position fresh = old;
        fresh.vine = static_cast<unsigned>(vine);
        const std::string target = vineyard::writePosition(fresh);
        const bool isOurs =
            std::find(positions->begin(), positions->end(), target) != positions->end();
        if (!isOurs && catalogue.plantings().at(target, from) != nullptr) {
            return Error{
                ErrorCode::InvalidInput, "Another vine stands at " + target + " on that day.", {}};
        }
        if (block == nullptr || !vineyard::isOnPlan(*block, fresh)) {
            return notOnPlan(target);
        }
        map.add(position, journal::textValue(target));
    }
    Act act;
    const std::string subject =
        "block/" + std::string(begin.block) + "/renumber-" + writeDate(from);
    const auto row = database.state(subject);
    if (!row) {
        return row.error();
    }
    if (*row) {
        return Error{
            ErrorCode::InvalidInput,
            "Vines of this block have been renumbered on that day already. Take another day.",
            {}};
    }
    if (Status added = add(database, catalogDraft(subject, map.bytes(), author, why), act);
        !added) {
        return added.error();
    }
    return act;
}

} // namespace bullace::office
