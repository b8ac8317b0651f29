// The station's collection out of a journal file.
#pragma once

#include "core/vineyard/catalogue.hpp"
#include "store/database.hpp"

#include <memory>

namespace bullace::store {

// Of all settled subjects of the collection, as they are now. Errors: those of reading.
[[nodiscard]] Result<std::unique_ptr<vineyard::Catalogue>> readCatalogue(Database& database);

} // namespace bullace::store
