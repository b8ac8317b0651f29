#include "office/paper_typing.hpp"

#include "office/settling.hpp"

#include "core/journal/json_value.hpp"

#include <map>

namespace bullace::office {

using journal::itemsOf;
using journal::listValue;
using journal::memberOf;
using journal::textOf;
using journal::textValue;

namespace {

constexpr const char* kMark = "paper-typing";

// The value of one cell; nothing where the cell is empty.
std::optional<Result<Typed>> cellValue(const vineyard::Catalogue& catalogue,
                                       const BenchColumn& column,
                                       const std::string& text,
                                       const UnitWishes& wishes,
                                       const WordCode& codeOf) {
    if (text.empty()) {
        return std::nullopt;
    }
    const vineyard::Asked* asked = catalogue.descriptor(column.descriptor);
    if (asked == nullptr) {
        return Error{ErrorCode::InvalidInput, "This descriptor is not asked any more.", {}};
    }
    return readPaper(*asked, text, wishes, codeOf);
}

bool isSame(const std::optional<Result<Typed>>& first, const std::optional<Result<Typed>>& second) {
    if (!first || !second) {
        return !first && !second;
    }
    return first->ok() && second->ok() && journal::isSameValue((*first)->value, (*second)->value);
}

std::vector<std::string> textsIn(BytesView list) {
    std::vector<std::string> texts;
    for (const BytesView item : itemsOf(list).value_or(std::vector<BytesView>{})) {
        texts.emplace_back(textOf(item).value_or(""));
    }
    return texts;
}

Bytes textList(const std::vector<std::string>& texts) {
    std::vector<Bytes> items;
    for (const std::string& text : texts) {
        items.push_back(textValue(text));
    }
    return listValue(items);
}

} // namespace

void PaperTyping::clear() {
    for (auto& typed : passes) {
        typed.assign(places.size(), std::vector<std::string>(columns.size()));
    }
    pass = 0;
}

Result<Typed> readPaper(const vineyard::Asked& asked,
                        std::string_view text,
                        const UnitWishes& wishes,
                        const WordCode& codeOf) {
    if (asked.known.kind == descriptors::DescriptorKind::Category) {
        const auto number = readTypedNumber(text);
        const auto count = static_cast<double>(asked.known.codes.size());
        for (double i = 1; number && i <= count; ++i) {
            if (*number == i) {
                return readTyped(asked, asked.known.codes[static_cast<std::size_t>(i) - 1], wishes);
            }
        }
    }
    return readTyped(asked, text, wishes, codeOf);
}

std::vector<PaperDifference> differencesOf(const vineyard::Catalogue& catalogue,
                                           const PaperTyping& typing,
                                           const UnitWishes& wishes,
                                           const WordCode& codeOf) {
    std::vector<PaperDifference> found;
    for (std::size_t place = 0; place < typing.places.size(); ++place) {
        for (std::size_t i = 0; i < typing.columns.size(); ++i) {
            const auto valueIn = [&](int pass) {
                return cellValue(
                    catalogue, typing.columns[i], typing.passes[pass][place][i], wishes, codeOf);
            };
            if (!isSame(valueIn(0), valueIn(1))) {
                found.push_back({place, i});
            }
        }
    }
    return found;
}

Result<Act> sheetAct(store::Database& database,
                     const vineyard::Catalogue& catalogue,
                     const PaperTyping& typing,
                     const UnitWishes& wishes,
                     const WordCode& codeOf) {
    if (!differencesOf(catalogue, typing, wishes, codeOf).empty()) {
        return Error{ErrorCode::InvalidInput, "The two typings still differ somewhere.", {}};
    }
    Act act;
    std::map<std::string, unsigned> further; // samples of one observation in this act
    for (std::size_t place = 0; place < typing.places.size(); ++place) {
        for (std::size_t i = 0; i < typing.columns.size(); ++i) {
            const BenchColumn& column = typing.columns[i];
            auto typed = cellValue(catalogue, column, typing.passes[0][place][i], wishes, codeOf);
            if (!typed) {
                continue;
            }
            store::Draft draft;
            draft.author = typing.observer;
            draft.subject = "obs/" + typing.places[place] + "/" + writeDate(typing.day) + "/" +
                            column.descriptor;
            if (column.sample > 0) {
                Result<std::string> sample =
                    nextSample(database, draft.subject, further[draft.subject]++);
                if (!sample) {
                    return sample.error();
                }
                draft.subject = std::move(*sample);
            }
            draft.value = (*typed)->value;
            draft.as = (*typed)->as;
            act.drafts.push_back(std::move(draft));
        }
    }
    return act.drafts.empty()
               ? Result<Act>(Error{ErrorCode::InvalidInput, "Nothing was typed.", {}})
               : Result<Act>(std::move(act));
}

Result<std::optional<PaperTyping>> readTyping(store::Database& database) {
    const Result<Bytes> kept = database.kept(kMark);
    if (!kept) {
        return kept.error();
    }
    const auto text = [&kept](std::string_view key) {
        const auto member = memberOf(*kept, key);
        return member ? std::string(textOf(*member).value_or("")) : std::string{};
    };
    const auto day = readDate(text("day"));
    const auto places = memberOf(*kept, "places");
    const auto columns = memberOf(*kept, "columns");
    const auto samples = memberOf(*kept, "samples");
    const auto pass = memberOf(*kept, "pass");
    if (!day || !places || !columns || !samples || !pass) {
        return std::optional<PaperTyping>{};
    }
    PaperTyping typing;
    typing.code = text("code");
    typing.observer = text("observer");
    typing.day = *day;
    typing.places = textsIn(*places);
    const auto numbers = itemsOf(*samples).value_or(std::vector<BytesView>{});
    for (const std::string& descriptor : textsIn(*columns)) {
        const std::size_t i = typing.columns.size();
        const auto number = i < numbers.size() ? journal::wholeNumberOf(numbers[i]) : std::nullopt;
        typing.columns.push_back({descriptor, static_cast<unsigned>(number.value_or(0))});
    }
    typing.clear();
    typing.pass = static_cast<int>(journal::wholeNumberOf(*pass).value_or(0));
    for (const int which : {0, 1}) {
        const auto typed = memberOf(*kept, which == 0 ? "first" : "second");
        const std::vector<std::string> texts = typed ? textsIn(*typed) : std::vector<std::string>{};
        for (std::size_t i = 0; i < texts.size() && !typing.columns.empty(); ++i) {
            const std::size_t place = i / typing.columns.size();
            if (place < typing.places.size()) {
                typing.passes[which][place][i % typing.columns.size()] = texts[i];
            }
        }
    }
    return std::optional(std::move(typing));
}

Status keepTyping(store::Database& database, const std::optional<PaperTyping>& typing) {
    store::Bookmark mark{kMark, {}};
    if (typing) {
        std::vector<std::string> descriptors;
        std::vector<Bytes> samples;
        for (const BenchColumn& column : typing->columns) {
            descriptors.push_back(column.descriptor);
            samples.push_back(journal::integerValue(column.sample));
        }
        std::vector<std::string> typed[2];
        for (const int which : {0, 1}) {
            for (const auto& row : typing->passes[which]) {
                typed[which].insert(typed[which].end(), row.begin(), row.end());
            }
        }
        journal::MapValue map;
        map.add("code", textValue(typing->code))
            .add("observer", textValue(typing->observer))
            .add("day", textValue(writeDate(typing->day)))
            .add("places", textList(typing->places))
            .add("columns", textList(descriptors))
            .add("samples", listValue(samples))
            .add("pass", journal::integerValue(typing->pass))
            .add("first", textList(typed[0]))
            .add("second", textList(typed[1]));
        mark.value = map.bytes();
    }
    return database.keep({&mark, 1});
}

} // namespace bullace::office
