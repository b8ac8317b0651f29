#include "store/round_progress.hpp"

#include "core/journal/subject.hpp"

#include <algorithm>
#include <map>
#include <set>

namespace bullace::store {

namespace {

// Vines of a round in walking order, whatever its shape.
std::vector<std::string> placesOf(const vineyard::Catalogue& catalogue, const walk::Round& round) {
    return walk::vinesOf(round, catalogue.blocks());
}

std::string firstKnown(const vineyard::Catalogue& catalogue, const walk::Round& round) {
    for (const std::string& code : round.descriptors) {
        if (catalogue.descriptor(code) != nullptr) {
            return code;
        }
    }
    return {};
}

// A round whose vines are looked up: since its first day, or today where it has none.
struct Sought {
    std::string code; // its first descriptor
    CivilDate since;
    std::set<std::string, std::less<>> noted; // its positions that have a value of it
};

// All vines of several rounds are looked up in one go: at a station of twelve thousand vines one
// question for each round and vine takes seconds.
class Lookup {
public:
    Lookup(Database& database, CivilDate today) : database_(database), today_(today) {}

    // The index of what is sought.
    std::size_t add(std::string code, CivilDate since, const std::vector<std::string>& positions) {
        for (const std::string& position : positions) {
            seekers_[position].push_back(sought_.size());
        }
        sought_.push_back({std::move(code), since, {}});
        return sought_.size() - 1;
    }

    // Errors: those of reading.
    Status look() {
        std::vector<PathStretch> stretches;
        for (const auto& [position, seekers] : seekers_) {
            CivilDate since = today_;
            for (const std::size_t seeker : seekers) {
                since = std::min(since, sought_[seeker].since);
            }
            const std::string place = "obs/" + position + "/";
            stretches.push_back({place + writeDate(since), place + writeDate(today_) + "~"});
        }
        return database_.eachStateIn(stretches, [this](const StateRow& row) {
            take(row);
            return true;
        });
    }

    [[nodiscard]] bool isNoted(std::size_t of, std::string_view position) const {
        return sought_[of].noted.contains(position);
    }
    // What stands of today, by position.
    [[nodiscard]] const std::map<std::string, std::vector<std::string>, std::less<>>&
    today() const {
        return subjectsOfToday_;
    }

private:
    void take(const StateRow& row) {
        const journal::Subject subject = journal::readSubject(row.subject);
        const auto date = readDate(subject.date);
        const auto seekers = seekers_.find(subject.id);
        if (!date || seekers == seekers_.end()) {
            return;
        }
        for (const std::size_t seeker : seekers->second) {
            Sought& sought = sought_[seeker];
            if (*date >= sought.since && subject.descriptor == sought.code &&
                row.state != merge::State::Retracted) {
                sought.noted.emplace(subject.id);
            }
        }
        if (*date == today_) {
            subjectsOfToday_[std::string(subject.id)].push_back(row.subject);
        }
    }

    Database& database_;
    CivilDate today_;
    std::vector<Sought> sought_;
    std::map<std::string, std::vector<std::size_t>, std::less<>> seekers_; // by position
    std::map<std::string, std::vector<std::string>, std::less<>> subjectsOfToday_;
};

Status addAuthors(Database& database,
                  const std::vector<std::string>& subjects,
                  std::set<std::string>& people) {
    for (const std::string& subject : subjects) {
        const auto heads = database.heads(subject);
        if (!heads) {
            return heads.error();
        }
        for (const HeadRow& head : *heads) {
            const auto entry = journal::readEntry(head.entry);
            if (entry) {
                people.insert(std::string(entry->author));
            }
        }
    }
    return {};
}

// The round without what is done of it.
RoundProgress
progressOf(const vineyard::Catalogue& catalogue, const walk::Round& round, CivilDate today) {
    RoundProgress progress;
    progress.round = &round;
    progress.isLate = round.by && *round.by < today;
    progress.gone = walk::goneFromPlan(round, catalogue.blocks());
    for (const std::string& code : round.descriptors) {
        if (catalogue.descriptor(code) == nullptr) {
            progress.unknown.push_back(code);
        }
    }
    return progress;
}

bool isDueFirst(const RoundProgress& a, const RoundProgress& b) {
    const CivilDate never{std::chrono::year(9999), std::chrono::month(12), std::chrono::day(31)};
    return a.round->by.value_or(never) < b.round->by.value_or(never);
}

// The rows of a round that are not closed, with the vines between two.
std::vector<walk::RowPlan>
openRows(const vineyard::Catalogue& catalogue, const walk::Round& round, CivilDate today) {
    std::vector<walk::RowPlan> rows = walk::rowsOf(round, catalogue.blocks());
    std::erase_if(rows, [&](const walk::RowPlan& row) {
        const vineyard::Block* block = catalogue.block(row.block);
        return block != nullptr && block->isClosed(today);
    });
    for (walk::RowPlan& row : rows) {
        row.between = catalogue.between(row.block, row.row);
    }
    return rows;
}

std::vector<std::string> placesAlong(const walk::RowPlan& row) {
    walk::RouteWish along;
    along.rows = {row};
    std::vector<std::string> places;
    for (walk::Stop& stop : walk::routeOf(along)) {
        places.push_back(std::move(stop.position));
    }
    return places;
}

} // namespace

Result<std::vector<RoundProgress>>
roundsOn(Database& database, const vineyard::Catalogue& catalogue, CivilDate today) {
    std::vector<RoundProgress> all;
    std::vector<std::vector<std::string>> places;
    Lookup lookup(database, today);
    for (const walk::Round& round : catalogue.rounds()) {
        if (round.isOpenOn(today)) {
            all.push_back(progressOf(catalogue, round, today));
            places.push_back(placesOf(catalogue, round));
            lookup.add(firstKnown(catalogue, round), round.from.value_or(today), places.back());
        }
    }
    if (Status looked = lookup.look(); !looked) {
        return looked.error();
    }
    for (std::size_t i = 0; i < all.size(); ++i) {
        all[i].stops = places[i].size();
        for (const std::string& position : places[i]) {
            all[i].done += lookup.isNoted(i, position) ? 1U : 0U;
        }
    }
    std::stable_sort(all.begin(), all.end(), isDueFirst);
    return all;
}

Result<std::vector<RowProgress>> rowsOn(Database& database,
                                        const vineyard::Catalogue& catalogue,
                                        const walk::Round& round,
                                        CivilDate today) {
    std::vector<RowProgress> rows;
    std::vector<std::vector<std::string>> places;
    Lookup lookup(database, today);
    for (walk::RowPlan& plan : openRows(catalogue, round, today)) {
        places.push_back(placesAlong(plan));
        lookup.add(firstKnown(catalogue, round), round.from.value_or(today), places.back());
        rows.push_back({std::move(plan), places.back().size(), 0, {}});
    }
    if (Status looked = lookup.look(); !looked) {
        return looked.error();
    }
    for (std::size_t i = 0; i < rows.size(); ++i) {
        std::set<std::string> people;
        for (const std::string& position : places[i]) {
            rows[i].done += lookup.isNoted(i, position) ? 1U : 0U;
            const auto subjects = lookup.today().find(position);
            const Status added = subjects == lookup.today().end()
                                     ? Status{}
                                     : addAuthors(database, subjects->second, people);
            if (!added) {
                return added.error();
            }
        }
        rows[i].people.assign(people.begin(), people.end());
    }
    return rows;
}

std::vector<BlockCaution>
cautionsOf(const vineyard::Catalogue& catalogue, const walk::Round& round, CivilDate today) {
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

} // namespace bullace::store
