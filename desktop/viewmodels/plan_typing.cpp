#include "desk/plan_typing.hpp"

#include "quick/words.hpp"

#include <QCoreApplication>
#include <QRegularExpression>
#include <QStringList>

#include <algorithm>

namespace bullace::desk {

using quick::fromText;
using quick::toText;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(PlanTyping)
};

const QRegularExpression& gaps() {
    static const QRegularExpression between(QStringLiteral("[,;\\s]+"));
    return between;
}

// "4", or "2-5"; false where it is neither.
bool addRows(const QString& word, std::vector<unsigned>& rows) {
    const QStringList ends = word.split(QLatin1Char('-'));
    bool isFirst = false;
    bool isLast = false;
    const unsigned first = ends.front().toUInt(&isFirst);
    const unsigned last = ends.back().toUInt(&isLast);
    constexpr unsigned kMost = 10'000;
    if (ends.size() > 2 || !isFirst || !isLast || first < 1 || last < first ||
        last - first > kMost) {
        return false;
    }
    for (unsigned row = first; row <= last; ++row) {
        if (std::ranges::find(rows, row) == rows.end()) {
            rows.push_back(row);
        }
    }
    return true;
}

void addOnce(const std::string& accession, std::vector<std::string>& list) {
    if (std::ranges::find(list, accession) == list.end()) {
        list.push_back(accession);
    }
}

// Whether the word stood for several of the collection, which are added.
bool addSeveral(const vineyard::Catalogue& catalogue,
                const std::string& word,
                std::vector<std::string>& list) {
    const auto& all = catalogue.accessions();
    const std::size_t dash = word.find('-');
    if (!all.contains(word) && dash != std::string::npos) {
        const auto first = all.find(word.substr(0, dash));
        const auto last = all.find(word.substr(dash + 1));
        if (first != all.end() && last != all.end() && first->first <= last->first) {
            for (auto at = first; at != std::next(last); ++at) {
                addOnce(at->first, list);
            }
            return true;
        }
    }
    bool isStatus = false;
    for (const auto& [id, accession] : all) {
        if (accession.status == word && !word.empty()) {
            addOnce(id, list);
            isStatus = true;
        }
    }
    return isStatus;
}

} // namespace

Result<TypedPlaces> typedPlaces(const QString& text) {
    const QStringList words = text.split(gaps(), Qt::SkipEmptyParts);
    TypedPlaces places;
    const QString says = Tr::tr("A block, and rows of it where not all are meant: B2 1-4.");
    if (words.isEmpty()) {
        return Error{ErrorCode::InvalidInput, toText(says), {}};
    }
    places.block = toText(words.front().toUpper());
    for (qsizetype i = 1; i < words.size(); ++i) {
        if (!addRows(words[i], places.rows)) {
            return Error{ErrorCode::InvalidInput, toText(says), {}};
        }
    }
    return places;
}

QString placesText(const TypedPlaces& places) {
    QStringList words{fromText(places.block)};
    for (std::size_t i = 0; i < places.rows.size();) {
        std::size_t end = i;
        while (end + 1 < places.rows.size() && places.rows[end + 1] == places.rows[end] + 1) {
            ++end;
        }
        words << (end == i ? QString::number(places.rows[i])
                           : QStringLiteral("%1-%2").arg(places.rows[i]).arg(places.rows[end]));
        i = end + 1;
    }
    return words.join(QLatin1Char(' '));
}

std::vector<std::string> typedAccessions(const vineyard::Catalogue& catalogue,
                                         const QString& text) {
    std::vector<std::string> list;
    for (const QString& typed : text.split(gaps(), Qt::SkipEmptyParts)) {
        const std::string word = toText(typed);
        if (!addSeveral(catalogue, word, list)) {
            addOnce(word, list);
        }
    }
    return list;
}

} // namespace bullace::desk
