#include "core/journal/standing.hpp"

#include "core/journal/subject.hpp"

namespace bullace::journal {

namespace {

bool isWithinLimits(const EntryView& entry) {
    return entry.seq <= kGreatestSeq && entry.count <= kGreatestCount &&
           entry.overCount <= kMostEdges && entry.subject.size() <= kLongestSubject &&
           entry.author.size() <= kLongestAuthor && (!entry.group || isGroupPlausible(entry));
}

// A cross, lot, person or wild vine that this device opened: its ID begins with the device's six
// digits and "-".
bool isOpenedBy(std::string_view subject, const Origin& origin) {
    const Subject parts = readSubject(subject);
    const bool canOpen = parts.form == SubjectForm::Cross || parts.form == SubjectForm::Lot ||
                         parts.form == SubjectForm::Person || parts.form == SubjectForm::Accession;
    return canOpen && parts.id.starts_with(fieldPrefix(origin.device) + "-");
}

bool undoesOnlyItsOwn(const EntryView& entry) {
    for (const Place& place : entry.edges()) {
        if (!place.origin.isSameDevice(entry.origin)) {
            return false;
        }
    }
    return true;
}

bool mayFieldDevice(const EntryView& entry) {
    const bool isObs = isBelowObs(entry.subject);
    switch (entry.kind) {
    case Kind::Observe:
    case Kind::Retract:
        return isObs;
    case Kind::Catalog:
        return isOpenedBy(entry.subject, entry.origin);
    case Kind::Undo:
        return (isObs || isOpenedBy(entry.subject, entry.origin)) && undoesOnlyItsOwn(entry);
    case Kind::Remark:
        return true;
    default:
        return false;
    }
}

bool mayOffice(const EntryView& entry) {
    const bool isObs = isBelowObs(entry.subject);
    switch (entry.kind) {
    case Kind::Observe:
    case Kind::Retract:
        return isObs;
    case Kind::Catalog:
        return !isObs;
    default:
        return true;
    }
}

bool hasRight(const EntryView& entry) {
    if ((entry.kind == Kind::Observe && entry.isNull()) ||
        (entry.kind == Kind::Retract && !entry.isNull())) {
        return false;
    }
    if (entry.origin.letter == 't') {
        return mayFieldDevice(entry);
    }
    return entry.origin.letter == 's' && mayOffice(entry);
}

} // namespace

bool isGroupPlausible(const EntryView& entry) {
    const Group& group = *entry.group;
    return group.first > 0 && group.n > 0 && group.n <= kGreatestGroup &&
           group.first <= entry.seq && entry.seq - group.first < group.n;
}

Standing standing(const EntryView& entry) {
    if (entry.kind == Kind::Unknown) {
        return Standing::UnknownKind;
    }
    if (!isWithinLimits(entry)) {
        return Standing::BeyondLimit;
    }
    return hasRight(entry) ? Standing::Counts : Standing::NoRight;
}

std::string_view standingWord(Standing standing) {
    switch (standing) {
    case Standing::Counts:
        return "counts";
    case Standing::UnknownKind:
        return "kind";
    case Standing::BeyondLimit:
        return "limit";
    case Standing::NoRight:
        return "right";
    case Standing::GroupNotWhole:
        return "group";
    }
    return {};
}

std::string_view standingSentence(Standing standing) {
    switch (standing) {
    case Standing::Counts:
        return "It counts.";
    case Standing::UnknownKind:
        return "This version does not know this kind of entry; it is kept for one that does.";
    case Standing::BeyondLimit:
        return "It is beyond a limit (number, list, group or length), so it is kept and counts for "
               "nothing.";
    case Standing::NoRight:
        return "The device that wrote it has no right to this, so it is kept and counts for "
               "nothing.";
    case Standing::GroupNotWhole:
        return "It belongs to an act of several entries that is not complete, so it does not count "
               "yet.";
    }
    return {};
}

std::string fieldPrefix(std::uint64_t device) {
    return deviceText('t', device).substr(1, 6);
}

} // namespace bullace::journal
