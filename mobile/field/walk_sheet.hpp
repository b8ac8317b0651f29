// What was noted on a walk, stop by stop, as it stands now: read from the journal, never guessed.
#pragma once

#include "field/walk_plan.hpp"

#include "core/walk/weigh.hpp"
#include "store/own_acts.hpp"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace bullace::field {

// What a side is called in an entry's `why`: a stop that is passed on both sides is two stops of
// one position. Empty for the whole vine.
[[nodiscard]] std::string_view sideWords(walk::Side side);

// One value that stands.
struct NotedValue {
    std::string subject;
    std::string descriptor;
    unsigned sample = 0; // its number; 0 where it is no sample
    journal::Place place;
    Bytes value;
    std::optional<std::string> as;
    std::optional<walk::Doubtful> doubt;
    bool isKept = false; // a person looked at the doubt and kept the value

    [[nodiscard]] bool isNone() const; // {"none": REASON}
    [[nodiscard]] std::string_view noneReason() const;
};

class WalkSheet {
public:
    // Both must outlive this.
    WalkSheet(store::Database& database, const WalkPlan& plan);

    // Everything of this walk, from the journal. Errors: those of reading.
    [[nodiscard]] Status readAll();
    // What stands of the subject now; nothing happens where it is of no stop of the walk.
    [[nodiscard]] Status refresh(const std::string& subject);

    // At a stop, ascending by sample; empty where nothing is noted.
    [[nodiscard]] std::vector<const NotedValue*> at(std::size_t stop,
                                                    std::string_view descriptor) const;
    [[nodiscard]] const std::vector<NotedValue>& all(std::size_t stop) const;
    [[nodiscard]] NotedValue* find(const std::string& subject);
    // The vine's own state as noted on this walk: "dead", "missing", …; empty where it was not.
    [[nodiscard]] std::string vineState(std::size_t stop) const;

    // obs/POSITION/DATE/DESCRIPTOR.
    [[nodiscard]] std::string subjectAt(std::size_t stop, std::string_view descriptor) const;
    // The same with a sample number that this device has not used there. Errors: those of reading.
    [[nodiscard]] Result<std::string> sampleSubjectAt(std::size_t stop,
                                                      std::string_view descriptor);
    // The stop to which a subject belongs.
    [[nodiscard]] std::optional<std::size_t> stopOf(std::string_view subject) const;
    // Samples by side, repeats: whether values at the stop stand beside others instead of for them.
    [[nodiscard]] bool isSampledAt(std::size_t stop) const;

private:
    [[nodiscard]] bool isOfThisWalk(const journal::Place& place) const;

    store::Database& database_;
    const WalkPlan& plan_;
    std::map<std::string, std::vector<std::size_t>, std::less<>> stops_; // by position
    std::map<std::string, std::size_t, std::less<>> placed_; // subjects of stops passed twice
    std::vector<std::vector<NotedValue>> values_;            // by stop, ascending by subject
    std::map<std::string, unsigned> numbers_;                // the greatest sample number used
};

} // namespace bullace::field
