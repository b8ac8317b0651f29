// How this tablet writes: as a person, with the tablet's clock as it is put right.
#pragma once

#include "core/base/clock.hpp"
#include "store/database.hpp"

#include <span>
#include <string>
#include <vector>

namespace bullace::field {

class Pen {
public:
    // Both must outlive this.
    Pen(store::Database& database, const Clock& clock) : database_(database), clock_(clock) {}

    // What the station's clock is ahead of the tablet's, where somebody took it over.
    void setCorrection(std::int64_t ms) { correctionMs_ = ms; }
    [[nodiscard]] std::int64_t correctionMs() const { return correctionMs_; }

    [[nodiscard]] std::int64_t nowMs() const { return clock_.nowMs() + correctionMs_; }
    [[nodiscard]] CivilDate today() const { return clock_.dateAt(nowMs()); }

    // One act, durable when it returns. Errors: those of Database::append.
    [[nodiscard]] Result<std::vector<journal::Place>>
    write(std::span<const store::Draft> acts, std::span<const store::Bookmark> marks = {}) {
        const std::int64_t now = nowMs();
        return database_.append(acts,
                                journal::Wall{now, clock_.minutesFromUtc(now)},
                                acts.size() > 1 ? store::Grouping::OneAct : store::Grouping::Single,
                                marks);
    }

private:
    store::Database& database_;
    const Clock& clock_;
    std::int64_t correctionMs_ = 0;
};

} // namespace bullace::field
