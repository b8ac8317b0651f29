// The tables of a journal file, tablet's and station's alike, and how older files are brought up to
// date.
#pragma once

#include "core/base/result.hpp"
#include "store/sqlite.hpp"

#include <cstdint>

namespace bullace::store {

inline constexpr std::int64_t kApplicationId = 0x42756C6C; // "Bull", in the header of the file
inline constexpr std::int64_t kSchemaVersion = 1;

// Makes all tables in an empty file, inside the caller's transaction.
[[nodiscard]] Status createSchema(Connection& connection);
// The derived tables once more, as temporary ones that hide the file's own: for making them anew
// beside it.
[[nodiscard]] Status createScratchTables(Connection& connection);

// Whether the file is a journal that this program can use. A newer version's file is read as long
// as all tables and columns that this one knows are there: who changes what a column means gives it
// another name. It is never written. Errors: Damaged (no journal), NewerVersion.
[[nodiscard]] Status checkSchema(Connection& connection, Access access);

} // namespace bullace::store
