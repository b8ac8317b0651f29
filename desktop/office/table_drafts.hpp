// What an import would write, without what is there already.
#pragma once

#include "office/act.hpp"

#include "core/vineyard/catalogue.hpp"

#include <cstddef>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace bullace::office {

class TableDrafts {
public:
    // The database must outlive this.
    explicit TableDrafts(store::Database& database) : database_(database) {}

    enum class Beside { Yes, No }; // beside what stands there, or over it

    // Whether the subject stands as the text says already, and is then counted: what a rule made of
    // two values (a mean of counts) nobody could type. Errors: those of reading.
    [[nodiscard]] Result<bool>
    isThere(const vineyard::Asked& asked, const std::string& subject, const std::string& text);
    // Takes the draft where it says something new. Errors: those of reading.
    [[nodiscard]] Status take(store::Draft draft, Beside beside);
    // One sample of the observation that is its subject.
    [[nodiscard]] Status takeSample(store::Draft draft);

    [[nodiscard]] std::vector<store::Draft> takeDrafts() { return std::move(drafts_); }
    [[nodiscard]] std::vector<Seen> takeSeen() { return std::move(seen_); }
    [[nodiscard]] std::size_t there() const { return there_; }
    [[nodiscard]] std::size_t conflicting() const { return conflicting_; }

private:
    struct Samples {
        bool isRead = false;
        unsigned fresh = 0;
        std::map<Bytes, std::size_t> there; // comparable values, how many are not matched yet
    };

    [[nodiscard]] Result<bool> isHeadOf(const store::Draft& draft, const journal::Place& place);

    store::Database& database_;
    std::vector<store::Draft> drafts_;
    std::vector<Seen> seen_;
    std::size_t there_ = 0;
    std::size_t conflicting_ = 0;
    std::set<std::pair<std::string, Bytes>> drafted_; // subjects and comparable values
    std::map<std::string, Samples> samples_;          // by the observation
};

} // namespace bullace::office
