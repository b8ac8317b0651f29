#include "core/journal/entry.hpp"

#include <array>

namespace bullace::journal {

namespace {

struct KindWord {
    Kind kind;
    std::string_view word;
};
constexpr std::array<KindWord, 6> kKinds{{{Kind::Observe, "observe"},
                                          {Kind::Retract, "retract"},
                                          {Kind::Ruling, "ruling"},
                                          {Kind::Catalog, "catalog"},
                                          {Kind::Undo, "undo"},
                                          {Kind::Remark, "remark"}}};

constexpr std::size_t kItems = 12;

bool nextIsNull(CborReader& in) {
    CborType type{};
    return in.peek(type) && type == CborType::Null;
}

bool readPlaceItem(CborReader& in, Place& place) {
    std::size_t count = 0;
    std::string_view origin;
    if (!in.array(count) || (count != 2 && !in.fail("what an entry replaces is not a pair")) ||
        !in.text(origin) || !in.unsignedInteger(place.seq)) {
        return false;
    }
    const auto read = readOrigin(origin);
    if (!read) {
        return in.fail("an origin is misspelt");
    }
    place.origin = *read;
    return place.seq > 0 || in.fail("a seq must be at least 1");
}

bool readOriginItem(CborReader& in, Origin& origin) {
    std::string_view text;
    if (!in.text(text)) {
        return false;
    }
    const auto read = readOrigin(text);
    if (!read) {
        return in.fail("the origin is misspelt");
    }
    origin = *read;
    return true;
}

bool readWall(CborReader& in, std::optional<Wall>& wall) {
    if (nextIsNull(in)) {
        return in.null();
    }
    std::size_t count = 0;
    Wall read;
    if (!in.array(count) || (count != 2 && !in.fail("the clock is not a pair of numbers")) ||
        !in.integer(read.ms) || !in.integer(read.minutes)) {
        return false;
    }
    wall = read;
    return true;
}

bool readGroup(CborReader& in, std::optional<Group>& group) {
    if (nextIsNull(in)) {
        return in.null();
    }
    std::size_t count = 0;
    Group read;
    if (!in.array(count) || (count != 2 && !in.fail("a group is not a pair of numbers")) ||
        !in.unsignedInteger(read.first) || !in.unsignedInteger(read.n)) {
        return false;
    }
    group = read;
    return true;
}

bool readOptionalText(CborReader& in, std::optional<std::string_view>& text) {
    if (nextIsNull(in)) {
        return in.null();
    }
    std::string_view read;
    if (!in.text(read)) {
        return false;
    }
    text = read;
    return true;
}

bool readOver(CborReader& in, EntryView& entry, BytesView bytes) {
    const std::size_t start = in.position();
    if (!in.array(entry.overCount)) {
        return false;
    }
    Place ignored;
    for (std::size_t i = 0; i < entry.overCount; ++i) {
        if (!readPlaceItem(in, ignored)) {
            return false;
        }
    }
    entry.over = bytes.substr(start, in.position() - start);
    return true;
}

bool readExtra(CborReader& in, EntryView& entry) {
    CborType type{};
    return in.any(entry.extra) && CborReader(entry.extra).peek(type) &&
           ((type == CborType::Map && entry.extra[0] != '\xA0') ||
            in.fail("what follows the known fields is no map of further ones"));
}

bool readItems(CborReader& in, EntryView& entry, BytesView bytes) {
    std::size_t items = 0;
    if (!in.array(items) || (items != kItems && items != kItems + 1 &&
                             !in.fail("it does not have the fields of an entry"))) {
        return false;
    }
    const bool isRead =
        readOriginItem(in, entry.origin) && in.unsignedInteger(entry.seq) &&
        (entry.seq > 0 || in.fail("a seq must be at least 1")) && in.unsignedInteger(entry.count) &&
        readWall(in, entry.wall) && in.text(entry.author) && in.text(entry.kindText) &&
        in.text(entry.subject) && in.any(entry.value) && readOver(in, entry, bytes) &&
        readGroup(in, entry.group) && readOptionalText(in, entry.why) &&
        readOptionalText(in, entry.as) && (items == kItems || readExtra(in, entry));
    return isRead && (in.atEnd() || in.fail("something follows the entry"));
}

} // namespace

Kind kindOf(std::string_view word) {
    for (const KindWord& known : kKinds) {
        if (known.word == word) {
            return known.kind;
        }
    }
    return Kind::Unknown;
}

std::string_view kindWord(Kind kind) {
    for (const KindWord& known : kKinds) {
        if (known.kind == kind) {
            return known.word;
        }
    }
    return {};
}

Bytes Entry::encode() const {
    Bytes bytes;
    bytes.reserve(128 + subject.size() + value.size());
    CborWriter out(bytes);
    const auto optionalText = [&out](const std::optional<std::string>& text) {
        if (text) {
            out.text(*text);
        } else {
            out.null();
        }
    };
    out.array(extra.empty() ? kItems : kItems + 1);
    out.text(origin.text());
    out.integer(static_cast<std::int64_t>(seq));
    out.integer(static_cast<std::int64_t>(count));
    if (wall) {
        out.array(2);
        out.integer(wall->ms);
        out.integer(wall->minutes);
    } else {
        out.null();
    }
    out.text(author);
    out.text(kind);
    out.text(subject);
    out.raw(value);
    out.array(over.size());
    for (const Place& place : over) {
        out.array(2);
        out.text(place.origin.text());
        out.integer(static_cast<std::int64_t>(place.seq));
    }
    if (group) {
        out.array(2);
        out.integer(static_cast<std::int64_t>(group->first));
        out.integer(static_cast<std::int64_t>(group->n));
    } else {
        out.null();
    }
    optionalText(why);
    optionalText(as);
    out.raw(extra);
    return bytes;
}

std::vector<Place> EntryView::edges() const {
    std::vector<Place> places;
    places.reserve(overCount);
    CborReader in(over, CborLimits{.elements = kGreatestEntryBytes});
    std::size_t announced = 0;
    Place place;
    for (bool more = in.array(announced); more && places.size() < announced;) {
        more = readPlaceItem(in, place);
        if (more) {
            places.push_back(place);
        }
    }
    return places;
}

Entry EntryView::owned() const {
    Entry entry;
    entry.origin = origin;
    entry.seq = seq;
    entry.count = count;
    entry.wall = wall;
    entry.author = author;
    entry.kind = kindText;
    entry.subject = subject;
    entry.value = value;
    entry.over = edges();
    entry.group = group;
    entry.why = why;
    entry.as = as;
    entry.extra = extra;
    return entry;
}

Result<EntryView> readEntry(BytesView bytes) {
    if (bytes.size() > kGreatestEntryBytes) {
        return Error{ErrorCode::BeyondLimit, "The entry is larger than 64 KiB.", {}};
    }
    EntryView entry;
    entry.bytes = bytes;
    CborReader in(bytes);
    if (!readItems(in, entry, bytes)) {
        return Error{
            ErrorCode::Damaged, std::string("The entry cannot be read: ") + in.failure() + ".", {}};
    }
    entry.kind = kindOf(entry.kindText);
    return entry;
}

} // namespace bullace::journal
