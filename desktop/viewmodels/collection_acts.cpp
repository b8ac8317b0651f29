// What is done to many vines at once, and tables written to a folder.
#include "desk/collection_view_model.hpp"
#include "desk/desk_words.hpp"

#include <QDir>
#include <QStandardPaths>

#include <fstream>

namespace bullace::desk {

using office::CardKind;
using quick::fromText;
using quick::toText;

namespace {

QStringList wordsOf(const QString& text) {
    return text.split(QLatin1Char(' '), Qt::SkipEmptyParts);
}

std::string position(const QString& word) {
    return toText(word.toUpper());
}

} // namespace

void CollectionViewModel::askNew() {
    if (!isSomebodyThere()) {
        return;
    }
    ask(tr("The number or code of the new one in \"%1\"").arg(kindWords(kind_)),
        {},
        [this](const QString& text) {
            const std::string id = toText(text);
            for (const office::CardLine& line : office::linesOf(*session_.catalogue(), kind_)) {
                if (line.id == id) {
                    return tr("%1 is there already.").arg(text);
                }
            }
            const Result<office::Act> isId =
                office::setField(kind_, id, "name", {}, {}, session_.author(), {});
            if (!isId) {
                return quick::errorWords(isId.error());
            }
            readTheCard(kind_, id); // nothing is written before its first field is
            return QString();
        });
}

// `make` gets the typed words, and the author; it runs where the database is.
void CollectionViewModel::perform(Result<office::Act> (*make)(store::Database&,
                                                              const vineyard::Catalogue&,
                                                              const QStringList&,
                                                              const std::string&),
                                  const QStringList& words,
                                  const QString& done) {
    session_.write(
        this,
        [make,
         words,
         catalogue = session_.catalogue(),
         author = session_.author(),
         &clock =
             session_.clock()](store::Database& database) -> Result<std::vector<journal::Place>> {
            return office::perform(database, make(database, *catalogue, words, author), clock);
        },
        [this, done](Result<std::vector<journal::Place>> written) {
            if (!written) {
                session_.fail(written.error());
            } else {
                emit session_.told(done);
            }
        });
}

void CollectionViewModel::askPlanting() {
    if (!isSomebodyThere()) {
        return;
    }
    ask(tr("First vine, last vine, accession and day: B2-07-01 B2-07-30 A100 2026-03-14. With "
           "\"each\" "
           "behind it every vine is a seedling of its own, A100-1, A100-2, …"),
        {},
        [this](const QString& text) {
            const QStringList words = wordsOf(text);
            const bool isEach = words.size() == 5 && words[4] == tr("each");
            if ((words.size() != 4 && !isEach) || !readDate(toText(words[3]))) {
                return tr("Four words: first vine, last vine, accession, day like 2026-03-14.");
            }
            perform(
                [](store::Database& database,
                   const vineyard::Catalogue& catalogue,
                   const QStringList& typed,
                   const std::string& author) {
                    return office::plantRun(database,
                                            catalogue,
                                            {position(typed[0]),
                                             position(typed[1]),
                                             toText(typed[2]),
                                             typed.size() == 5,
                                             *readDate(toText(typed[3]))},
                                            author,
                                            "planted");
                },
                words,
                tr("Planted: %1 to %2 with %3.").arg(words[0], words[1], words[2]));
            return QString();
        });
}

void CollectionViewModel::askRemoval() {
    if (!isSomebodyThere()) {
        return;
    }
    ask(tr("First vine, last vine, and the last day on which they stand: B2-07-01 B2-07-30 "
           "2026-02-28"),
        {},
        [this](const QString& text) {
            const QStringList words = wordsOf(text);
            if (words.size() != 3 || !readDate(toText(words[2]))) {
                return tr("Three words: first vine, last vine, day like 2026-02-28.");
            }
            perform(
                [](store::Database& database,
                   const vineyard::Catalogue& catalogue,
                   const QStringList& typed,
                   const std::string& author) {
                    return office::removeRun(database,
                                             catalogue,
                                             position(typed[0]),
                                             position(typed[1]),
                                             *readDate(toText(typed[2])),
                                             author,
                                             "taken out");
                },
                words,
                tr("Taken out: %1 to %2.").arg(words[0], words[1]));
            return QString();
        });
}

void CollectionViewModel::askRenumbering() {
    if (!isSomebodyThere()) {
        return;
    }
    ask(tr("First vine, last vine, by how many, and from which day on: B2-07-10 B2-07-30 +1 "
           "2026-03-01"),
        {},
        [this](const QString& text) {
            const QStringList words = wordsOf(text);
            bool isNumber = false;
            const int by = words.value(2).toInt(&isNumber);
            if (words.size() != 4 || !isNumber || by == 0 || !readDate(toText(words[3]))) {
                return tr("Four words: first vine, last vine, +1 or -1, day like 2026-03-01.");
            }
            perform(
                [](store::Database& database,
                   const vineyard::Catalogue& catalogue,
                   const QStringList& typed,
                   const std::string& author) {
                    return office::renumberRun(database,
                                               catalogue,
                                               position(typed[0]),
                                               position(typed[1]),
                                               typed[2].toInt(),
                                               *readDate(toText(typed[3])),
                                               author,
                                               "renumbered");
                },
                words,
                tr("Renumbered from %1 on: %2 to %3.").arg(words[3], words[0], words[1]));
            return QString();
        });
}

void CollectionViewModel::askExport() {
    const QString documents = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
    ask(tr("The folder for the tables. With \"sites\" behind it, exact wild sites are written, "
           "too."),
        documents,
        [this](const QString& text) {
            const bool withSites = text.endsWith(QLatin1Char(' ') + tr("sites"));
            const QString folder =
                withSites ? text.chopped(tr("sites").size() + 1).trimmed() : text;
            if (!QDir(folder).exists()) {
                return tr("There is no folder %1.").arg(folder);
            }
            session_.read(
                this,
                office::Lane::Background,
                {},
                [folder = toText(folder), withSites, catalogue = session_.catalogue()](
                    store::Database& database) -> Result<std::string> {
                    using office::TableKind;
                    const std::pair<TableKind, const char*> tables[] = {
                        {TableKind::ObservationsLong, "observations.csv"},
                        {TableKind::Accessions, "accessions.csv"},
                        {TableKind::Plantings, "plantings.csv"},
                        {TableKind::Rows, "rows.csv"},
                        {TableKind::People, "people.csv"}};
                    for (const auto& [kind, name] : tables) {
                        std::ofstream file(folder + "/" + name, std::ios::binary);
                        const Status written = office::exportTable(
                            database,
                            *catalogue,
                            kind,
                            withSites ? office::WildSites::Included : office::WildSites::LeftOut,
                            file);
                        if (!written) {
                            return written.error();
                        }
                    }
                    return folder;
                },
                [this](std::string written) {
                    emit session_.told(
                        tr("Five tables were written to %1.").arg(fromText(written)));
                });
            return QString();
        });
}

} // namespace bullace::desk
