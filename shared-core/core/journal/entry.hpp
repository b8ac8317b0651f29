// An entry of a journal, and the exact bytes that are stored, hashed and sent for it.
//
// The bytes are a CBOR array of twelve items: origin, seq, count, wall, author, kind, subject,
// value, over, group, why, as; an absent field is null. Fields that this program does not know are
// kept in a thirteenth item, a map, which is there only when it holds something. Example,
// {"origin":"t0000000000000001.1","seq":1,"count":1,"author":"mk","kind":"observe",
// "subject":"obs/B2-07-14/2026-05-12/stage","value":65,"over":[]}:
//   8c 73 "t0000000000000001.1" 01 01 f6 62 "mk" 67 "observe" 78 1d "obs/B2-07-14/2026-05-12/stage"
//   18 41 80 f6 f6 f6
#pragma once

#include "core/base/bytes.hpp"
#include "core/base/cbor.hpp"
#include "core/base/digest.hpp"
#include "core/base/result.hpp"
#include "core/journal/origin.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::journal {

// An entry can be no larger than this at all, whatever it says.
inline constexpr std::size_t kGreatestEntryBytes = 65536;

enum class Kind { Observe, Retract, Ruling, Catalog, Undo, Remark, Unknown };

[[nodiscard]] Kind kindOf(std::string_view word);
[[nodiscard]] std::string_view kindWord(Kind kind); // Unknown has no word

// The device's clock when it wrote the entry: evidence, not order.
struct Wall {
    std::int64_t ms = 0;      // UTC milliseconds since 1970
    std::int64_t minutes = 0; // of the local time from UTC, east is positive
    friend bool operator==(const Wall&, const Wall&) = default;
};

// One act of n consecutive entries, from seq first on.
struct Group {
    std::uint64_t first = 0;
    std::uint64_t n = 0;
    friend bool operator==(const Group&, const Group&) = default;
};

// An entry that owns its parts; for writing.
struct Entry {
    Origin origin;
    std::uint64_t seq = 0;
    std::uint64_t count = 0;
    std::optional<Wall> wall;
    std::string author;
    std::string kind; // the word; unknown ones are kept
    std::string subject;
    Bytes value; // one CBOR item; see json_value.hpp
    std::vector<Place> over;
    std::optional<Group> group;
    std::optional<std::string> why;
    std::optional<std::string> as;
    Bytes extra; // a CBOR map of the fields we do not know; empty where there are none

    [[nodiscard]] Bytes encode() const;
};

// An entry read in place. All views point into `bytes`, which somebody else owns.
struct EntryView {
    BytesView bytes;
    Origin origin;
    std::uint64_t seq = 0;
    std::uint64_t count = 0;
    std::optional<Wall> wall;
    std::string_view author;
    std::string_view kindText;
    Kind kind = Kind::Unknown;
    std::string_view subject;
    BytesView value;
    BytesView over; // the CBOR array
    std::size_t overCount = 0;
    std::optional<Group> group;
    std::optional<std::string_view> why;
    std::optional<std::string_view> as;
    BytesView extra;

    [[nodiscard]] Place place() const { return {origin, seq}; }
    [[nodiscard]] bool isNull() const { return value.size() == 1 && value[0] == '\xF6'; }
    [[nodiscard]] std::vector<Place> edges() const;
    [[nodiscard]] Entry owned() const;
};

// Reads an entry out of exactly these bytes. Accepts only what Entry::encode() would write: an
// entry read and written again is the same bytes. Errors: BeyondLimit, Damaged; the message says
// what is wrong in a breeder's words, without a place. Whether the entry counts is another
// question: standing().
[[nodiscard]] Result<EntryView> readEntry(BytesView bytes);

// The chain: SHA-256 of the digest of the entry before (32 zero bytes before seq 1) followed by
// this entry's bytes.
[[nodiscard]] inline Digest chainDigest(const Digest& before, BytesView entryBytes) {
    return sha256({before.view(), entryBytes});
}

} // namespace bullace::journal
