// A pedigree as a drawing: a box for each accession, a knot for each cross.
#pragma once

#include "core/breeding/pedigree_layout.hpp"
#include "core/report/drawing.hpp"
#include "core/season/station_notes.hpp"

#include <QString>

namespace bullace::desk {

// Mother's lines are whole, father's dashed, a selfing's double. A parent that is no accession of
// the station has a dashed edge.
[[nodiscard]] report::Drawing pedigreeDrawing(const season::StationNotes& notes,
                                              const breeding::Pedigree& pedigree,
                                              const breeding::PedigreeLayout& layout,
                                              const QString& title);

// "Brindlecap" of "A022 Brindlecap"; empty where it has no name.
[[nodiscard]] QString nameAlone(const season::NotedAccession& accession);

} // namespace bullace::desk
