// The cards of the collection.
#include "office/collection.hpp"

#include "core/journal/json_value.hpp"
#include "core/vineyard/passport.hpp"
#include "store/json_reader.hpp"

#include <algorithm>
#include <array>

namespace bullace::office {

namespace {

using Type = FieldType;

constexpr std::array<std::string_view, 7> kKindWords{
    "accession", "block", "person", "round", "descriptor", "lot", "cross"};
constexpr std::array<std::string_view, 4> kStatuses{
    "wild accession", "cultivar", "selection", "seedling"};
constexpr std::array<std::string_view, 2> kOrders{"serpentine", "one-way"};
constexpr std::array<std::string_view, 5> kLotKinds{"berries", "juice", "buds", "pollen", "seed"};
constexpr std::array<std::string_view, 10> kDescriptorKinds{
    "stage", "code", "category", "percent", "count", "score", "measure", "record", "text", "photo"};

constexpr std::array kAccession{FieldForm{"name"},
                                FieldForm{"number"},
                                FieldForm{"status", Type::ChosenWord, kStatuses},
                                FieldForm{"taxon"},
                                FieldForm{"verified", Type::YesNo},
                                FieldForm{"flower-sex", Type::Whole},
                                FieldForm{"mother"},
                                FieldForm{"father"},
                                FieldForm{"cross"},
                                FieldForm{"earlier"}};
constexpr std::array kBlock{FieldForm{"name"},
                            FieldForm{"rows", Type::Rows},
                            FieldForm{"closed-until", Type::Date},
                            FieldForm{"no-tasting-until", Type::Date}};
constexpr std::array kPerson{FieldForm{"name"}, FieldForm{"number"}};
constexpr std::array kRound{FieldForm{"title"},
                            FieldForm{"where", Type::Texts},
                            FieldForm{"descriptors", Type::Texts},
                            FieldForm{"order", Type::ChosenWord, kOrders},
                            FieldForm{"every-nth-row", Type::Whole},
                            FieldForm{"both-sides", Type::YesNo},
                            FieldForm{"samples", Type::Numbers},
                            FieldForm{"precision", Type::Numbers},
                            FieldForm{"blind", Type::YesNo},
                            FieldForm{"repeat", Type::YesNo},
                            FieldForm{"decision", Type::YesNo},
                            FieldForm{"only-what-stands-out", Type::YesNo},
                            FieldForm{"least", Type::YesNo},
                            FieldForm{"stages", Type::Wholes},
                            FieldForm{"from", Type::Date},
                            FieldForm{"by", Type::Date},
                            FieldForm{"closed", Type::Date}};
constexpr std::array kDescriptor{FieldForm{"title"},
                                 FieldForm{"kind", Type::ChosenWord, kDescriptorKinds},
                                 FieldForm{"unit"},
                                 FieldForm{"range", Type::Range},
                                 FieldForm{"decimals", Type::Whole},
                                 FieldForm{"sampled", Type::YesNo},
                                 FieldForm{"codes", Type::Texts},
                                 FieldForm{"rule", Type::Rule},
                                 FieldForm{"off", Type::YesNo}};
constexpr std::array kLot{FieldForm{"number"},
                          FieldForm{"kind", Type::ChosenWord, kLotKinds},
                          FieldForm{"from"},
                          FieldForm{"date", Type::Date},
                          FieldForm{"amount"},
                          FieldForm{"kept"},
                          FieldForm{"label"},
                          FieldForm{"cross"},
                          FieldForm{"seeds", Type::Whole},
                          FieldForm{"sinkers", Type::Whole},
                          FieldForm{"stratified", Type::Date},
                          FieldForm{"sown", Type::Date},
                          FieldForm{"germinated", Type::Whole},
                          FieldForm{"germinated-on", Type::Date}};
constexpr std::array kCross{FieldForm{"number"},
                            FieldForm{"mother"},
                            FieldForm{"father"},
                            FieldForm{"mother-at"},
                            FieldForm{"pollen-lot"},
                            FieldForm{"closed", Type::Date}};

std::string subjectOf(CardKind kind, const std::string& id, std::string_view field) {
    return std::string(cardWord(kind)) + "/" + id + "/" + std::string(field);
}

} // namespace

bool isFromField(std::string_view id) {
    return id.size() > 7 && id[6] == '-' &&
           id.substr(0, 6).find_first_not_of("0123456789abcdef") == std::string_view::npos;
}

std::string_view cardWord(CardKind kind) {
    return kKindWords[static_cast<std::size_t>(kind)];
}

std::vector<FieldForm> formsOf(CardKind kind) {
    std::vector<FieldForm> forms;
    const auto take = [&forms](const auto& all) { forms.assign(all.begin(), all.end()); };
    switch (kind) {
    case CardKind::Accession:
        take(kAccession);
        for (const vineyard::PassportField& passport : vineyard::passportFields()) {
            if (passport.field != "name") {
                forms.push_back({passport.field, Type::Passport});
            }
        }
        break;
    case CardKind::Block:
        take(kBlock);
        break;
    case CardKind::Person:
        take(kPerson);
        break;
    case CardKind::Round:
        take(kRound);
        break;
    case CardKind::Descriptor:
        take(kDescriptor);
        break;
    case CardKind::Lot:
        take(kLot);
        break;
    case CardKind::Cross:
        take(kCross);
        break;
    }
    return forms;
}

Result<Card> readCard(store::Database& database, CardKind kind, const std::string& id) {
    Card card{kind, id, {}};
    for (const FieldForm& form : formsOf(kind)) {
        card.fields.push_back({form, std::string(form.field), {}, {}, false, true});
    }
    const std::string above = std::string(cardWord(kind)) + "/" + id;
    const Status read = database.eachState(above, [&](const store::StateRow& row) {
        const std::string field =
            row.subject.substr(std::min(above.size() + 1, row.subject.size()));
        auto found = std::find_if(card.fields.begin(), card.fields.end(), [&](const auto& one) {
            return one.field == field;
        });
        if (found == card.fields.end()) {
            card.fields.push_back({{}, field, {}, {}, false, false});
            found = card.fields.end() - 1;
        }
        found->heads = row.heads;
        found->isOpen = row.state == merge::State::Open;
        const Result<Bytes> value = store::readJson(row.valueJson);
        if (!row.valueJson.empty() && value) {
            found->text = fieldText(found->form, *value);
        }
        return true;
    });
    if (!read) {
        return read.error();
    }
    return card;
}

std::vector<CardLine> linesOf(const vineyard::Catalogue& catalogue, CardKind kind) {
    std::vector<CardLine> lines;
    switch (kind) {
    case CardKind::Accession:
        for (const auto& [id, accession] : catalogue.accessions()) {
            lines.push_back({id,
                             accession.name,
                             accession.status,
                             isFromField(id) && accession.number.empty()});
        }
        break;
    case CardKind::Block:
        for (const vineyard::Block& block : catalogue.blocks()) {
            lines.push_back({block.code, block.name, std::to_string(block.rows.size()), false});
        }
        break;
    case CardKind::Person:
        for (const vineyard::Person& person : catalogue.people()) {
            lines.push_back(
                {person.code, person.name, {}, isFromField(person.code) && person.number.empty()});
        }
        break;
    case CardKind::Round:
        for (const walk::Round& round : catalogue.rounds()) {
            lines.push_back({round.id, round.title, {}, false});
        }
        break;
    case CardKind::Descriptor:
        for (const vineyard::Asked* asked : catalogue.descriptors()) {
            lines.push_back({std::string(asked->known.code),
                             std::string(asked->known.title),
                             std::string(asked->known.unit),
                             false});
        }
        break;
    case CardKind::Lot:
        for (const vineyard::Lot& lot : catalogue.lots()) {
            lines.push_back({lot.id,
                             lot.label,
                             lot.kind + " " + lot.from,
                             isFromField(lot.id) && lot.number.empty()});
        }
        break;
    case CardKind::Cross:
        for (const vineyard::Cross& cross : catalogue.crosses()) {
            lines.push_back({cross.id,
                             cross.number,
                             cross.mother + " × " + cross.father,
                             isFromField(cross.id) && cross.number.empty()});
        }
        break;
    }
    return lines;
}

Result<Act> setField(CardKind kind,
                     const std::string& id,
                     const std::string& field,
                     Bytes value,
                     const std::vector<journal::Place>& seen,
                     const std::string& author,
                     const std::string& why) {
    const bool isGood = !id.empty() && id.size() <= 64 && id.find('/') == std::string::npos &&
                        (kind != CardKind::Block || vineyard::isBlockCode(id));
    if (!isGood) {
        return Error{ErrorCode::InvalidInput,
                     "\"" + id +
                         "\" cannot be an ID: 1 to 64 letters without \"/\"; a block's begins "
                         "with a letter.",
                     {}};
    }
    store::Draft draft;
    draft.author = author;
    draft.kind = journal::Kind::Catalog;
    draft.subject = subjectOf(kind, id, field);
    draft.value = std::move(value);
    draft.over = seen;
    if (!why.empty()) {
        draft.why = why;
    }
    Act act;
    act.seen.push_back({draft.subject, seen});
    act.drafts.push_back(std::move(draft));
    return act;
}

} // namespace bullace::office
