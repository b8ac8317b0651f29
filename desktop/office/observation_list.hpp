// All that was ever observed, as one list in pages: a station's million lines are never held at
// once.
#pragma once

#include "office/desk.hpp"
#include "office/vine_file.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace bullace::office {

struct ObservationWish {
    std::string block;      // its code; empty: all
    std::string descriptor; // empty: all
};

// Where each page of the list begins: its first subject.
struct ObservationPages {
    std::size_t count = 0;
    std::size_t perPage = 0;
    std::vector<std::string> starts;
};

// Along the rows as bytes do, then by day and descriptor. Errors: those of reading; Cancelled.
[[nodiscard]] Result<ObservationPages> readObservationPages(store::Database& database,
                                                            const ObservationWish& wish,
                                                            std::size_t perPage,
                                                            const Token& token);

// The lines of one page: `from` is its start. A subject of which everything was undone has an empty
// value. Errors: those of reading.
[[nodiscard]] Result<std::vector<VineValue>> readObservationPage(store::Database& database,
                                                                 const ObservationWish& wish,
                                                                 const std::string& from,
                                                                 std::size_t most);

} // namespace bullace::office
