#include "office/act.hpp"

#include "core/journal/json_value.hpp"

#include <algorithm>

namespace bullace::office {

using store::Draft;

namespace {

Error changedSince(const std::string& subject) {
    return {ErrorCode::Outdated,
            "Something new came in about " + subject +
                " since it was shown. Nothing was written; look at it as it is now and decide "
                "again.",
            {}};
}

} // namespace

Result<std::vector<journal::Place>> headsOf(store::Database& database, const std::string& subject) {
    const Result<std::vector<store::HeadRow>> heads = database.heads(subject);
    if (!heads) {
        return heads.error();
    }
    std::vector<journal::Place> places;
    places.reserve(heads->size());
    for (const store::HeadRow& head : *heads) {
        places.push_back(head.place);
    }
    return places;
}

Result<std::vector<journal::Place>>
perform(store::Database& database, const Act& act, const Clock& clock) {
    for (const Seen& seen : act.seen) {
        const auto heads = headsOf(database, seen.subject);
        if (!heads) {
            return heads.error();
        }
        if (*heads != seen.heads) {
            return changedSince(seen.subject);
        }
    }
    const std::int64_t now = clock.nowMs();
    return database.append(act.drafts,
                           journal::Wall{now, clock.minutesFromUtc(now)},
                           act.drafts.size() > 1 ? store::Grouping::OneAct
                                                 : store::Grouping::Single);
}

Result<std::vector<journal::Place>>
perform(store::Database& database, const Result<Act>& act, const Clock& clock) {
    return act ? perform(database, *act, clock) : Result<std::vector<journal::Place>>(act.error());
}

Act takingBack(const std::vector<journal::Place>& places,
               const std::vector<std::string>& subjects,
               const std::string& author) {
    Act act;
    for (std::size_t i = 0; i < places.size(); ++i) {
        Draft undo;
        undo.author = author;
        undo.kind = journal::Kind::Undo;
        undo.subject = subjects[i];
        undo.value = journal::nullValue();
        undo.over = {places[i]};
        act.drafts.push_back(std::move(undo));
    }
    return act;
}

} // namespace bullace::office
