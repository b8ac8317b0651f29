// Short ways to write entries down in tests, of values written as numbers and texts.
#pragma once

#include "core/journal/entry.hpp"
#include "core/journal/json_value.hpp"

#include <deque>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace bullace::test {

inline constexpr const char* kSubject = "obs/B2-07-14/2026-05-12/vigour";

// What a test says of an entry; everything else is as a tablet would write it.
struct Note {
    journal::Origin origin{'t', 1, 1};
    std::uint64_t seq = 1;
    std::uint64_t count = 1;
    const char* kind = "observe";
    std::string subject = kSubject;
    Bytes value = journal::integerValue(5);
    std::vector<journal::Place> over{};
    std::optional<journal::Group> group{};
    std::optional<std::int64_t> clockMs{};
};

inline journal::Entry entryOf(const Note& note) {
    journal::Entry entry;
    entry.origin = note.origin;
    entry.seq = note.seq;
    entry.count = note.count;
    entry.author = "mk";
    entry.kind = note.kind;
    entry.subject = note.subject;
    entry.value = note.value;
    entry.over = note.over;
    entry.group = note.group;
    if (note.clockMs) {
        entry.wall = journal::Wall{*note.clockMs, 0};
    }
    return entry;
}

inline Bytes record(std::initializer_list<std::pair<const char*, Bytes>> parts) {
    journal::MapValue map;
    for (const auto& [name, value] : parts) {
        map.add(name, value);
    }
    return map.bytes();
}

inline Bytes bytesOfHex(std::string_view hex) {
    return fromHex(hex).value_or(Bytes("this is no hex"));
}

// Entries whose views stay valid as long as it lives.
class Held {
public:
    const journal::EntryView& add(const Note& note) {
        bytes_.push_back(entryOf(note).encode());
        views_.push_back(journal::readEntry(bytes_.back()).value());
        digests_.push_back(sha256(bytes_.back()));
        return views_.back();
    }
    [[nodiscard]] const std::deque<journal::EntryView>& views() const { return views_; }
    [[nodiscard]] const std::deque<Digest>& digests() const { return digests_; }

private:
    std::deque<Bytes> bytes_;
    std::deque<journal::EntryView> views_;
    std::deque<Digest> digests_;
};

} // namespace bullace::test
