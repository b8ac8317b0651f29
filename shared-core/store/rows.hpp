// Stepping through a statement's rows.
#pragma once

#include "core/base/result.hpp"
#include "store/sqlite.hpp"

#include <cstdint>

namespace bullace::store {

// Steps through all rows; `row` returns false, or an error, to stop.
template<typename Row>
Status forEach(Statement& statement, Row row) {
    while (true) {
        const Result<bool> has = statement.step();
        if (!has) {
            return has.error();
        }
        if (!*has) {
            return {};
        }
        const Result<bool> more = row();
        if (!more) {
            return more.error();
        }
        if (!*more) {
            return {};
        }
    }
}

// Rows that lie together by the subject in their column 0: `add` takes in a row, `done` what
// belongs to one subject, and returns false to stop.
template<typename Add, typename Done>
Status forEachSubject(Statement& statement, Add add, Done done) {
    std::int64_t subject = -1;
    bool hasMore = true;
    Status read = forEach(statement, [&]() -> Result<bool> {
        const std::int64_t next = statement.integer(0);
        hasMore = subject < 0 || subject == next || done();
        subject = next;
        if (hasMore) {
            add();
        }
        return hasMore;
    });
    if (read && hasMore && subject >= 0) {
        done();
    }
    return read;
}

} // namespace bullace::store
