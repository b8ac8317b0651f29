// The bench: a grid of places (vines, or lots that were taken from them) against descriptors of one
// day, typed cell by cell; and what was opened in the field and waits for the office's number.
#pragma once

#include "office/act.hpp"
#include "office/collection.hpp"
#include "office/typed_value.hpp"

#include "core/merge/settle.hpp"
#include "core/vineyard/catalogue.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace bullace::office {

struct BenchPlan {
    std::vector<std::string> places; // positions, or "lot:ID"; any order, each once
    CivilDate day;
    std::vector<std::string> descriptors;
    unsigned samples = 1; // columns of a sampled descriptor, at least; more where more are there
};

struct BenchColumn {
    std::string descriptor;
    unsigned sample = 0; // from 1; 0: the descriptor is not sampled
};

struct BenchCell {
    std::string subject; // empty: a sample that nobody has noted yet
    Bytes value;         // empty: nothing stands there
    merge::State state = merge::State::Retracted;
    std::vector<journal::Place> heads;
};

struct BenchGrid {
    std::vector<BenchColumn> columns;
    std::vector<std::vector<BenchCell>> rows; // as the plan's places, each as long as `columns`
};

// What stands at the plan's places on its day. Samples are in the order of their subjects, whoever
// noted them. Errors: those of reading.
[[nodiscard]] Result<BenchGrid>
readBench(store::Database& database, const vineyard::Catalogue& catalogue, const BenchPlan& plan);

// Writes one cell over what was seen of it; a further sample gets the next number of this computer.
// Errors: InvalidInput without a reason where something stands there already, and where two values
// are open against each other; those of reading.
[[nodiscard]] Result<Act> noteAtBench(store::Database& database,
                                      const std::string& place,
                                      CivilDate day,
                                      const BenchColumn& column,
                                      const BenchCell& seen,
                                      const Typed& typed,
                                      const std::string& author,
                                      const std::string& why);

// The places that somebody means: a lot's kind ("juice"), a lot (its ID, number or label), a row
// (B2-07), a run ("B2-07-01 B2-07-30"), an accession (all vines where it stands), a vine or its
// label. Errors: InvalidInput, in words that say what can be typed.
[[nodiscard]] Result<std::vector<std::string>>
placesMeant(const vineyard::Catalogue& catalogue, std::string_view text, CivilDate today);

// The descriptors that are usually measured of lots of a kind, or at vines where it is empty.
// Common practice, no source.
[[nodiscard]] std::vector<std::string> usualDescriptors(std::string_view lotKind);

// Opened on a tablet, without a number of the office.
struct FieldOpened {
    CardKind kind = CardKind::Cross; // Cross, Lot, Accession or Person
    std::string id;
    std::string words;     // what it is, as far as the field has said
    std::string suggested; // the number after the office's last one of the kind; may be empty
};
[[nodiscard]] std::vector<FieldOpened> openedInField(const vineyard::Catalogue& catalogue);
// Gives the office's number, which confirms it. Errors: InvalidInput where the number is empty or
// another's already; those of reading.
[[nodiscard]] Result<Act> confirmWith(store::Database& database,
                                      const vineyard::Catalogue& catalogue,
                                      const FieldOpened& opened,
                                      const std::string& number,
                                      const std::string& author);

} // namespace bullace::office
