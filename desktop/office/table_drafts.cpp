#include "office/table_drafts.hpp"

#include "office/settling.hpp"
#include "office/typed_value.hpp"

#include "core/journal/json_value.hpp"
#include "store/json_reader.hpp"

#include <algorithm>

namespace bullace::office {

using store::Draft;

Result<bool> TableDrafts::isThere(const vineyard::Asked& asked,
                                  const std::string& subject,
                                  const std::string& text) {
    const auto state = database_.state(subject);
    if (!state) {
        return state.error();
    }
    const Result<Bytes> value =
        *state ? store::readJson((*state)->valueJson) : Result<Bytes>(Bytes{});
    const bool isThere =
        *state && !(*state)->valueJson.empty() && value && typedText(asked, *value, {}) == text;
    there_ += isThere ? 1U : 0U;
    return isThere;
}

// Equal samples of one vine and day are told apart by their number only: so many of a value as
// are there already are not written again.
Status TableDrafts::takeSample(Draft draft) {
    Samples& samples = samples_[draft.subject];
    if (!samples.isRead) {
        samples.isRead = true;
        const Status read = database_.eachState(draft.subject, [&](const store::StateRow& row) {
            const Result<Bytes> value = store::readJson(row.valueJson);
            if (row.subject != draft.subject && !row.valueJson.empty() && value) {
                ++samples.there[journal::comparable(*value)];
            }
            return true;
        });
        if (!read) {
            return read;
        }
    }
    auto& left = samples.there[journal::comparable(draft.value)];
    if (left > 0) {
        --left;
        ++there_;
        return {};
    }
    Result<std::string> subject = nextSample(database_, draft.subject, samples.fresh++);
    if (!subject) {
        return subject.error();
    }
    draft.subject = std::move(*subject);
    seen_.push_back({draft.subject, {}});
    drafts_.push_back(std::move(draft));
    return {};
}

// Adds the draft where it says something new.
Status TableDrafts::take(Draft draft, Beside beside) {
    if (!drafted_.insert({draft.subject, journal::comparable(draft.value)}).second) {
        ++there_; // the file says it twice
        return {};
    }
    const auto state = database_.state(draft.subject);
    if (!state) {
        return state.error();
    }
    std::vector<journal::Place> heads;
    if (*state) {
        heads = (*state)->heads;
        const Result<Bytes> value = store::readJson((*state)->valueJson);
        if (!(*state)->valueJson.empty() && value && journal::isSameValue(*value, draft.value)) {
            ++there_;
            return {};
        }
        // A value that was imported before and lost against another is there, too.
        for (const journal::Place& head : heads) {
            const auto is = isHeadOf(draft, head);
            if (!is) {
                return is.error();
            }
            if (*is) {
                ++there_;
                return {};
            }
        }
        ++conflicting_;
    }
    if (beside == Beside::No) {
        draft.over = heads;
    }
    seen_.push_back({draft.subject, std::move(heads)});
    drafts_.push_back(std::move(draft));
    return {};
}

Result<bool> TableDrafts::isHeadOf(const Draft& draft, const journal::Place& place) {
    const auto heads = database_.heads(draft.subject);
    if (!heads) {
        return heads.error();
    }
    return std::any_of(heads->begin(), heads->end(), [&](const store::HeadRow& head) {
        const auto entry = journal::readEntry(head.entry);
        return head.place == place && entry && journal::isSameValue(entry->value, draft.value);
    });
}

} // namespace bullace::office
