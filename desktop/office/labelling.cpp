#include "office/labelling.hpp"

#include "core/journal/json_value.hpp"
#include "core/vineyard/label_code.hpp"

#include <map>
#include <set>

namespace bullace::office {

namespace {

constexpr std::string_view kLot = "lot:";
constexpr std::uint64_t kSpread = 0x9e3779b97f4a7c15; // 2^64 over the golden ratio (Knuth, TAOCP 3)

std::string subjectOf(const std::string& place) {
    if (std::string_view(place).starts_with(kLot)) {
        return "lot/" + place.substr(kLot.size()) + "/label";
    }
    const std::size_t dash = place.find('-');
    return "block/" + place.substr(0, dash) + "/label-" + place.substr(dash + 1);
}

} // namespace

std::vector<Labelled> labelsOf(const vineyard::Catalogue& catalogue,
                               const std::vector<std::string>& places) {
    std::map<std::string, std::string> codes;
    for (const auto& [code, position] : catalogue.labels()) {
        codes[position] = code;
    }
    for (const vineyard::Lot& lot : catalogue.lots()) {
        codes[std::string(kLot) + lot.id] = lot.label;
    }
    std::vector<Labelled> labels;
    for (const std::string& place : places) {
        const auto found = codes.find(place);
        labels.push_back({place, found == codes.end() ? std::string{} : found->second});
    }
    return labels;
}

NewLabels giveLabels(const vineyard::Catalogue& catalogue,
                     std::vector<Labelled> places,
                     std::uint64_t device,
                     const std::string& author) {
    std::set<std::string> used;
    for (const auto& [code, position] : catalogue.labels()) {
        used.insert(code);
    }
    for (const vineyard::Lot& lot : catalogue.lots()) {
        used.insert(lot.label);
    }
    NewLabels made;
    made.all = std::move(places);
    std::uint64_t number = device * kSpread % vineyard::kLabelCodes;
    for (Labelled& one : made.all) {
        if (!one.code.empty()) {
            continue;
        }
        do {
            number = (number + 1) % vineyard::kLabelCodes;
            one.code = vineyard::labelCode(number);
        } while (!used.insert(one.code).second);
        store::Draft draft;
        draft.author = author;
        draft.kind = journal::Kind::Catalog;
        draft.subject = subjectOf(one.place);
        draft.value = journal::textValue(one.code);
        made.act.seen.push_back({draft.subject, {}});
        made.act.drafts.push_back(std::move(draft));
    }
    return made;
}

} // namespace bullace::office
