#include "store/read_catalogue.hpp"

#include "store/json_reader.hpp"

namespace bullace::store {

Result<std::unique_ptr<vineyard::Catalogue>> readCatalogue(Database& database) {
    auto catalogue = std::make_unique<vineyard::Catalogue>();
    vineyard::Catalogue::Reader reader(*catalogue);
    for (const std::string_view part : vineyard::Catalogue::Reader::parts()) {
        const Status read = database.eachState(std::string(part), [&reader](const StateRow& row) {
            const Result<Bytes> value = readJson(row.valueJson);
            if (!row.valueJson.empty() && value) {
                reader.take(row.subject, *value);
            }
            return true;
        });
        if (!read) {
            return read.error();
        }
    }
    reader.finish();
    return catalogue;
}

} // namespace bullace::store
