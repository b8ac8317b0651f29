#include "office/people_notes_reading.hpp"

#include "core/journal/json_value.hpp"

#include <algorithm>
#include <map>
#include <utility>

namespace bullace::office {

using descriptors::DescriptorKind;
using journal::Subject;
using namespace season;

namespace {

class PeopleReading {
public:
    PeopleReading(const vineyard::Catalogue& catalogue, VineFinder& finder, StationNotes& notes)
        : catalogue_(catalogue),
          finder_(finder),
          notes_(notes) {
        for (std::size_t i = 0; i < notes.words.size(); ++i) {
            words_.emplace(notes.words[i], static_cast<std::uint32_t>(i));
        }
    }

    // The entries of one observation.
    void take(std::string_view path, const std::vector<store::EntryRow>& entries) {
        begin(path);
        bool isSettledByHand = false;
        for (const store::EntryRow& row : entries) {
            const auto entry = journal::readEntry(row.entry);
            if (!entry || row.uncounted) {
                continue;
            }
            isSettledByHand = isSettledByHand || entry->kind != journal::Kind::Observe;
            addOwn(*entry);
        }
        keep(!isSettledByHand);
    }

    // The heads of an observation and of its blind repeats together.
    Status takeRepeated(store::Database& database, const std::string& path) {
        begin(path);
        const Status read = database.eachState(path, [this](const store::StateRow& row) {
            paths_.push_back(row.subject);
            return true;
        });
        if (!read) {
            return read;
        }
        for (const std::string& each : std::exchange(paths_, {})) {
            const auto heads = database.heads(each);
            if (!heads) {
                return heads.error();
            }
            for (const store::HeadRow& head : *heads) {
                if (const auto entry = journal::readEntry(head.entry)) {
                    addOwn(*entry);
                }
            }
        }
        keep(false);
        return {};
    }

private:
    void begin(std::string_view path) {
        subject_ = journal::readSubject(path);
        people_.clear();
        const auto date = readDate(subject_.date);
        vine_ = kNoVine;
        if (subject_.form == journal::SubjectForm::Observation && !subject_.isLot() && date) {
            day_ = dayOfDate(*date);
            vine_ = finder_.at(subject_.id, day_);
        }
    }

    void addOwn(const journal::EntryView& entry) {
        const auto number = journal::numberOf(entry.value);
        if (vine_ == kNoVine || entry.kind != journal::Kind::Observe || entry.overCount > 0 ||
            !number) {
            return;
        }
        const auto [word, isNew] = words_.emplace(std::string(entry.author),
                                                  static_cast<std::uint32_t>(notes_.words.size()));
        if (isNew) {
            notes_.words.emplace_back(entry.author);
        }
        const std::uint32_t author = word->second;
        const bool isKnown = std::ranges::any_of(
            people_, [author](const PersonNote& one) { return one.author == author; });
        if (!isKnown) {
            people_.push_back({vine_, day_, author, *number});
        }
    }

    void keep(bool mayBound) {
        if (people_.size() < 2) {
            return;
        }
        auto found = notes_.of.find(subject_.descriptor);
        if (found == notes_.of.end()) {
            found = notes_.of.emplace(std::string(subject_.descriptor), DescriptorNotes{}).first;
        }
        DescriptorNotes& of = found->second;
        of.people.insert(of.people.end(), people_.begin(), people_.end());
        if (mayBound && subject_.sample.empty()) {
            bound(of);
        }
    }

    void bound(DescriptorNotes& of) {
        const vineyard::Asked* asked = catalogue_.descriptor(subject_.descriptor);
        const bool isBounded = asked != nullptr && (asked->known.kind == DescriptorKind::Stage ||
                                                    asked->known.kind == DescriptorKind::Percent);
        const auto [least, greatest] =
            std::ranges::minmax(people_, {}, [](const PersonNote& one) { return one.value; });
        if (!isBounded || least.value == greatest.value) {
            return;
        }
        Places& places = places_[&of];
        if (places.empty()) {
            for (std::size_t i = 0; i < of.numbers.size(); ++i) {
                places.emplace(std::pair(of.numbers[i].vine, of.numbers[i].day), i);
            }
        }
        const auto found = places.find({vine_, day_});
        if (found == places.end()) { // it is open
            const double middle = (least.value + greatest.value) / 2;
            of.numbers.push_back({vine_, day_, middle, least.value, greatest.value});
            return;
        }
        of.numbers[found->second].low = least.value;
        of.numbers[found->second].high = greatest.value;
    }

    using Places = std::map<std::pair<std::uint32_t, std::int32_t>, std::size_t>;

    const vineyard::Catalogue& catalogue_;
    VineFinder& finder_;
    StationNotes& notes_;
    std::map<std::string, std::uint32_t, std::less<>> words_;
    std::map<DescriptorNotes*, Places> places_;
    Subject subject_;
    std::uint32_t vine_ = kNoVine;
    std::int32_t day_ = 0;
    std::vector<PersonNote> people_;
    std::vector<std::string> paths_;
};

} // namespace

Status readPeople(store::Database& database,
                  const vineyard::Catalogue& catalogue,
                  const Token& token,
                  const std::vector<std::string>& repeated,
                  VineFinder& finder,
                  season::StationNotes& notes) {
    PeopleReading reading(catalogue, finder, notes);
    const Error cancelled{ErrorCode::Cancelled, "Nobody waits for this any more.", {}};
    const Status read = database.eachWithSeveralEntries(
        "obs/", "obs0", [&](std::string_view path, const std::vector<store::EntryRow>& entries) {
            reading.take(path, entries);
            return !token.isCancelled();
        });
    if (!read) {
        return read;
    }
    for (const std::string& path : repeated) {
        if (token.isCancelled()) {
            return cancelled;
        }
        if (Status taken = reading.takeRepeated(database, path); !taken) {
            return taken;
        }
    }
    return token.isCancelled() ? Status(cancelled) : Status();
}

} // namespace bullace::office
