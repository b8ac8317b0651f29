// Whether an entry counts, judged from its own bytes by constants: the same everywhere, whenever it
// came.
#pragma once

#include "core/journal/entry.hpp"

#include <string_view>

namespace bullace::journal {

// Bounds beyond which an entry is kept and passed on, and counts for nothing (DESIGN §6.1, §8).
inline constexpr std::uint64_t kGreatestSeq = std::uint64_t{1} << 48;
inline constexpr std::uint64_t kGreatestCount = std::uint64_t{1} << 48;
inline constexpr std::size_t kMostEdges = 1000;
inline constexpr std::uint64_t kGreatestGroup = 10'000;
inline constexpr std::size_t kLongestSubject = 512; // bytes
inline constexpr std::size_t kLongestAuthor = 64;   // bytes

enum class Standing {
    Counts,
    UnknownKind,
    BeyondLimit,
    NoRight, // its origin may not write this kind on this subject, or this value with this kind
    GroupNotWhole, // of a group that is not complete, or of which one may not count; told by the
                   // store, not by standing()
};

// The standing of the entry by itself. Where it belongs to a group, it counts only if all of the
// group do.
[[nodiscard]] Standing standing(const EntryView& entry);

// "right", "limit", …: stable words for listings.
[[nodiscard]] std::string_view standingWord(Standing standing);
// One plain sentence for a person.
[[nodiscard]] std::string_view standingSentence(Standing standing);

// Whether the group's numbers can be true of this entry: n within its limit, and seq within the
// group.
[[nodiscard]] bool isGroupPlausible(const EntryView& entry);

// "00c5a9": the first six hex digits of a device, with which (and a "-") begin the IDs that it
// opens in the field.
[[nodiscard]] std::string fieldPrefix(std::uint64_t device);

} // namespace bullace::journal
