// Label codes: which places and lots have one, and new ones for those that have none.
#pragma once

#include "office/act.hpp"

#include "core/vineyard/catalogue.hpp"

#include <string>
#include <vector>

namespace bullace::office {

struct Labelled {
    std::string place; // a position, or "lot:ID"
    std::string code;  // empty where it has none yet
};

// In the order of the places.
[[nodiscard]] std::vector<Labelled> labelsOf(const vineyard::Catalogue& catalogue,
                                             const std::vector<std::string>& places);

struct NewLabels {
    std::vector<Labelled> all; // each with its code
    Act act;                   // writes those that are new; without drafts where none is
};
// Gives a code to each that has none. Codes of one office begin at a number made from `device`, its
// digits, so that two offices that give codes apart from one another seldom give the same; none of
// this station's is given twice.
[[nodiscard]] NewLabels giveLabels(const vineyard::Catalogue& catalogue,
                                   std::vector<Labelled> places,
                                   std::uint64_t device,
                                   const std::string& author);

} // namespace bullace::office
