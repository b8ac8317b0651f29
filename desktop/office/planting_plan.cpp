#include "office/planting_plan.hpp"

#include "core/journal/json_value.hpp"
#include "store/read_catalogue.hpp"

#include <algorithm>
#include <map>
#include <set>

namespace bullace::office {

using trials::PlannedVine;
using vineyard::ReplicateRun;

namespace {

constexpr std::size_t kMostInAct = 9'999; // with the block's replicates 10,000 entries

Error invalid(const std::string& message) {
    return {ErrorCode::InvalidInput, message, {}};
}

// What stands there on the day, or is to stand there later; empty for a free place.
std::string
standingAt(const vineyard::Catalogue& catalogue, const std::string& position, CivilDate day) {
    if (const vineyard::Planting* now = catalogue.plantings().at(position, day)) {
        return now->accession;
    }
    for (const vineyard::Planting& planting : catalogue.plantings().history(position, day)) {
        if (planting.from > day) {
            return planting.accession;
        }
    }
    return {};
}

std::string subjectOf(const std::string& position, CivilDate day) {
    return "planting/" + position + "/" + writeDate(day);
}
std::string replicatesOf(const std::string& block) {
    return "block/" + block + "/replicates";
}

Status addSeen(store::Database& database, const std::string& subject, PlantingPlan& plan) {
    auto heads = headsOf(database, subject);
    if (!heads) {
        return heads.error();
    }
    plan.seen.push_back({subject, std::move(*heads)});
    return {};
}

Status seeAll(store::Database& database, PlantingPlan& plan) {
    for (const PlannedVine& vine : plan.layout.vines) {
        Status seen =
            addSeen(database, subjectOf(plan.positions[vine.position], plan.wish.day), plan);
        if (!seen) {
            return seen;
        }
    }
    return addSeen(database, replicatesOf(plan.wish.block), plan);
}

Status addRow(const vineyard::Catalogue& catalogue,
              const vineyard::Row& row,
              PlantingPlan& plan,
              trials::LayoutRequest& request) {
    for (unsigned vine = 1; vine <= row.vines; ++vine) {
        const std::string position =
            vineyard::writePosition({plan.wish.block, row.number, vine, 0});
        request.positions.push_back({plan.wish.block,
                                     row.number,
                                     vine,
                                     standingAt(catalogue, position, plan.wish.day).empty()});
        plan.positions.push_back(position);
        if (request.positions.size() > trials::kMostLayoutPositions) {
            return Error{ErrorCode::BeyondLimit,
                         "The block has more places than one plan holds. Choose some of its rows.",
                         {}};
        }
    }
    return {};
}

Bytes runsValue(const std::vector<ReplicateRun>& runs) {
    std::vector<Bytes> items;
    for (const ReplicateRun& run : runs) {
        items.push_back(journal::listValue({journal::textValue(run.first),
                                            journal::textValue(run.last),
                                            journal::integerValue(run.replicate)}));
    }
    return journal::listValue(items);
}

bool overlap(const ReplicateRun& a, const ReplicateRun& b) {
    const auto from = vineyard::readPosition(a.first);
    const auto to = vineyard::readPosition(a.last);
    const auto otherFrom = vineyard::readPosition(b.first);
    const auto otherTo = vineyard::readPosition(b.last);
    return from && to && otherFrom && otherTo && from->row == otherFrom->row &&
           from->vine <= otherTo->vine && otherFrom->vine <= to->vine;
}

// The block's runs with the plan's behind them.
std::vector<ReplicateRun> joinedRuns(const vineyard::Block& block, const PlantingPlan& plan) {
    std::vector<ReplicateRun> fresh = runsOf(plan);
    std::vector<ReplicateRun> all;
    unsigned last = 0;
    for (const ReplicateRun& old : block.replicates) {
        if (std::ranges::none_of(fresh, [&old](const auto& run) { return overlap(old, run); })) {
            all.push_back(old);
            last = std::max(last, old.replicate);
        }
    }
    for (ReplicateRun& run : fresh) {
        run.replicate += last;
        all.push_back(std::move(run));
    }
    return all;
}

Bytes plantingValue(const std::string& accession) {
    return journal::MapValue()
        .add("accession", journal::textValue(accession))
        .add("until", journal::nullValue())
        .bytes();
}

// The next draft is about the next subject that was seen, over what stood there.
void addDraft(Bytes value, const std::string& author, const std::string& why, Act& act) {
    const Seen& seen = act.seen[act.drafts.size()];
    store::Draft draft;
    draft.author = author;
    draft.kind = journal::Kind::Catalog;
    draft.subject = seen.subject;
    draft.value = std::move(value);
    draft.over = seen.heads;
    if (!why.empty()) {
        draft.why = why;
    }
    act.drafts.push_back(std::move(draft));
}

} // namespace

Result<PlantingPlan> planPlanting(store::Database& database,
                                  const vineyard::Catalogue& catalogue,
                                  const PlanWish& wish) {
    const vineyard::Block* block = catalogue.block(wish.block);
    if (block == nullptr) {
        return invalid("There is no block " + wish.block + ". Give it its rows first.");
    }
    PlantingPlan plan{wish, {}, {}, {}};
    trials::LayoutRequest request;
    std::set<unsigned> lacking(wish.rows.begin(), wish.rows.end());
    for (const vineyard::Row& row : block->rows) {
        if (!wish.rows.empty() && lacking.erase(row.number) == 0) {
            continue;
        }
        if (Status added = addRow(catalogue, row, plan, request); !added) {
            return added.error();
        }
    }
    if (!lacking.empty()) {
        return invalid("Block " + wish.block + " has no row " + std::to_string(*lacking.begin()) +
                       ".");
    }
    request.kind = wish.kind;
    request.entries = wish.entries;
    request.checks = wish.checks;
    request.replicates = wish.replicates;
    request.seed = wish.seed;
    auto layout = trials::planLayout(request);
    if (!layout) {
        return layout.error();
    }
    plan.layout = std::move(*layout);
    if (Status seen = seeAll(database, plan); !seen) {
        return seen.error();
    }
    return plan;
}

Result<Act> plantPlan(store::Database& database,
                      const PlantingPlan& plan,
                      const std::string& author,
                      const std::string& why) {
    const auto catalogue = store::readCatalogue(database);
    if (!catalogue) {
        return catalogue.error();
    }
    const vineyard::Block* block = (*catalogue)->block(plan.wish.block);
    if (block == nullptr) {
        return invalid("There is no block " + plan.wish.block + " any more.");
    }
    if (plan.layout.vines.size() > kMostInAct) {
        return Error{ErrorCode::BeyondLimit,
                     "One act holds at most " + std::to_string(kMostInAct) +
                         " plantings. Plan fewer rows at a time.",
                     {}};
    }
    Act act;
    act.seen = plan.seen; // in the order of the vines, the replicates last
    for (const PlannedVine& vine : plan.layout.vines) {
        const std::string& position = plan.positions[vine.position];
        const std::string standing = standingAt(**catalogue, position, plan.wish.day);
        if (!standing.empty()) {
            return Error{ErrorCode::Outdated,
                         standing + " stands at " + position +
                             " by now, or is to. Nothing was planted; make the plan again.",
                         {}};
        }
        addDraft(plantingValue(vine.entry), author, why, act);
    }
    addDraft(runsValue(joinedRuns(*block, plan)), author, why, act);
    return act;
}

std::vector<ReplicateRun> runsOf(const PlantingPlan& plan) {
    struct Ends {
        unsigned first = 0;
        unsigned last = 0;
    };
    std::map<std::pair<unsigned, unsigned>, Ends> ends; // by replicate and row
    for (const PlannedVine& vine : plan.layout.vines) {
        const auto at = vineyard::readPosition(plan.positions[vine.position]);
        const auto [found, isNew] =
            ends.try_emplace({vine.replicate, at->row}, Ends{at->vine, at->vine});
        found->second.first = std::min(found->second.first, at->vine);
        found->second.last = std::max(found->second.last, at->vine);
    }
    std::vector<ReplicateRun> runs;
    for (const auto& [of, run] : ends) {
        const auto position = [&](unsigned vine) {
            return vineyard::writePosition({plan.wish.block, of.second, vine, 0});
        };
        runs.push_back({position(run.first), position(run.last), of.first});
    }
    return runs;
}

} // namespace bullace::office
