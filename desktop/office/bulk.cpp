#include "office/bulk.hpp"

#include "core/journal/json_value.hpp"
#include "core/journal/standing.hpp"
#include "store/rulings.hpp"

#include <algorithm>
#include <random>
#include <set>

namespace bullace::office {

using journal::EntryView;
using journal::Place;
using journal::Subject;

namespace {

// One open subject with its heads, as the condition looks at it.
struct Open {
    std::string subject;
    std::vector<Place> places; // ascending, as the heads
    std::vector<Bytes> bytes;
    std::vector<EntryView> heads; // into bytes
};

Result<Open> openOf(store::Database& database, const std::string& subject) {
    const auto rows = database.heads(subject);
    if (!rows) {
        return rows.error();
    }
    Open open{subject, {}, {}, {}};
    open.bytes.reserve(rows->size());
    for (const store::HeadRow& row : *rows) {
        open.bytes.push_back(row.entry);
        const auto entry = journal::readEntry(open.bytes.back());
        if (entry) {
            open.places.push_back(row.place);
            open.heads.push_back(*entry);
        }
    }
    return open;
}

std::optional<double>
scaleOf(const Subject& subject, BytesView value, const merge::Rulebook& rulebook) {
    if (rulebook.kindOf(subject.descriptor) == descriptors::DescriptorKind::Stage) {
        const auto step = rulebook.stepOf(subject.descriptor, value);
        return step ? std::optional(static_cast<double>(*step)) : std::nullopt;
    }
    return journal::numberOf(value);
}

class Picker {
public:
    Picker(store::Database& database, const Condition& condition)
        : database_(database),
          condition_(condition) {}

    [[nodiscard]] bool names(const Subject& subject, const Open& open) const {
        if (open.heads.size() < 2 ||
            causeOf(subject, open.heads, database_.rulebook()) != condition_.cause) {
            return false;
        }
        std::set<std::string> authors;
        for (const EntryView& head : open.heads) {
            authors.emplace(head.author);
        }
        return condition_.authors.empty() ||
               std::vector<std::string>(authors.begin(), authors.end()) == condition_.authors;
    }

    Result<Bytes> pick(const Subject& subject, const Open& open) {
        switch (condition_.pick) {
        case Pick::Later:
            return later(open);
        case Pick::Greatest:
            return extreme(subject, open, 1);
        case Pick::Least:
            return extreme(subject, open, -1);
        case Pick::Mean:
            return mean(subject, open);
        case Pick::Person:
            return onlyOne(
                open, [this](const EntryView& head) { return head.author == condition_.person; });
        case Pick::Photographed:
            return photographed(subject, open);
        case Pick::WithValue:
            return onlyOne(open, [](const EntryView& head) { return !head.isNull(); });
        case Pick::Samples:
            return journal::nullValue();
        }
        return Bytes{};
    }

private:
    // The values of the heads that `isIt` names, where they agree.
    template<typename IsIt>
    static Bytes onlyOne(const Open& open, IsIt isIt) {
        Bytes taken;
        for (const EntryView& head : open.heads) {
            if (!isIt(head)) {
                continue;
            }
            if (!taken.empty() && !journal::isSameValue(taken, head.value)) {
                return {};
            }
            taken = Bytes(head.value);
        }
        return taken;
    }

    static Bytes later(const Open& open) {
        const EntryView* latest = nullptr;
        for (const EntryView& head : open.heads) {
            if (!head.wall) {
                return {}; // nobody knows which was later
            }
            latest = latest == nullptr || head.wall->ms > latest->wall->ms ? &head : latest;
        }
        return latest == nullptr ? Bytes{} : Bytes(latest->value);
    }

    Bytes extreme(const Subject& subject, const Open& open, double sign) const {
        Bytes taken;
        std::optional<double> best;
        for (const EntryView& head : open.heads) {
            const auto scale = scaleOf(subject, head.value, database_.rulebook());
            if (!scale) {
                return {};
            }
            if (!best || *scale * sign > *best * sign) {
                best = scale;
                taken = Bytes(head.value);
            }
        }
        return taken;
    }

    Bytes mean(const Subject& subject, const Open& open) const {
        using descriptors::DescriptorKind;
        const auto kind = database_.rulebook().kindOf(subject.descriptor);
        if (kind == DescriptorKind::Stage || kind == DescriptorKind::Code) {
            return {};
        }
        double sum = 0;
        for (const EntryView& head : open.heads) {
            const auto number = journal::numberOf(head.value);
            if (!number) {
                return {};
            }
            sum += *number;
        }
        return journal::numberValue(sum / static_cast<double>(open.heads.size()));
    }

    Result<Bytes> photographed(const Subject& subject, const Open& open) {
        const auto photos = database_.heads("obs/" + std::string(subject.id) + "/" +
                                            std::string(subject.date) + "/photo");
        if (!photos) {
            return photos.error();
        }
        std::set<std::string> authors;
        for (const store::HeadRow& photo : *photos) {
            if (const auto entry = journal::readEntry(photo.entry)) {
                authors.emplace(entry->author);
            }
        }
        return onlyOne(open, [&authors](const EntryView& head) {
            return authors.count(std::string(head.author)) > 0;
        });
    }

    store::Database& database_;
    const Condition& condition_;
};

} // namespace

Result<std::vector<BulkOutcome>>
bulkOutcomes(store::Database& database, const Condition& condition, const Token& token) {
    std::vector<std::string> subjects;
    const Status read = database.eachConflict("", [&](const store::StateRow& row) {
        const Subject subject = journal::readSubject(row.subject);
        const bool isBlock = condition.block.empty() ||
                             (subject.position && subject.position->block == condition.block);
        if (isBlock &&
            (condition.descriptor.empty() || subject.descriptor == condition.descriptor)) {
            subjects.push_back(row.subject);
        }
        return !token.isCancelled();
    });
    if (!read) {
        return read.error();
    }
    std::vector<BulkOutcome> outcomes;
    Picker picker(database, condition);
    for (const std::string& text : subjects) {
        if (token.isCancelled()) {
            return Error{ErrorCode::Cancelled, "Nobody waits for this any more.", {}};
        }
        const Result<Open> open = openOf(database, text);
        if (!open) {
            return open.error();
        }
        const Subject subject = journal::readSubject(text);
        if (!picker.names(subject, *open)) {
            continue;
        }
        BulkOutcome outcome{text, open->places, {}, {}, condition.pick == Pick::Samples, {}};
        std::vector<BytesView> values;
        for (const EntryView& head : open->heads) {
            outcome.values.emplace_back(head.value);
            values.push_back(head.value);
        }
        outcome.spread = spreadOf(subject, values, database.rulebook());
        if (condition.mostApart && (!outcome.spread || *outcome.spread > *condition.mostApart)) {
            continue;
        }
        Result<Bytes> taken = picker.pick(subject, *open);
        if (!taken) {
            return taken.error();
        }
        outcome.taken = std::move(*taken);
        outcomes.push_back(std::move(outcome));
    }
    std::stable_sort(outcomes.begin(), outcomes.end(), [](const auto& a, const auto& b) {
        return a.spread.value_or(-1) > b.spread.value_or(-1);
    });
    return outcomes;
}

std::vector<std::size_t> byHandFirst(const std::vector<BulkOutcome>& outcomes, std::uint64_t seed) {
    std::vector<std::size_t> decided;
    for (std::size_t i = 0; i < outcomes.size(); ++i) {
        if (!outcomes[i].taken.empty()) {
            decided.push_back(i);
        }
    }
    std::mt19937_64 dice(seed);
    // Not std::shuffle, which differs between libraries.
    for (std::size_t i = decided.size(); i > 1; --i) {
        std::swap(decided[i - 1], decided[static_cast<std::size_t>(dice() % i)]);
    }
    decided.resize(std::min(decided.size(), kByHandFirst));
    return decided;
}

Result<Act> bulkAct(store::Database& database,
                    const std::vector<BulkOutcome>& outcomes,
                    const std::vector<std::string>& except,
                    const Decider& decider) {
    Act act;
    for (const BulkOutcome& outcome : outcomes) {
        if (outcome.taken.empty() ||
            std::find(except.begin(), except.end(), outcome.subject) != except.end()) {
            continue;
        }
        store::Draft ruling;
        ruling.author = decider.author;
        ruling.kind = journal::Kind::Ruling;
        ruling.subject = outcome.subject;
        ruling.value = outcome.taken;
        ruling.why = decider.why;
        for (store::Draft& draft : store::rulingsOver(outcome.heads, ruling)) {
            act.drafts.push_back(std::move(draft));
        }
        act.seen.push_back({outcome.subject, outcome.heads});
        unsigned further = 0;
        for (const Bytes& value : outcome.keepsSamples ? outcome.values : std::vector<Bytes>{}) {
            if (journal::isNullValue(value)) {
                continue;
            }
            Result<std::string> sample = nextSample(database, outcome.subject, further++);
            if (!sample) {
                return sample.error();
            }
            store::Draft draft;
            draft.author = decider.author;
            draft.kind = journal::Kind::Observe;
            draft.subject = std::move(*sample);
            draft.value = value;
            draft.why = decider.why;
            act.drafts.push_back(std::move(draft));
        }
    }
    if (act.drafts.empty()) {
        return Error{ErrorCode::InvalidInput, "The condition decides none of them.", {}};
    }
    if (act.drafts.size() > journal::kGreatestGroup) {
        return Error{ErrorCode::BeyondLimit,
                     "These are more than one act can hold. Narrow the condition, to one block "
                     "perhaps.",
                     std::to_string(act.drafts.size())};
    }
    return act;
}

} // namespace bullace::office
