// Tables from spreadsheets: the collection and past years' observations, looked at line by line
// before anything is written, then written all or not at all. What is there already is left as it
// is, so that the same file twice changes nothing.
#pragma once

#include "office/act.hpp"
#include "office/typed_value.hpp"

#include "core/report/csv.hpp"
#include "core/vineyard/catalogue.hpp"

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace bullace::office {

enum class TableKind {
    ObservationsLong, // one value a line: position or lot, date, descriptor, value
    ObservationsWide, // one vine and day a line, a column for each descriptor
    Accessions,       // one accession a line; FAO/Bioversity MCPD v2.1 names are known
    Plantings,        // position, accession, from, until
    Rows,             // block, row, vines
    People            // code, name
};

// The scale that a column of stages is written in. Codes of another one are converted by table,
// never between two of its lines.
enum class StageScale {
    Bbch,                  // Lorenz et al. 1995
    ModifiedEichhornLorenz // Coombe 1995
};

// What a column is for. An empty field: it is left out.
struct TableColumn {
    std::string title; // in the file
    report::CellKind kind = report::CellKind::Text;
    std::string field; // "position", "date", "descriptor", "value", "observer", "accession", a
                       // descriptor's code (wide), an accession's field, …
};

struct TableWish {
    TableKind kind = TableKind::ObservationsLong;
    std::vector<TableColumn> columns;
    StageScale scale = StageScale::Bbch;
    UnitWishes units;   // of the numbers in the file
    std::string author; // who imports
    std::string why;    // the file's name, usually
};

struct TableLine {
    std::size_t line = 0; // of the file
    std::string message;  // one sentence
};

struct TablePlan {
    TableWish wish;
    std::vector<store::Draft> drafts; // that are not there yet
    std::vector<Seen> seen;           // what stood there when it was planned
    std::size_t lines = 0;            // with cells
    std::size_t there = 0;            // values that are there already
    std::size_t conflicting = 0; // that will stand beside another value: a conflict, or a rule's
    std::vector<TableLine> problems; // at most kMostProblems; problemCount is all
    std::size_t problemCount = 0;
};
inline constexpr std::size_t kMostProblems = 1000;

// What the file seems to be: its kind, and a field for each column by its title. English and
// Spanish titles, MCPD names and descriptors' codes and titles are known.
[[nodiscard]] TableWish guessWish(const report::CsvTable& table,
                                  const vineyard::Catalogue& catalogue);

// The fields that columns of such a table can be for. The required ones come first.
struct TableField {
    std::string field;
    bool isRequired = false;
};
[[nodiscard]] std::vector<TableField> fieldsOf(TableKind kind,
                                               const vineyard::Catalogue& catalogue);

// Everything that would be written, and every line that cannot be. Errors: InvalidInput where a
// required column is missing; those of reading.
[[nodiscard]] Result<TablePlan> planTable(store::Database& database,
                                          const vineyard::Catalogue& catalogue,
                                          const report::CsvTable& table,
                                          const TableWish& wish);

// Writes the plan in one transaction. Errors: InvalidInput where a line has a problem, nothing is
// new or somebody wrote in between; those of Database::append. Then nothing was written.
[[nodiscard]] Result<std::size_t>
importTable(store::Database& database, const TablePlan& plan, const Clock& clock);

// A code of the modified Eichhorn-Lorenz scale as BBCH; nothing where the two have no stage in
// common. Source  IFV Occitanie, Les stades phénologiques de la vigne (the correspondence table),
// and for 19, 20,
//         21, 25, 26, 41 and 47 the definitions of both scales (Coombe 1995, Aust. J. Grape Wine
//         Res. 1:104-110; Lorenz et al. 1995, ibid. 1:100-103). 35 is 81; 34 (softening) stands
//         before colouring in one scale and behind it in the other, and is not converted.
[[nodiscard]] std::optional<std::int64_t> bbchOfEichhornLorenz(std::int64_t code);

} // namespace bullace::office
