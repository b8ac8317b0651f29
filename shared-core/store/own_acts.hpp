// What was last written on this tablet, act by act, from the newest back: what Undo takes back.
#pragma once

#include "core/journal/entry.hpp"
#include "store/database.hpp"

#include <cstdint>
#include <deque>
#include <functional>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace bullace::store {

// Entries that were written together, ascending by seq.
struct OwnAct {
    std::vector<journal::Entry> entries;
};

// Reads the journal of this device backwards as far as it is asked to, through all of its epochs.
class OwnActs {
public:
    // The database must outlive this.
    explicit OwnActs(Database& database) : database_(database) {}

    // The newest act that can be taken back: not undone, and neither an undo nor a remark. Nothing
    // where there is none. Errors: those of reading.
    [[nodiscard]] Result<std::optional<OwnAct>> last();

    // Tells each act from the newest back that counts still (not undone, and no undo), until `act`
    // returns false or the ends in `before` are reached.
    [[nodiscard]] Status eachSince(const journal::Vector& before,
                                   const std::function<bool(const OwnAct&)>& act);

private:
    struct Stretch {
        journal::Segment segment;
        std::uint64_t next = 0; // the seq to be read next, downwards; below segment.first: done
    };
    class Reader;

    Database& database_;
};

} // namespace bullace::store
