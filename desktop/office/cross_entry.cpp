#include "office/cross_entry.hpp"

#include "core/journal/json_value.hpp"

#include <algorithm>
#include <charconv>

namespace bullace::office {

namespace {

std::string numberFor(int year, std::size_t n) {
    const int short_ = year % 100;
    return (short_ < 10 ? "0" : "") + std::to_string(short_) + "-" + std::to_string(n);
}

// n of "X25-n" or "25-n"; 0 of any other.
std::size_t placeIn(std::string_view id, const std::string& prefix) {
    id.remove_prefix(id.starts_with('X') ? 1 : 0);
    if (!id.starts_with(prefix)) {
        return 0;
    }
    id.remove_prefix(prefix.size());
    std::size_t n = 0;
    const auto [end, error] = std::from_chars(id.data(), id.data() + id.size(), n);
    return error == std::errc() && end == id.data() + id.size() ? n : 0;
}

store::Draft catalog(const std::string& author, std::string subject, const std::string& text) {
    store::Draft draft;
    draft.author = author;
    draft.kind = journal::Kind::Catalog;
    draft.subject = std::move(subject);
    draft.value = journal::textValue(text);
    return draft;
}

} // namespace

std::vector<std::string>
nextCrossIds(const vineyard::Catalogue& catalogue, int year, std::size_t count) {
    const std::string first = numberFor(year, 0);
    const std::string prefix = first.substr(0, first.size() - 1);
    std::size_t last = 0;
    for (const vineyard::Cross& cross : catalogue.crosses()) {
        last = std::max({last, placeIn(cross.id, prefix), placeIn(cross.number, prefix)});
    }
    std::vector<std::string> ids;
    for (std::size_t i = 0; i < count; ++i) {
        ids.push_back("X" + numberFor(year, last + i + 1));
    }
    return ids;
}

Result<Act> enterCrosses(const vineyard::Catalogue& catalogue,
                         std::span<const CrossEntry> crosses,
                         int year,
                         const std::string& author) {
    if (crosses.empty()) {
        return Error{ErrorCode::InvalidInput, "There is no cross to enter.", {}};
    }
    const std::vector<std::string> ids = nextCrossIds(catalogue, year, crosses.size());
    Act act;
    for (std::size_t i = 0; i < crosses.size(); ++i) {
        for (const std::string& parent : {crosses[i].mother, crosses[i].father}) {
            if (!catalogue.accessions().contains(parent)) {
                return Error{ErrorCode::InvalidInput,
                             "The accession " + parent + " is not in the collection.",
                             {}};
            }
        }
        const std::string subject = "cross/" + ids[i] + "/";
        act.drafts.push_back(catalog(author, subject + "number", ids[i].substr(1)));
        act.drafts.push_back(catalog(author, subject + "mother", crosses[i].mother));
        act.drafts.push_back(catalog(author, subject + "father", crosses[i].father));
        for (const char* field : {"number", "mother", "father"}) {
            act.seen.push_back({subject + field, {}});
        }
    }
    return act;
}

} // namespace bullace::office
