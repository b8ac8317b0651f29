// What is known of a vine from before this walk. Nothing of it is shown before the value is in,
// unless the round is one for decisions.
#pragma once

#include "core/vineyard/catalogue.hpp"
#include "core/walk/weigh.hpp"
#include "store/database.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace bullace::field {

// An earlier value as it is settled.
struct Earlier {
    CivilDate date;
    std::string descriptor;
    bool isSample = false;
    Bytes value;
};

class Memory {
public:
    // Both must outlive this. `today` and what follows it is not remembered.
    Memory(store::Database& database, const vineyard::Catalogue& catalogue, CivilDate today)
        : database_(database),
          catalogue_(catalogue),
          today_(today) {}

    // Of the planting that stands at the position today, ascending by date. Errors: those of
    // reading.
    [[nodiscard]] Result<const std::vector<Earlier>*> of(const std::string& position);
    // Numbers of one descriptor there; samples of one day are their mean.
    [[nodiscard]] Result<std::vector<walk::Noted>> numbers(const std::string& position,
                                                           const std::string& descriptor);
    // The last number of this calendar year, else none.
    [[nodiscard]] Result<std::optional<double>> lastThisYear(const std::string& position,
                                                             const std::string& descriptor);

private:
    store::Database& database_;
    const vineyard::Catalogue& catalogue_;
    CivilDate today_;
    std::map<std::string, std::vector<Earlier>> vines_; // of the row where one is; see kMostVines
};

} // namespace bullace::field
