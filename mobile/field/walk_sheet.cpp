#include "field/walk_sheet.hpp"

#include "core/base/numbers.hpp"
#include "core/journal/json_value.hpp"
#include "core/journal/subject.hpp"

#include <algorithm>
#include <tuple>

namespace bullace::field {

using journal::Subject;

namespace {

// "t00c5a91be2f0417d.1,3": the device's digits, and 3.
struct SampleName {
    std::uint64_t device = 0;
    unsigned number = 0;
};

std::optional<SampleName> readSampleName(std::string_view text) {
    const std::size_t comma = text.find(',');
    const auto origin = journal::readOrigin(text.substr(0, comma));
    const auto number = comma == std::string_view::npos
                            ? std::nullopt
                            : readCount(text.substr(comma + 1), 1'000'000'000);
    if (!origin || !number) {
        return {};
    }
    return SampleName{origin->device, static_cast<unsigned>(*number)};
}

} // namespace

std::string_view sideWords(walk::Side side) {
    return side == walk::Side::Left ? "left side" : side == walk::Side::Right ? "right side" : "";
}

bool NotedValue::isNone() const {
    return journal::memberOf(value, "none").has_value();
}

std::string_view NotedValue::noneReason() const {
    const auto member = journal::memberOf(value, "none");
    return member ? journal::textOf(*member).value_or("") : std::string_view{};
}

WalkSheet::WalkSheet(store::Database& database, const WalkPlan& plan)
    : database_(database),
      plan_(plan),
      values_(plan.stops.size()) {
    for (std::size_t i = 0; i < plan.stops.size(); ++i) {
        stops_[plan.stops[i].position].push_back(i);
    }
}

bool WalkSheet::isSampledAt(std::size_t stop) const {
    return plan_.isRepeat || plan_.stops[stop].side != walk::Side::Whole;
}

bool WalkSheet::isOfThisWalk(const journal::Place& place) const {
    if (place.origin.device != database_.about().own.device) {
        return false;
    }
    return std::none_of(plan_.before.begin(), plan_.before.end(), [&](const auto& end) {
        return end.origin == place.origin && place.seq <= end.seq;
    });
}

std::optional<std::size_t> WalkSheet::stopOf(std::string_view text) const {
    const Subject subject = journal::readSubject(text);
    if (subject.form != journal::SubjectForm::Observation ||
        subject.date != writeDate(plan_.date)) {
        return {};
    }
    const auto found = stops_.find(subject.id);
    if (found == stops_.end()) {
        return {};
    }
    const auto placed = placed_.find(text);
    return placed == placed_.end() ? found->second.front() : placed->second;
}

Status WalkSheet::readAll() {
    values_.assign(plan_.stops.size(), {});
    placed_.clear();
    std::vector<std::string> subjects;
    store::OwnActs acts(database_);
    Status read = acts.eachSince(plan_.before, [&](const store::OwnAct& act) {
        for (const journal::Entry& entry : act.entries) {
            subjects.push_back(entry.subject);
        }
        return true;
    });
    std::sort(subjects.begin(), subjects.end());
    subjects.erase(std::unique(subjects.begin(), subjects.end()), subjects.end());
    for (std::size_t i = 0; read && i < subjects.size(); ++i) {
        read = refresh(subjects[i]);
    }
    return read;
}

Status WalkSheet::refresh(const std::string& text) {
    const Subject subject = journal::readSubject(text);
    const auto stops = stops_.find(subject.id);
    if (!stopOf(text) || stops == stops_.end()) {
        return {};
    }
    bool wasKept = false;
    for (const std::size_t stop : stops->second) {
        std::erase_if(values_[stop], [&](const NotedValue& noted) {
            const bool isIt = noted.subject == text;
            wasKept = wasKept || (isIt && noted.isKept);
            return isIt;
        });
    }
    const Result<std::vector<store::HeadRow>> heads = database_.heads(text);
    if (!heads) {
        return heads.error();
    }
    for (const store::HeadRow& head : *heads) {
        const Result<journal::EntryView> entry = journal::readEntry(head.entry);
        if (!entry || entry->isNull() || !isOfThisWalk(head.place)) {
            continue;
        }
        std::size_t stop = stops->second.front();
        for (const std::size_t candidate : stops->second) {
            const std::string_view side = sideWords(plan_.stops[candidate].side);
            if (!side.empty() && entry->why == side) {
                stop = candidate;
                placed_[text] = candidate;
            }
        }
        NotedValue noted;
        noted.subject = text;
        noted.descriptor = subject.descriptor;
        const auto sample = readSampleName(subject.sample);
        noted.sample = sample ? sample->number : 0;
        noted.place = head.place;
        noted.value = Bytes(entry->value);
        noted.as = entry->as ? std::optional<std::string>(*entry->as) : std::nullopt;
        noted.isKept = wasKept;
        values_[stop].push_back(std::move(noted));
    }
    return {};
}

std::vector<const NotedValue*> WalkSheet::at(std::size_t stop, std::string_view descriptor) const {
    std::vector<const NotedValue*> found;
    for (const NotedValue& noted : values_[stop]) {
        if (noted.descriptor == descriptor) {
            found.push_back(&noted);
        }
    }
    std::sort(found.begin(), found.end(), [](const NotedValue* a, const NotedValue* b) {
        return std::tie(a->sample, a->place) < std::tie(b->sample, b->place);
    });
    return found;
}

const std::vector<NotedValue>& WalkSheet::all(std::size_t stop) const {
    return values_[stop];
}

NotedValue* WalkSheet::find(const std::string& subject) {
    const auto stop = stopOf(subject);
    if (!stop) {
        return nullptr;
    }
    for (NotedValue& noted : values_[*stop]) {
        if (noted.subject == subject) {
            return &noted;
        }
    }
    return nullptr;
}

std::string WalkSheet::vineState(std::size_t stop) const {
    const auto noted = at(stop, "vine");
    return noted.empty() ? std::string{}
                         : std::string(journal::textOf(noted.back()->value).value_or(""));
}

std::string WalkSheet::subjectAt(std::size_t stop, std::string_view descriptor) const {
    return "obs/" + plan_.stops[stop].position + "/" + writeDate(plan_.date) + "/" +
           std::string(descriptor);
}

Result<std::string> WalkSheet::sampleSubjectAt(std::size_t stop, std::string_view descriptor) {
    const std::string above = subjectAt(stop, descriptor) + "/";
    auto number = numbers_.find(above);
    if (number == numbers_.end()) {
        unsigned greatest = 0;
        const Status read =
            database_.eachSubjectBetween(above, above + "\x7f", [&](std::string_view path) {
                const auto name = readSampleName(path.substr(above.size()));
                if (name && name->device == database_.about().own.device) {
                    greatest = std::max(greatest, name->number);
                }
                return true;
            });
        if (!read) {
            return read.error();
        }
        number = numbers_.emplace(above, greatest).first;
    }
    return above + database_.about().own.text() + "," + std::to_string(++number->second);
}

} // namespace bullace::field
