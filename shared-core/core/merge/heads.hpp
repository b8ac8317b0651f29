// Which entries of one subject stand at the end of its history: a function of the set of its
// entries alone.
#pragma once

#include "core/base/digest.hpp"
#include "core/journal/entry.hpp"

#include <cstddef>
#include <span>
#include <vector>

namespace bullace::merge {

// One entry of the subject. `counts` is its standing, its group's included.
struct Member {
    const journal::EntryView* entry = nullptr;
    const Digest* digest = nullptr;
    bool counts = false;
};

// The order that decides wherever one is needed: (origin as bytes, seq, digest).
[[nodiscard]] bool comesBefore(const Member& a, const Member& b);

// An edge that is not followed: it names nothing of this subject with a smaller count. Whether what
// it names is not here yet, or stands on another subject, or is no earlier, is for the one who
// reports it to look up.
struct LooseEdge {
    std::size_t member = 0; // index of the entry that has it
    journal::Place names;
};

struct Worked {
    std::vector<std::size_t> heads; // indices, in the order of comesBefore
    std::vector<LooseEdge> loose;
};

// Works a subject from its greatest count down (DESIGN §6.1).
// members  All entries of one subject that are held, in any order, each once.
[[nodiscard]] Worked workSubject(std::span<const Member> members);

} // namespace bullace::merge
