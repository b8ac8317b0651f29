// What is written on a walk.
#include "field/walk.hpp"

#include "core/journal/json_value.hpp"
#include "core/journal/subject.hpp"
#include "core/walk/shift_run.hpp"

#include <algorithm>
#include <set>

namespace bullace::field {

using journal::Kind;
using store::Draft;

Draft Walk::draft(Kind kind, std::string subject, Bytes value) const {
    Draft draft;
    draft.author = plan_.author;
    draft.kind = kind;
    draft.subject = std::move(subject);
    draft.value = std::move(value);
    return draft;
}

// What stands on the screen of a subject: what this tablet noted there on this walk.
std::vector<journal::Place> Walk::headsOn(const std::string& subject) {
    const auto stop = sheet_->stopOf(subject);
    std::vector<journal::Place> places;
    for (const NotedValue& noted : stop ? sheet_->all(*stop) : std::vector<NotedValue>{}) {
        if (noted.subject == subject) {
            places.push_back(noted.place);
        }
    }
    return places;
}

Result<Draft> Walk::observation(std::size_t stop,
                                std::string_view descriptor,
                                const Bytes& value,
                                bool isSample) {
    std::string subject = sheet_->subjectAt(stop, descriptor);
    const bool isBeside = isSample || sheet_->isSampledAt(stop);
    if (isBeside) {
        Result<std::string> sample = sheet_->sampleSubjectAt(stop, descriptor);
        if (!sample) {
            return sample.error();
        }
        subject = std::move(*sample);
    }
    Draft made = draft(Kind::Observe, subject, value);
    made.over = isBeside ? std::vector<journal::Place>{} : headsOn(subject);
    const std::string_view side = sideWords(plan_.stops[stop].side);
    if (!side.empty()) {
        made.why = side;
    }
    return made;
}

Status Walk::note(const Bytes& value, const std::optional<std::string>& as) {
    const Ask& ask = asked();
    const vineyard::Asked* known = catalogue_.descriptor(ask.descriptor);
    if (known == nullptr || !known->unknownKind.empty()) {
        return Error{ErrorCode::InvalidInput,
                     "\"" + ask.descriptor +
                         "\" cannot be noted here: it is of a newer version. Leave it open.",
                     {}};
    }
    if (Status checked = descriptors::checkValue(known->known, value); !checked) {
        return checked;
    }
    const bool isSample = ask.samples > 1 || known->known.isSampled;
    // A vine that was passed as "not observed" and has a value now: the value replaces the reason.
    Draw draw{{}, after(footing_, 1)};
    for (const NotedValue* noted : sheet_->at(footing_.stop, ask.descriptor)) {
        if (isSample && noted->isNone()) {
            Draft retract = draft(Kind::Retract, noted->subject, journal::nullValue());
            retract.over = {noted->place};
            draw.drafts.push_back(std::move(retract));
        }
    }
    Result<Draft> made = observation(footing_.stop, ask.descriptor, value, isSample);
    if (!made) {
        return made.error();
    }
    made->as = as;
    lastNoted_ = made->subject;
    draw.drafts.push_back(std::move(*made));
    return write(draw);
}

Status Walk::noteBeside(std::string_view descriptor,
                        const Bytes& value,
                        const std::optional<std::string>& as) {
    const vineyard::Asked* known = catalogue_.descriptor(descriptor);
    if (known == nullptr) {
        return Error{ErrorCode::NotFound, "This station does not note that.", {}};
    }
    if (Status checked = descriptors::checkValue(known->known, value); !checked) {
        return checked;
    }
    Result<Draft> made = observation(footing_.stop, descriptor, value, known->known.isSampled);
    if (!made) {
        return made.error();
    }
    // Notes and photos stand beside one another; they replace nothing.
    const bool isList = known->known.kind == descriptors::DescriptorKind::Text ||
                        known->known.kind == descriptors::DescriptorKind::Photo;
    if (isList) {
        made->over.clear();
    }
    made->as = as;
    return write({{std::move(*made)}, footing_});
}

Status Walk::noteNothing(std::string_view reason) {
    Result<Draft> made =
        observation(footing_.stop, asked().descriptor, journal::noneValue(reason), false);
    if (!made) {
        return made.error();
    }
    lastNoted_ = made->subject;
    const Footing next = after(footing_, wanted(footing_.stop, footing_.ask));
    return write({{std::move(*made)}, next});
}

Status Walk::markVine(std::string_view state) {
    const bool isGone = state == "dead" || state == "missing";
    Draw draw{{}, isGone ? afterStop(footing_) : footing_};
    Draft vine =
        draft(Kind::Observe, sheet_->subjectAt(footing_.stop, "vine"), journal::textValue(state));
    vine.over = headsOn(vine.subject);
    const std::string_view side = sideWords(plan_.stops[footing_.stop].side);
    if (!side.empty()) {
        vine.why = side; // seen from there: the mark stands at this stop
    }
    draw.drafts.push_back(std::move(vine));
    const Bytes none = journal::noneValue(state == "dead" ? "dead" : "no-vine");
    for (std::size_t ask = 0; isGone && ask < plan_.asks.size(); ++ask) {
        if (isDone(footing_.stop, ask) || plan_.asks[ask].descriptor == "vine") {
            continue;
        }
        Result<Draft> made = observation(footing_.stop, plan_.asks[ask].descriptor, none, false);
        if (!made) {
            return made.error();
        }
        draw.drafts.push_back(std::move(*made));
    }
    return write(draw);
}

namespace {

struct Taking {
    std::vector<Draft> drafts;
    TakenBack taken;
    std::string asked; // the descriptor that the act answered
};

// The undo of the last act that stands; nothing where there is none.
Result<std::optional<Taking>> takingOfLast(store::Database& database, const std::string& author) {
    store::OwnActs acts(database);
    const Result<std::optional<store::OwnAct>> last = acts.last();
    if (!last) {
        return last.error();
    }
    if (!*last) {
        return std::optional<Taking>{};
    }
    Taking taking;
    for (const journal::Entry& entry : (*last)->entries) {
        Draft undo;
        undo.author = author;
        undo.kind = Kind::Undo;
        undo.subject = entry.subject;
        undo.value = journal::nullValue();
        undo.over = {{entry.origin, entry.seq}};
        taking.drafts.push_back(std::move(undo));
        taking.taken.subjects.push_back(entry.subject);
    }
    const journal::Entry& newest = (*last)->entries.back();
    taking.taken.value = newest.value;
    taking.asked = journal::readSubject(newest.subject).descriptor;
    return std::optional(std::move(taking));
}

} // namespace

Result<std::optional<TakenBack>>
takeBackLast(store::Database& database, Pen& pen, const std::string& author) {
    const Result<std::optional<Taking>> taking = takingOfLast(database, author);
    if (!taking) {
        return taking.error();
    }
    if (!*taking) {
        return std::optional<TakenBack>{};
    }
    const auto written = pen.write((*taking)->drafts);
    if (!written) {
        return written.error();
    }
    return std::optional((*taking)->taken);
}

Result<std::optional<TakenBack>> Walk::undo() {
    const Result<std::optional<Taking>> taking = takingOfLast(database_, plan_.author);
    if (!taking) {
        return taking.error();
    }
    if (!*taking) {
        return std::optional<TakenBack>{};
    }
    const Footing next = beforeAct((*taking)->taken.subjects, (*taking)->asked);
    if (Status written = write({(*taking)->drafts, next}); !written) {
        return written.error();
    }
    lastNoted_.clear();
    return std::optional((*taking)->taken);
}

// Back to where it was noted. An act over many stops, or of another walk, leaves one where one is.
Footing Walk::beforeAct(const std::vector<std::string>& subjects, const std::string& asked) const {
    std::set<std::size_t> stops;
    for (const std::string& subject : subjects) {
        const auto stop = sheet_->stopOf(subject);
        if (stop) {
            stops.insert(*stop);
        }
    }
    if (stops.size() != 1) {
        return footing_;
    }
    Footing next = footing_;
    next.stop = *stops.begin();
    next.isAtRowEnd = false;
    next.ask = next.stop == footing_.stop ? footing_.ask : 0;
    for (std::size_t ask = 0; ask < plan_.asks.size(); ++ask) {
        next.ask = plan_.asks[ask].descriptor == asked ? ask : next.ask;
    }
    // A vine that was only just passed: the walk goes on from there as before it.
    if (next.front == next.stop + 1) {
        next.front = next.stop;
    }
    return next;
}

// Puts at stop `to` what stands at `from`: what both or one of them has.
Status Walk::addMoved(std::vector<Draft>& drafts, std::size_t to, std::optional<std::size_t> from) {
    std::set<std::string> unsampled;
    for (const NotedValue& noted : from ? sheet_->all(*from) : std::vector<NotedValue>{}) {
        Result<Draft> made = observation(to, noted.descriptor, noted.value, noted.sample != 0);
        if (!made) {
            return made.error();
        }
        made->as = noted.as;
        made->why = made->why.value_or("shifted by one"); // the side, where there are sides
        unsampled.insert(made->subject);
        drafts.push_back(std::move(*made));
    }
    for (const NotedValue& noted : sheet_->all(to)) {
        if (unsampled.count(noted.subject) > 0) {
            continue; // replaced
        }
        Draft retract = draft(Kind::Retract, noted.subject, journal::nullValue());
        retract.over = {noted.place};
        retract.why = "shifted by one";
        drafts.push_back(std::move(retract));
    }
    return {};
}

Status Walk::shiftRun(std::size_t first, int by) {
    const Leg leg = legOf(first);
    std::vector<bool> hasValue;
    std::size_t last = first;
    for (std::size_t i = leg.first; i <= leg.last; ++i) {
        hasValue.push_back(!sheet_->all(i).empty());
        last = hasValue.back() && i > first ? i : last;
    }
    const Result<std::vector<walk::Moved>> moved =
        walk::shiftRun(hasValue, first - leg.first, last - leg.first, by);
    if (!moved) {
        return moved.error();
    }
    Draw draw{{}, footing_};
    for (const walk::Moved& one : *moved) {
        const auto from = one.from ? std::optional(*one.from + leg.first) : std::nullopt;
        if (Status added = addMoved(draw.drafts, one.to + leg.first, from); !added) {
            return added;
        }
    }
    slipAsideUntil_ = footing_.stop;
    return write(draw);
}

} // namespace bullace::field
