#include "office/search_index.hpp"

#include "core/journal/json_value.hpp"
#include "core/journal/subject.hpp"
#include "store/json_reader.hpp"

#include <algorithm>
#include <array>

namespace bullace::office {

namespace {

constexpr std::string_view kNote = "/note";

// U+00C0 to U+00FF, the letters of Western Europe, without their accents.
constexpr std::string_view kPlain =
    "aaaaaaaceeeeiiiidnooooo*ouuuuypsaaaaaaaceeeeiiiidnooooo/ouuuuypy";

std::vector<std::string> wordsOf(std::string_view query) {
    std::vector<std::string> words;
    std::size_t at = 0;
    const std::string text = folded(query);
    while (at < text.size()) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        if (end > at) {
            words.push_back(text.substr(at, end - at));
        }
        at = end + 1;
    }
    return words;
}

} // namespace

std::string folded(std::string_view text) {
    std::string plain;
    plain.reserve(text.size());
    for (std::size_t i = 0; i < text.size(); ++i) {
        const auto byte = static_cast<unsigned char>(text[i]);
        const auto next = i + 1 < text.size() ? static_cast<unsigned char>(text[i + 1]) : 0U;
        if (byte == 0xC3 && next >= 0x80 && next <= 0xBF) {
            plain += kPlain[next - 0x80U];
            ++i;
        } else {
            plain += byte >= 'A' && byte <= 'Z' ? static_cast<char>(byte - 'A' + 'a') : text[i];
        }
    }
    return plain;
}

void SearchIndex::add(Found found) {
    Item item{std::move(found), static_cast<std::uint32_t>(text_.size()), 0};
    text_ += folded(item.found.id);
    text_ += ' ';
    text_ += folded(item.found.text);
    if (item.found.kind != FoundKind::Position) {
        text_ += ' ';
        text_ += folded(item.found.detail);
    }
    item.length = static_cast<std::uint32_t>(text_.size()) - item.begin;
    items_.push_back(std::move(item));
}

Result<SearchIndex> SearchIndex::build(store::Database& database,
                                       const vineyard::Catalogue& catalogue,
                                       CivilDate today,
                                       const Token& token) {
    SearchIndex index;
    for (const vineyard::Block& block : catalogue.blocks()) {
        for (const std::string& position : vineyard::positionsOf(block)) {
            const std::string accession = catalogue.accessionAt(position, today);
            index.add({FoundKind::Position,
                       position,
                       {},
                       accession.empty() ? std::string{} : catalogue.accessionWords(accession)});
        }
    }
    for (const auto& [id, accession] : catalogue.accessions()) {
        index.add({FoundKind::Accession, id, accession.name, accession.status});
    }
    for (const auto& [label, position] : catalogue.labels()) {
        index.add({FoundKind::Label, position, label, {}});
    }
    for (const vineyard::Person& person : catalogue.people()) {
        index.add({FoundKind::Person, person.code, person.name, {}});
    }
    for (const vineyard::Cross& cross : catalogue.crosses()) {
        index.add({FoundKind::Cross, cross.id, cross.number, cross.mother + " × " + cross.father});
    }
    for (const vineyard::Lot& lot : catalogue.lots()) {
        index.add({FoundKind::Lot, lot.id, lot.label, lot.kind + " " + lot.from});
    }
    for (const walk::Round& round : catalogue.rounds()) {
        index.add({FoundKind::Round, round.id, round.title, {}});
    }
    std::vector<std::string> notes;
    Status read = database.eachSubjectBetween("obs/", "obs0", [&](std::string_view path) {
        if (path.ends_with(kNote)) {
            notes.emplace_back(path);
        }
        return !token.isCancelled();
    });
    for (std::size_t i = 0; read && i < notes.size() && !token.isCancelled(); ++i) {
        const auto row = database.state(notes[i]);
        if (!row) {
            return row.error();
        }
        const Result<Bytes> value =
            *row ? store::readJson((*row)->valueJson) : Result<Bytes>(Bytes{});
        const journal::Subject subject = journal::readSubject(notes[i]);
        if (!value) {
            continue;
        }
        std::vector<BytesView> texts =
            journal::itemsOf(*value).value_or(std::vector<BytesView>{BytesView(*value)});
        for (const BytesView one : texts) {
            if (const auto text = journal::textOf(one)) {
                index.add({FoundKind::Note,
                           std::string(subject.id),
                           std::string(*text),
                           std::string(subject.date)});
            }
        }
    }
    if (!read) {
        return read.error();
    }
    if (token.isCancelled()) {
        return Error{ErrorCode::Cancelled, "Nobody waits for this any more.", {}};
    }
    return index;
}

std::vector<Found> SearchIndex::find(std::string_view query, std::size_t most) const {
    const std::vector<std::string> words = wordsOf(query);
    std::vector<Found> first;
    std::vector<Found> rest;
    if (words.empty()) {
        return first;
    }
    const std::string_view all = text_;
    for (const Item& item : items_) {
        const std::string_view text = all.substr(item.begin, item.length);
        const bool isFound = std::all_of(words.begin(), words.end(), [text](const auto& word) {
            return text.find(word) != std::string_view::npos;
        });
        if (!isFound) {
            continue;
        }
        const bool isFirst =
            text.starts_with(words.front()) || folded(item.found.text).starts_with(words.front());
        std::vector<Found>& into = isFirst ? first : rest;
        if (into.size() < most) {
            into.push_back(item.found);
        }
        if (first.size() == most) {
            break;
        }
    }
    for (std::size_t i = 0; first.size() < most && i < rest.size(); ++i) {
        first.push_back(std::move(rest[i]));
    }
    return first;
}

} // namespace bullace::office
