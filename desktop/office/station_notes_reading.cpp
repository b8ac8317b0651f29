#include "office/station_notes_reading.hpp"

#include "office/people_notes_reading.hpp"
#include "office/vine_finder.hpp"

#include "core/journal/json_value.hpp"
#include "store/json_reader.hpp"

#include <algorithm>
#include <charconv>
#include <set>
#include <unordered_map>

namespace bullace::office {

using descriptors::DescriptorKind;
using journal::Subject;
using namespace season;

namespace {

constexpr std::uint64_t kAsksEvery = 8192; // rows between two looks at whether anybody waits
const char* const kObservations = "obs/";
const char* const kBehindObservations = "obs0"; // '0' follows '/'

// A JSON number and nothing else; records and words begin otherwise.
std::optional<double> plainNumber(std::string_view json) {
    double value = 0;
    const auto [end, error] = std::from_chars(json.data(), json.data() + json.size(), value);
    return error == std::errc() && end == json.data() + json.size() ? std::optional(value)
                                                                    : std::nullopt;
}

std::int32_t twoDigits(std::string_view text, std::size_t at) {
    return (text[at] - '0') * 10 + (text[at + 1] - '0');
}

// A date that readSubject() has found valid.
std::int32_t dayOf(std::string_view date) {
    const int year = twoDigits(date, 0) * 100 + twoDigits(date, 2);
    return dayOfDate(std::chrono::year(year) /
                     std::chrono::month(static_cast<unsigned>(twoDigits(date, 5))) /
                     std::chrono::day(static_cast<unsigned>(twoDigits(date, 8))));
}

class Reading {
public:
    Reading(store::Database& database, const vineyard::Catalogue& catalogue, const Token& token)
        : database_(database),
          catalogue_(catalogue),
          token_(token) {}

    Result<StationNotes> read() {
        readAccessions();
        readLots();
        readCrosses();
        for (Status (Reading::*part)() : {&Reading::readOrigins,
                                          &Reading::readSeedLots,
                                          &Reading::readStates,
                                          &Reading::readPeopleBeside,
                                          &Reading::readWeather}) {
            if (Status done = (this->*part)(); !done) {
                return done.error();
            }
            if (isCancelled_) {
                return Error{ErrorCode::Cancelled, "Nobody waits for this any more.", {}};
            }
        }
        return std::move(notes_);
    }

private:
    void readAccessions() {
        for (const auto& [id, accession] : catalogue_.accessions()) {
            finder_.accession(id);
        }
        for (const auto& [id, day] : catalogue_.plantings().firstDays()) {
            notes_.accessions[finder_.accession(id)].planted = dayOfDate(day);
        }
    }

    void readCrosses() {
        for (const vineyard::Cross& cross : catalogue_.crosses()) {
            notes_.crosses.push_back({cross.id,
                                      cross.number,
                                      cross.mother,
                                      cross.father,
                                      cross.pollenLot,
                                      cross.isClosed});
        }
    }

    void readLots() {
        for (const vineyard::Lot& lot : catalogue_.lots()) {
            std::optional<std::size_t> accession;
            if (catalogue_.accessions().contains(lot.from)) {
                accession = finder_.accession(lot.from);
            }
            lotIds_[lot.id] = static_cast<std::uint32_t>(notes_.lots.size());
            lotFrom_.push_back(lot.from);
            notes_.lots.push_back({lot.id, lot.kind, accession});
        }
    }

    // What the office says of each accession: its taxon, its status, its parents.
    Status readOrigins() {
        return database_.eachStateUnordered(
            "accession/",
            "accession0",
            [this](std::string_view path, merge::State state, std::string_view json) {
                const Subject subject = journal::readSubject(path);
                static const std::map<std::string_view, std::string NotedAccession::*> kTexts{
                    {"taxon", &NotedAccession::taxon},
                    {"status", &NotedAccession::status},
                    {"mother", &NotedAccession::mother},
                    {"father", &NotedAccession::father},
                    {"cross", &NotedAccession::cross},
                    {"earlier", &NotedAccession::earlier}};
                const auto text = kTexts.find(subject.field);
                if (text == kTexts.end() && subject.field != "verified") {
                    return true;
                }
                NotedAccession& accession =
                    notes_.accessions[finder_.accession(std::string(subject.id))];
                if (state == merge::State::Open) {
                    accession.hasOpenParents |=
                        subject.field == "mother" || subject.field == "father";
                    return true;
                }
                const Result<Bytes> value = store::readJson(json);
                if (text == kTexts.end()) {
                    accession.isVerified = json == "true";
                } else if (const auto words = value ? journal::textOf(*value) : std::nullopt) {
                    accession.*(text->second) = std::string(*words);
                }
                return true;
            });
    }

    // What the office says of each lot of seed.
    Status readSeedLots() {
        return database_.eachStateUnordered(
            "lot/", "lot0", [this](std::string_view path, merge::State, std::string_view json) {
                const Subject subject = journal::readSubject(path);
                const auto lot = lotIds_.find(std::string(subject.id));
                const Result<Bytes> value = store::readJson(json);
                if (lot != lotIds_.end() && value) {
                    takeSeed(subject.field, *value, notes_.lots[lot->second]);
                }
                return true;
            });
    }

    static void takeSeed(std::string_view field, const Bytes& value, NotedLot& lot) {
        static const std::map<std::string_view, std::optional<std::int64_t> NotedLot::*> kCounts{
            {"seeds", &NotedLot::seeds},
            {"sinkers", &NotedLot::sinkers},
            {"germinated", &NotedLot::germinated}};
        static const std::map<std::string_view, std::optional<std::int32_t> NotedLot::*> kDays{
            {"date", &NotedLot::day},
            {"stratified", &NotedLot::stratified},
            {"sown", &NotedLot::sown},
            {"germinated-on", &NotedLot::germinatedOn}};
        const auto text = journal::textOf(value);
        if (field == "cross" && text) {
            lot.cross = *text;
        } else if (const auto count = kCounts.find(field); count != kCounts.end()) {
            lot.*(count->second) = journal::wholeNumberOf(value);
        } else if (const auto day = kDays.find(field); day != kDays.end() && text) {
            const auto date = readDate(*text);
            lot.*(day->second) = date ? std::optional(dayOfDate(*date)) : std::nullopt;
        }
    }

    Status readStates() {
        return database_.eachStateUnordered(
            kObservations,
            kBehindObservations,
            [this](std::string_view path, merge::State state, std::string_view json) {
                if (++rows_ % kAsksEvery == 0 && token_.isCancelled()) {
                    isCancelled_ = true;
                    return false;
                }
                take(journal::readSubject(path), path, state, json);
                return true;
            });
    }

    void
    take(const Subject& subject, std::string_view path, merge::State state, std::string_view json) {
        if (subject.form != journal::SubjectForm::Observation || state == merge::State::Retracted) {
            return;
        }
        ++notes_.observations;
        const std::int32_t day = dayOf(subject.date);
        const bool isOnLot = subject.isLot();
        const std::uint32_t vine = isOnLot ? kNoVine : finder_.at(subject.id, day);
        if (!isOnLot && vine == kNoVine) {
            ++notes_.elsewhere;
            return;
        }
        DescriptorNotes& of = notesOf(subject.descriptor);
        if (!subject.sample.empty() && !lastIsSampled_) {
            repeated_.emplace(path.substr(0, path.size() - subject.sample.size() - 1));
        }
        if (state == merge::State::Open) {
            of.open.push_back({vine, day, std::string(path)});
            return;
        }
        if (const auto number = isOnLot ? std::nullopt : plainNumber(json)) {
            of.numbers.push_back({vine, day, *number, *number, *number});
        } else if (const Result<Bytes> value = store::readJson(json); value) {
            takeOther(subject, vine, day, *value, of);
        }
    }

    void takeOther(const Subject& subject,
                   std::uint32_t vine,
                   std::int32_t day,
                   const Bytes& value,
                   DescriptorNotes& of) {
        const auto none = journal::memberOf(value, "none");
        if (const auto reason = none ? journal::textOf(*none) : std::nullopt) {
            of.missed.push_back({vine, day, wordIndex(*reason)});
            return;
        }
        if (const auto word = journal::textOf(value)) {
            of.words.push_back({vine, day, wordIndex(*word)});
            return;
        }
        // The weight of several berries together stands for one of them.
        const auto grams = journal::numberIn(value, "g");
        const auto berries = journal::numberIn(value, "of");
        if (!subject.isLot() && grams && berries && *berries > 0) {
            const double each = *grams / *berries;
            of.numbers.push_back({vine, day, each, each, each});
            return;
        }
        RecordNote record{vine, 0, day, value};
        if (subject.isLot()) {
            const auto lot = lotIds_.find(std::string(subject.id.substr(4))); // behind "lot:"
            record.lot = lot == lotIds_.end() ? addLot(subject.id.substr(4)) : lot->second;
            settleLot(record.lot, day);
        }
        of.records.push_back(std::move(record));
    }

    std::uint32_t addLot(std::string_view id) {
        const auto index = static_cast<std::uint32_t>(notes_.lots.size());
        lotIds_[std::string(id)] = index;
        lotFrom_.emplace_back();
        notes_.lots.push_back({std::string(id), {}, {}});
        return index;
    }

    // A lot that was taken from a vine is of the accession that stood there.
    void settleLot(std::uint32_t lot, std::int32_t day) {
        if (!notes_.lots[lot].accession && !lotFrom_[lot].empty()) {
            const std::uint32_t vine = finder_.at(lotFrom_[lot], day);
            if (vine != kNoVine) {
                notes_.lots[lot].accession = notes_.vines[vine].accession;
            }
        }
    }

    DescriptorNotes& notesOf(std::string_view descriptor) {
        if (descriptor == lastDescriptor_ && lastNotes_ != nullptr) {
            return *lastNotes_;
        }
        const auto found = notes_.of.find(descriptor);
        lastNotes_ =
            found != notes_.of.end() ? &found->second : &notes_.of[std::string(descriptor)];
        lastDescriptor_ = std::string(descriptor);
        const vineyard::Asked* asked = catalogue_.descriptor(descriptor);
        lastIsSampled_ = asked == nullptr || asked->known.isSampled;
        return *lastNotes_;
    }

    std::uint32_t wordIndex(std::string_view word) {
        const auto [found, isNew] =
            words_.emplace(std::string(word), static_cast<std::uint32_t>(notes_.words.size()));
        if (isNew) {
            notes_.words.emplace_back(word);
        }
        return found->second;
    }

    Status readPeopleBeside() {
        return readPeople(
            database_, catalogue_, token_, {repeated_.begin(), repeated_.end()}, finder_, notes_);
    }

    Status readWeather() {
        return database_.eachStateUnordered(
            "weather/",
            "weather0",
            [this](std::string_view path, merge::State state, std::string_view json) {
                const Subject subject = journal::readSubject(path);
                const auto number = plainNumber(json);
                const auto date = readDate(subject.date);
                if (state == merge::State::Open || !number || !date) {
                    return true;
                }
                weather::DailyWeather& day = notes_.weather[std::string(subject.id)][*date];
                if (subject.field == "TMAX") {
                    day.greatest = number;
                } else if (subject.field == "TMIN") {
                    day.least = number;
                } else if (subject.field == "PRCP") {
                    day.rain = number;
                }
                return true;
            });
    }

    store::Database& database_;
    const vineyard::Catalogue& catalogue_;
    const Token& token_;
    StationNotes notes_;
    VineFinder finder_{catalogue_, notes_};
    std::uint64_t rows_ = 0;
    bool isCancelled_ = false;
    std::unordered_map<std::string, std::uint32_t> lotIds_;
    std::vector<std::string> lotFrom_; // where each lot was taken
    std::unordered_map<std::string, std::uint32_t> words_;
    std::set<std::string> repeated_; // subjects beside which there is a sample, though it has none
    std::string lastDescriptor_;
    DescriptorNotes* lastNotes_ = nullptr;
    bool lastIsSampled_ = true;
};

} // namespace

Result<StationNotes> readStationNotes(store::Database& database,
                                      const vineyard::Catalogue& catalogue,
                                      const Token& token) {
    return Reading(database, catalogue, token).read();
}

} // namespace bullace::office
