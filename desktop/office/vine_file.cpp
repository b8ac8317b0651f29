#include "office/vine_file.hpp"

#include "core/journal/json_value.hpp"
#include "store/json_reader.hpp"

#include <algorithm>
#include <set>
#include <tuple>

namespace bullace::office {

using journal::Subject;
using store::Database;
using vineyard::Planting;

namespace {

void sortNewestFirst(VineFile& file) {
    std::sort(file.values.begin(), file.values.end(), [](const VineValue& a, const VineValue& b) {
        return std::tie(b.date, a.descriptor, a.sample, a.position) <
               std::tie(a.date, b.descriptor, b.sample, b.position);
    });
    std::sort(file.plantings.begin(),
              file.plantings.end(),
              [](const Planting& a, const Planting& b) { return a.from > b.from; });
}

// Takes what was noted under the place's name, where `isOurs` says so of the day.
template<typename IsOurs>
Status takeValues(Database& database, const std::string& place, IsOurs isOurs, VineFile& file) {
    return database.eachState("obs/" + place, [&](const store::StateRow& row) {
        const Subject subject = journal::readSubject(row.subject);
        const auto date = readDate(subject.date);
        if (!date || !isOurs(*date)) {
            return true;
        }
        Result<Bytes> value = store::readJson(row.valueJson);
        file.values.push_back({row.subject,
                               std::string(subject.id),
                               std::string(subject.date),
                               std::string(subject.descriptor),
                               std::string(subject.sample),
                               row.valueJson.empty() || !value ? Bytes{} : std::move(*value),
                               row.state});
        return true;
    });
}

} // namespace

Result<VineFile> readVine(Database& database,
                          const vineyard::Catalogue& catalogue,
                          const std::string& position,
                          CivilDate today) {
    VineFile file;
    file.position = position;
    file.accession = catalogue.accessionAt(position, today);
    const vineyard::Plantings& plantings = catalogue.plantings();
    const auto history = plantings.history(position, today);
    file.plantings.assign(history.begin(), history.end());
    // Every name that the place had; rows are renumbered.
    std::set<std::string> names{position};
    for (const Planting& planting : history) {
        names.insert(planting.position);
    }
    for (const std::string& name : names) {
        const auto isOurs = [&](CivilDate date) {
            const Planting* stood = plantings.at(name, date);
            const bool isHere = stood != nullptr && !history.empty() && stood >= history.data() &&
                                stood < history.data() + history.size();
            // Where nothing stood, the name is all there is to go by.
            return isHere || (stood == nullptr && name == position);
        };
        if (Status read = takeValues(database, name, isOurs, file); !read) {
            return read.error();
        }
    }
    sortNewestFirst(file);
    return file;
}

Result<VineFile> readAccession(Database& database,
                               const vineyard::Catalogue& catalogue,
                               const std::string& accession) {
    VineFile file;
    file.accession = accession;
    const vineyard::Plantings& plantings = catalogue.plantings();
    for (const Planting* planting : plantings.of(accession)) {
        file.plantings.push_back(*planting);
        const auto isOurs = [&](CivilDate date) {
            return plantings.at(planting->position, date) == planting;
        };
        if (Status read = takeValues(database, planting->position, isOurs, file); !read) {
            return read.error();
        }
    }
    sortNewestFirst(file);
    return file;
}

Result<VineFile> readLot(Database& database, const std::string& lot) {
    VineFile file;
    file.position = "lot:" + lot;
    const auto isOurs = [](CivilDate) { return true; };
    if (Status read = takeValues(database, file.position, isOurs, file); !read) {
        return read.error();
    }
    sortNewestFirst(file);
    return file;
}

Result<Act> correct(const SubjectHistory& history,
                    BytesView value,
                    const std::optional<std::string>& as,
                    const std::string& author,
                    const std::string& why) {
    if (why.empty()) {
        return Error{ErrorCode::InvalidInput,
                     "A reason is needed to put a value right; a word is enough.",
                     {}};
    }
    const bool isObservation = journal::isBelowObs(history.subject);
    const bool isOpen = history.state && history.state->state == merge::State::Open;
    Act act;
    store::Draft draft;
    draft.author = author;
    draft.kind = isOpen                        ? journal::Kind::Ruling
                 : !isObservation              ? journal::Kind::Catalog
                 : journal::isNullValue(value) ? journal::Kind::Retract
                                               : journal::Kind::Observe;
    draft.subject = history.subject;
    draft.value = Bytes(value);
    draft.over = history.state ? history.state->heads : std::vector<journal::Place>{};
    draft.why = why;
    draft.as = as;
    act.seen.push_back({history.subject, draft.over});
    act.drafts.push_back(std::move(draft));
    return act;
}

} // namespace bullace::office
