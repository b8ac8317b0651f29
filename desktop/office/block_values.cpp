#include "office/block_values.hpp"

#include "core/journal/json_value.hpp"
#include "store/json_reader.hpp"

#include <algorithm>
#include <set>

namespace bullace::office {

using journal::Subject;

namespace {

constexpr std::uint64_t kAsksEvery = 4096; // rows between two looks at whether anybody waits

// Of one vine on one day: a value, or samples.
struct DayNotes {
    std::vector<Bytes> values;
    bool isOpen = false;
};
using VineNotes = std::map<CivilDate, DayNotes>;

class BlockReading {
public:
    BlockReading(store::Database& database,
                 const vineyard::Catalogue& catalogue,
                 const BlockWish& wish,
                 CivilDate today,
                 const Token& token)
        : database_(database),
          catalogue_(catalogue),
          wish_(wish),
          today_(today),
          token_(token),
          asked_(catalogue.descriptor(wish.descriptor)) {}

    Result<BlockValues> read() {
        bool isThere = false;
        for (const vineyard::Block& block : catalogue_.blocks()) {
            if (!wish_.block.empty() && wish_.block != block.code) {
                continue;
            }
            isThere = true;
            if (Status taken = readNotes(block.code); !taken) {
                return taken.error();
            }
            addRows(block);
            notes_.clear();
        }
        if (!isThere && !wish_.block.empty()) {
            return Error{ErrorCode::NotFound, "There is no such block.", {wish_.block}};
        }
        made_.visits.assign(visits_.rbegin(), visits_.rend());
        made_.seasons.assign(seasons_.rbegin(), seasons_.rend());
        return std::move(made_);
    }

private:
    // All that lies below the block's positions, as bytes: '.' follows '-'.
    Status readNotes(const std::string& block) {
        std::uint64_t count = 0;
        bool isCancelled = false;
        const Status read = database_.eachStateBetween(
            "obs/" + block + "-", "obs/" + block + ".", [&](const store::StateRow& row) {
                if (++count % kAsksEvery == 0 && token_.isCancelled()) {
                    isCancelled = true;
                    return false;
                }
                take(row);
                return true;
            });
        return isCancelled
                   ? Status(Error{ErrorCode::Cancelled, "Nobody waits for this any more.", {}})
                   : read;
    }

    void take(const store::StateRow& row) {
        const Subject subject = journal::readSubject(row.subject);
        if (!subject.position || row.state == merge::State::Retracted) {
            return;
        }
        ++noted(subject.descriptor);
        const auto date = readDate(subject.date);
        if (subject.descriptor != wish_.descriptor || !date) {
            return;
        }
        const int year = static_cast<int>(date->year());
        seasons_.insert(year);
        if (year != wish_.season) {
            return;
        }
        visits_.insert(*date);
        // Rows are renumbered: the map shows the vine where it stands today.
        DayNotes& day =
            notes_[catalogue_.plantings().renumberings().follow(subject.id, *date, today_)][*date];
        if (row.state == merge::State::Open) {
            day.isOpen = true;
        } else if (Result<Bytes> value = store::readJson(row.valueJson); value) {
            day.values.push_back(std::move(*value));
        }
    }

    std::size_t& noted(std::string_view descriptor) {
        const auto found = made_.noted.find(descriptor);
        return found != made_.noted.end() ? found->second : made_.noted[std::string(descriptor)];
    }

    void addRows(const vineyard::Block& block) {
        for (const vineyard::Row& planned : block.rows) {
            BlockRow row{block.code, planned.number, {}};
            for (const std::string& position : catalogue_.placesOf(block.code, planned)) {
                row.places.push_back(placeOf(position));
            }
            made_.rows.push_back(std::move(row));
        }
    }

    PlaceValue placeOf(const std::string& position) const {
        PlaceValue place;
        place.position = position;
        const CivilDate lastOfSeason{
            std::chrono::year(wish_.season), std::chrono::month(12), std::chrono::day(31)};
        const CivilDate asOf = wish_.visit ? *wish_.visit : std::min(today_, lastOfSeason);
        const auto notes = notes_.find(position);
        const VineNotes none;
        const VineNotes& days = notes == notes_.end() ? none : notes->second;
        auto now = wish_.visit    ? days.find(*wish_.visit)
                   : days.empty() ? days.end()
                                  : std::prev(days.end());
        if (now == days.end()) {
            place.state = catalogue_.accessionAt(position, asOf).empty() ? PlaceValue::Empty
                                                                         : PlaceValue::NotObserved;
            return place;
        }
        place.date = now->first;
        fill(now->second, place);
        if (wish_.isDifference && place.state == PlaceValue::Value) {
            compare(days, now, place);
        }
        return place;
    }

    void fill(const DayNotes& day, PlaceValue& place) const {
        if (day.isOpen) {
            place.state = PlaceValue::Open;
            return;
        }
        place.state = PlaceValue::NotObserved;
        double sum = 0;
        int count = 0;
        for (const Bytes& value : day.values) {
            const auto none = journal::memberOf(value, "none");
            if (const auto reason = none ? journal::textOf(*none) : std::nullopt) {
                place.state = *reason == "dead"      ? PlaceValue::Dead
                              : *reason == "no-vine" ? PlaceValue::NoVine
                                                     : PlaceValue::NotObserved;
                continue;
            }
            const auto number =
                asked_ == nullptr ? std::nullopt : vineyard::comparableNumber(*asked_, value);
            if (number) {
                sum += *number;
                ++count;
            } else if (const auto word = journal::textOf(value)) {
                place.word = std::string(*word);
            }
            place.state = PlaceValue::Value;
        }
        if (count > 0) {
            place.number = sum / count;
            place.state = PlaceValue::Value;
        }
    }

    // With the last day before on which a number was noted there.
    void compare(const VineNotes& days, VineNotes::const_iterator now, PlaceValue& place) const {
        const auto later = place.number;
        place.number.reset();
        while (later && now != days.begin()) {
            --now;
            PlaceValue earlier;
            fill(now->second, earlier);
            if (earlier.number) {
                place.before = now->first;
                place.number = vineyard::onItsScale(asked_->known, *later) -
                               vineyard::onItsScale(asked_->known, *earlier.number);
                return;
            }
        }
        place.state = PlaceValue::NotObserved; // nothing to compare with
    }

    store::Database& database_;
    const vineyard::Catalogue& catalogue_;
    const BlockWish& wish_;
    CivilDate today_;
    const Token& token_;
    const vineyard::Asked* asked_;
    BlockValues made_;
    std::map<std::string, VineNotes> notes_; // of the block that is read
    std::set<CivilDate> visits_;
    std::set<int> seasons_;
};

} // namespace

Result<BlockValues> readBlockValues(store::Database& database,
                                    const vineyard::Catalogue& catalogue,
                                    const BlockWish& wish,
                                    CivilDate today,
                                    const Token& token) {
    return BlockReading(database, catalogue, wish, today, token).read();
}

} // namespace bullace::office
