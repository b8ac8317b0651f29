#include "office/settling.hpp"

#include "core/journal/json_value.hpp"
#include "store/json_reader.hpp"
#include "store/rulings.hpp"

#include <algorithm>
#include <charconv>

namespace bullace::office {

using journal::Kind;
using journal::Place;
using store::Draft;

namespace {

Draft draftOf(const Decider& decider, Kind kind, std::string subject, Bytes value) {
    Draft draft;
    draft.author = decider.author;
    draft.kind = kind;
    draft.subject = std::move(subject);
    draft.value = std::move(value);
    draft.why = decider.why;
    return draft;
}

std::vector<Place> headsOf(const CaseFile& file) {
    std::vector<Place> heads;
    for (const Side& side : file.sides) {
        heads.push_back(side.place);
    }
    std::sort(heads.begin(), heads.end());
    return heads;
}

// The ruling over all sides, and what was seen of them.
Act rulingOver(const CaseFile& file, Bytes value, const Decider& decider) {
    Act act;
    const std::vector<Place> heads = headsOf(file);
    act.drafts =
        store::rulingsOver(heads, draftOf(decider, Kind::Ruling, file.subject, std::move(value)));
    act.seen.push_back({file.subject, heads});
    return act;
}

// What a field of the collection says now, and its heads.
struct Field {
    Bytes value;
    std::vector<Place> heads;
};
Result<Field> fieldOf(store::Database& database, const std::string& subject) {
    const auto row = database.state(subject);
    if (!row) {
        return row.error();
    }
    Field field;
    if (*row) {
        Result<Bytes> value = store::readJson((*row)->valueJson);
        field.value = value ? std::move(*value) : Bytes{};
        field.heads = (*row)->heads;
    }
    return field;
}

// A list of texts with one more in it; nothing to write where it is there.
Status addToList(store::Database& database,
                 const std::string& subject,
                 const std::string& item,
                 const Decider& decider,
                 Act& act) {
    const Result<Field> field = fieldOf(database, subject);
    if (!field) {
        return field.error();
    }
    std::vector<Bytes> items;
    const Bytes fresh = journal::textValue(item);
    for (const BytesView old : journal::itemsOf(field->value).value_or(std::vector<BytesView>{})) {
        if (old == fresh) {
            return {};
        }
        items.emplace_back(old);
    }
    items.push_back(fresh);
    Draft draft = draftOf(decider, Kind::Catalog, subject, journal::listValue(items));
    draft.over = field->heads;
    act.drafts.push_back(std::move(draft));
    act.seen.push_back({subject, field->heads});
    return {};
}

} // namespace

Result<Act> ruleFor(const vineyard::Catalogue& catalogue,
                    const CaseFile& file,
                    BytesView value,
                    const Decider& decider) {
    const vineyard::Asked* asked = file.form == journal::SubjectForm::Observation
                                       ? catalogue.descriptor(file.descriptor)
                                       : nullptr;
    const bool wasNoted = std::any_of(file.sides.begin(), file.sides.end(), [value](const auto& s) {
        return journal::isSameValue(s.value, value);
    });
    // What a tablet took may be chosen, also where today's catalogue would not take it.
    if (asked != nullptr && asked->unknownKind.empty() && !wasNoted &&
        !journal::isNullValue(value)) {
        if (Status allowed = descriptors::checkValue(asked->known, value); !allowed) {
            return allowed.error();
        }
    }
    return rulingOver(file, Bytes(value), decider);
}

Result<std::string>
nextSample(store::Database& database, const std::string& observation, unsigned further) {
    const journal::Origin own = database.about().own;
    const std::string above = observation + "/" + own.text() + ",";
    unsigned greatest = 0;
    const Status read = database.eachSubjectBetween(above, above + ":", [&](std::string_view path) {
        unsigned number = 0;
        const std::string_view digits = path.substr(above.size());
        std::from_chars(digits.data(), digits.data() + digits.size(), number);
        greatest = std::max(greatest, number);
        return true;
    });
    if (!read) {
        return read.error();
    }
    return above + std::to_string(greatest + 1 + further);
}

Result<Act> keepAsSamples(store::Database& database, const CaseFile& file, const Decider& decider) {
    const journal::Subject subject = journal::readSubject(file.subject);
    if (subject.form != journal::SubjectForm::Observation || !subject.sample.empty()) {
        return Error{ErrorCode::InvalidInput,
                     "Only values of an observation can be kept as samples. Take one of them, or "
                     "give another value.",
                     {}};
    }
    Act act = rulingOver(file, journal::nullValue(), decider);
    unsigned further = 0;
    for (const Side& side : file.sides) {
        if (journal::isNullValue(side.value)) {
            continue;
        }
        Result<std::string> sample = nextSample(database, file.subject, further++);
        if (!sample) {
            return sample.error();
        }
        Draft draft = draftOf(decider, Kind::Observe, std::move(*sample), side.value);
        draft.as = side.as;
        act.drafts.push_back(std::move(draft));
    }
    return act;
}

Result<Act> moveSide(store::Database& database,
                     const CaseFile& file,
                     std::size_t side,
                     const std::string& position,
                     const Decider& decider) {
    const journal::Subject subject = journal::readSubject(file.subject);
    if (!subject.position || !subject.sample.empty() || !vineyard::readPosition(position) ||
        position == subject.id) {
        return Error{ErrorCode::InvalidInput,
                     "\"" + position +
                         "\" is no other vine. Write block, row and vine, like B2-07-14.",
                     {}};
    }
    std::optional<Bytes> rest;
    for (std::size_t i = 0; i < file.sides.size(); ++i) {
        if (i == side) {
            continue;
        }
        if (rest && !journal::isSameValue(*rest, file.sides[i].value)) {
            return Error{ErrorCode::InvalidInput,
                         "The values that would stay do not agree either. Take one of them first.",
                         {}};
        }
        rest = file.sides[i].value;
    }
    Act act = rulingOver(file, rest.value_or(journal::nullValue()), decider);
    const std::string target =
        "obs/" + position + "/" + std::string(subject.date) + "/" + std::string(subject.descriptor);
    auto heads = office::headsOf(database, target);
    if (!heads) {
        return heads.error();
    }
    // What stands there already was not on the screen: the value that comes stands beside it.
    Draft moved = draftOf(decider, Kind::Observe, target, file.sides[side].value);
    moved.as = file.sides[side].as;
    act.drafts.push_back(std::move(moved));
    act.seen.push_back({target, std::move(*heads)});
    return act;
}

std::string lookAgainRound(CivilDate from) {
    return "look-" + writeDate(from);
}

Result<Act> lookAgain(store::Database& database,
                      const CaseFile& file,
                      CivilDate from,
                      const std::string& title,
                      const Decider& decider) {
    const journal::Subject subject = journal::readSubject(file.subject);
    if (!subject.position) {
        return Error{
            ErrorCode::InvalidInput, "Only what stands at a vine can be looked at again.", {}};
    }
    const std::string id = lookAgainRound(from);
    const std::string round = "round/" + id + "/";
    Act act;
    const std::pair<const char*, Bytes> fixed[] = {
        {"title", journal::textValue(title)},
        {"blind", journal::booleanValue(true)},
        {"repeat", journal::booleanValue(true)},
        {"from", journal::textValue(writeDate(from))},
    };
    for (const auto& [name, value] : fixed) {
        const Result<Field> field = fieldOf(database, round + name);
        if (!field) {
            return field.error();
        }
        if (field->heads.empty()) {
            act.drafts.push_back(draftOf(decider, Kind::Catalog, round + name, value));
            act.seen.push_back({round + name, {}});
        }
    }
    Status added = addToList(database, round + "where", std::string(subject.id), decider, act);
    added =
        added ? addToList(
                    database, round + "descriptors", std::string(subject.descriptor), decider, act)
              : std::move(added);
    if (!added) {
        return added.error();
    }
    Draft remark = draftOf(decider, Kind::Remark, file.subject, lookAgainValue(id));
    remark.over = headsOf(file);
    act.seen.push_back({file.subject, remark.over});
    act.drafts.push_back(std::move(remark));
    return act;
}

Result<Undone> undoLast(store::Database& database, const std::string& author, const Clock& clock) {
    store::OwnActs acts(database);
    const Result<std::optional<store::OwnAct>> last = acts.last();
    if (!last) {
        return last.error();
    }
    Undone undone;
    if (!*last) {
        return undone;
    }
    std::vector<Place> places;
    for (const journal::Entry& entry : (*last)->entries) {
        if (journal::kindOf(entry.kind) != Kind::Remark) {
            places.push_back({entry.origin, entry.seq});
            undone.subjects.push_back(entry.subject);
        }
    }
    auto written = perform(database, takingBack(places, undone.subjects, author), clock);
    if (!written) {
        return written.error();
    }
    undone.undos = std::move(*written);
    return undone;
}

} // namespace bullace::office
