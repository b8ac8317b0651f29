// Reading stretches of the subjects, each between two bounds: what a walk asks vine by vine.
#include "store/database.hpp"
#include "store/sqlite.hpp"

namespace bullace::store {

namespace {

constexpr const char* kStates = "SELECT id, path, state, value, rule, head FROM subjects "
                                "WHERE path >= ?1 AND path < ?2 AND state IS NOT NULL "
                                "ORDER BY path";
constexpr const char* kPaths = "SELECT path FROM subjects WHERE path >= ?1 AND path < ?2 "
                               "ORDER BY path";

} // namespace

Status Database::eachStateBetween(const std::string& low,
                                  const std::string& high,
                                  const std::function<bool(const StateRow&)>& row) {
    const PathStretch stretch{low, high};
    return eachStateIn({&stretch, 1}, row);
}

Status Database::eachStateIn(std::span<const PathStretch> stretches,
                             const std::function<bool(const StateRow&)>& row) {
    if (Status ready = usable(); !ready) {
        return ready;
    }
    Result<Statement> rows = connection_->prepare(kStates);
    if (!rows) {
        return rows.error();
    }
    for (const PathStretch& stretch : stretches) {
        rows->reset();
        rows->bindText(1, stretch.low).bindText(2, stretch.high);
        while (true) {
            const Result<bool> has = rows->step();
            if (!has) {
                return has.error();
            }
            if (!*has) {
                break;
            }
            const Result<StateRow> made = rowAt(*rows);
            if (!made) {
                return made.error();
            }
            if (!row(*made)) {
                return {};
            }
        }
    }
    return {};
}

Result<std::optional<StateRow>> Database::state(const std::string& subject) {
    std::optional<StateRow> found;
    // No text of an entry holds a zero byte: that subject alone lies between the two.
    const Status read = eachStateBetween(subject, subject + '\0', [&found](const StateRow& row) {
        found = row;
        return false;
    });
    if (!read) {
        return read.error();
    }
    return found;
}

Status Database::eachSubjectBetween(const std::string& low,
                                    const std::string& high,
                                    const std::function<bool(std::string_view)>& subject) {
    if (Status ready = usable(); !ready) {
        return ready;
    }
    Result<Statement> rows = connection_->prepare(kPaths);
    if (!rows) {
        return rows.error();
    }
    rows->bindText(1, low).bindText(2, high);
    while (true) {
        const Result<bool> has = rows->step();
        if (!has) {
            return has.error();
        }
        if (!*has || !subject(rows->text(0))) {
            return {};
        }
    }
}

} // namespace bullace::store
