#include "office/verdicts.hpp"

#include "core/journal/json_value.hpp"

#include <algorithm>
#include <array>

namespace bullace::office {

namespace {

constexpr std::array<std::string_view, 3> kVerdicts{"pull", "look-again", "take-on"};
constexpr std::string_view kVerdict = "verdict";

Error wrong(std::string message) {
    return {ErrorCode::InvalidInput, std::move(message), {}};
}

std::string subjectOf(const std::string& position, CivilDate date) {
    return "obs/" + position + "/" + writeDate(date) + "/" + std::string(kVerdict);
}

// Who decided it, and why.
Status readHead(store::Database& database, VerdictNote& note) {
    const auto heads = database.heads(subjectOf(note.position, note.date));
    if (!heads) {
        return heads.error();
    }
    if (heads->empty()) {
        return {};
    }
    const auto entry = journal::readEntry(heads->front().entry);
    if (entry) {
        note.author = std::string(entry->author);
        note.why = entry->why ? std::optional(std::string(*entry->why)) : std::nullopt;
    }
    return {};
}

} // namespace

Result<std::vector<VerdictNote>> readVerdicts(store::Database& database,
                                              const season::StationNotes& notes) {
    const season::DescriptorNotes& of = notes.notesOf(kVerdict);
    std::vector<VerdictNote> verdicts;
    const auto add = [&](std::uint32_t vine, std::int32_t day, std::string word) {
        const season::NotedVine& at = notes.vines[vine];
        verdicts.push_back(
            {at.accession, at.position, season::dateOfDay(day), std::move(word), {}, {}, false});
        verdicts.back().isOpen = verdicts.back().word.empty();
    };
    for (const season::WordNote& note : of.words) {
        add(note.vine, note.day, notes.words[note.word]);
    }
    for (const season::OpenNote& note : of.open) {
        if (note.vine != season::kNoVine) {
            add(note.vine, note.day, {});
        }
    }
    for (VerdictNote& verdict : verdicts) {
        if (const Status read = readHead(database, verdict); !read) {
            return read.error();
        }
    }
    std::ranges::stable_sort(verdicts, [](const VerdictNote& one, const VerdictNote& other) {
        return one.date > other.date;
    });
    return verdicts;
}

Result<Act> verdictAct(store::Database& database,
                       std::span<const std::string> positions,
                       CivilDate date,
                       std::string_view word,
                       const std::string& author,
                       const std::string& why) {
    if (positions.empty()) {
        return wrong("The selection stands at no vine: there is no place to record a decision at.");
    }
    if (std::ranges::find(kVerdicts, word) == kVerdicts.end()) {
        return wrong("A decision is pull, look-again or take-on.");
    }
    if (why.empty()) {
        return wrong("A decision needs its reason, so that it can be understood later.");
    }
    Act act;
    for (const std::string& position : positions) {
        const std::string subject = subjectOf(position, date);
        auto heads = headsOf(database, subject);
        if (!heads) {
            return heads.error();
        }
        store::Draft draft;
        draft.kind = journal::Kind::Observe;
        draft.subject = subject;
        draft.value = journal::textValue(std::string(word));
        draft.over = *heads;
        draft.author = author;
        draft.why = why;
        act.drafts.push_back(std::move(draft));
        act.seen.push_back({subject, std::move(*heads)});
    }
    return act;
}

} // namespace bullace::office
