// Work on crosses: what is due at a mother vine, and what can be opened in the field.
#pragma once

#include "field/pen.hpp"

#include "core/vineyard/catalogue.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bullace::field {

struct CrossDue {
    const vineyard::Cross* cross = nullptr; // of the catalogue
    std::string position;                   // the mother vine
    std::string step;                       // due; empty where the cross is harvested
    std::string pollen;                     // the lot, else the father, in words
    std::optional<int> lastTag;             // of a bag
    unsigned flowers = 0;                   // pollinated so far
    std::optional<int> lastStage;           // of the mother this year
    bool isAboutToLoseCaps = false;
};

// The crosses planned at one vine, or at all vines (empty), by row and vine. Errors: those of
// reading.
[[nodiscard]] Result<std::vector<CrossDue>> crossesDue(store::Database& database,
                                                       const vineyard::Catalogue& catalogue,
                                                       CivilDate today,
                                                       const std::string& position = {});

// An ID that this device may open, KIND/ID/…: six hex digits of the device, '-', the next number.
// Errors: those of reading.
[[nodiscard]] Result<std::string> freshId(store::Database& database, std::string_view kind);

// Each opens one thing as one act and returns its ID. Errors: those of writing.
[[nodiscard]] Result<std::string>
openPerson(store::Database& database, Pen& pen, const std::string& name);
struct NewCross {
    std::string author;
    std::string mother;   // accession
    std::string motherAt; // position
    std::string father;   // accession, or a few words
    std::string pollenLot;
};
[[nodiscard]] Result<std::string>
openCross(store::Database& database, Pen& pen, const NewCross& cross);
struct NewLot {
    std::string author;
    std::string kind; // berries, juice, buds, pollen, seed
    std::string from; // position
    std::string accession;
    std::string amount; // as typed; may be empty
};
struct OpenedLot {
    std::string id;
    std::string label; // a label code: to be written on the bag, or printed
};
[[nodiscard]] Result<OpenedLot> openLot(store::Database& database, Pen& pen, const NewLot& lot);
// A wild vine that nobody had a number for. The place is the observer's own words: exact wild sites
// are left out of exports unless asked for.
[[nodiscard]] Result<std::string> openWildVine(store::Database& database,
                                               Pen& pen,
                                               const std::string& author,
                                               const std::string& name,
                                               const std::string& site);

} // namespace bullace::field
