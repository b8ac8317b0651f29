// The languages: whole, true to their placeholders, shown at once, and nothing of them in the
// journal.
#include "quick/language.hpp"

#include "support/pseudo_language.hpp"
#include "support/tablet_glass.hpp"
#include "support/tablet_station.hpp"

#include <QFile>
#include <QProcess>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QXmlStreamReader>

#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <set>

using namespace bullace;
using namespace bullace::test;

namespace {

const QString kLanguages = QStringLiteral(BULLACE_SOURCE "/shared-core/quick/languages/");

struct Message {
    QString context;
    QString source;
    QStringList forms; // one; for a text that counts one for each form of number
    bool counts = false;
    bool isDone = true; // neither unfinished nor vanished

    [[nodiscard]] QString key() const { return context + QStringLiteral(": ") + source; }
};

void readInto(Message& message, QXmlStreamReader& xml) {
    message.counts = xml.attributes().value(QStringLiteral("numerus")) == QStringLiteral("yes");
    while (xml.readNextStartElement()) {
        if (xml.name() == QStringLiteral("source")) {
            message.source = xml.readElementText();
        } else if (xml.name() != QStringLiteral("translation")) {
            xml.skipCurrentElement();
        } else {
            message.isDone = !xml.attributes().hasAttribute(QStringLiteral("type"));
            if (!message.counts) {
                message.forms << xml.readElementText();
                continue;
            }
            while (xml.readNextStartElement()) {
                message.forms << xml.readElementText();
            }
        }
    }
}

std::vector<Message> messagesIn(const QString& path) {
    QFile file(path);
    REQUIRE(file.open(QIODevice::ReadOnly));
    QXmlStreamReader xml(&file);
    std::vector<Message> all;
    QString context;
    while (!xml.atEnd()) {
        if (xml.readNext() != QXmlStreamReader::StartElement) {
            continue;
        }
        if (xml.name() == QStringLiteral("name")) {
            context = xml.readElementText();
        } else if (xml.name() == QStringLiteral("message")) {
            all.emplace_back().context = context;
            readInto(all.back(), xml);
        }
    }
    REQUIRE_FALSE(xml.hasError());
    return all;
}

std::multiset<QString> placeholders(const QString& text) {
    static const QRegularExpression form(QStringLiteral("%[1-9]"));
    std::multiset<QString> found;
    auto matches = form.globalMatch(text);
    while (matches.hasNext()) {
        found.insert(matches.next().captured());
    }
    return found;
}

// What does not hold of the text, in words; empty where all is well.
QString faultOf(const Message& message, const QString& form) {
    if (form.trimmed().isEmpty()) {
        return QStringLiteral("is not said");
    }
    if (placeholders(form) != placeholders(message.source)) {
        return QStringLiteral("has other places for what is put in: ") + form;
    }
    const bool isPlural = message.counts && form == message.forms.back();
    if (isPlural && !form.contains(QStringLiteral("%n"))) {
        return QStringLiteral("does not say how many: ") + form;
    }
    if (form.front().isSpace() || form.back().isSpace()) {
        return QStringLiteral("begins or ends with a space: ") + form;
    }
    return {};
}

void checkWhole(const QString& file, std::size_t least) {
    const auto messages = messagesIn(kLanguages + file);
    CHECK(messages.size() >= least);
    for (const Message& message : messages) {
        INFO(message.key().toStdString());
        CHECK(message.isDone);
        CHECK(message.forms.size() == (message.counts ? 2 : 1));
        for (const QString& form : message.forms) {
            CHECK(faultOf(message, form).toStdString() == "");
        }
    }
}

std::set<QString> textsIn(const QString& path) {
    std::set<QString> texts;
    for (const Message& message : messagesIn(path)) {
        texts.insert(message.key());
    }
    return texts;
}

// The file's texts against what stands in the sources now.
void checkTakenUp(const QString& file, const QStringList& more = {}) {
    const QTemporaryDir folder;
    const QString copy = folder.filePath(file);
    REQUIRE(QFile::copy(kLanguages + file, copy));
    QProcess lupdate;
    lupdate.start(QStringLiteral(BULLACE_LUPDATE),
                  QStringLiteral(BULLACE_LUPDATE_WORDS).split(QLatin1Char('|')) + more +
                      QStringList{QStringLiteral("-ts"), copy});
    REQUIRE(lupdate.waitForFinished(60'000));
    INFO(lupdate.readAllStandardError().toStdString());
    REQUIRE(lupdate.exitCode() == 0);
    const std::set<QString> held = textsIn(kLanguages + file);
    const std::set<QString> found = textsIn(copy);
    for (const QString& text : found) {
        INFO(text.toStdString());
        CHECK_MESSAGE(held.contains(text), "is new in the sources: build update_languages");
    }
    for (const QString& text : held) {
        INFO(text.toStdString());
        CHECK_MESSAGE(found.contains(text), "is gone from the sources: build update_languages");
    }
}

void choose(TabletGlass& tablet, const char* language) {
    field::Settings settings = tablet.book().settings();
    settings.language = language;
    REQUIRE(tablet.book().change(settings).ok());
    emit tablet.app().settingsChanged();
    tablet.settle();
}

// The entries of the tablet's own journal, without what is its own: its name and the chain.
std::string ownEntries(TabletGlass& tablet) {
    std::ostringstream all;
    REQUIRE(tablet.book().database().exportLines(all, {}).ok());
    std::string own;
    std::istringstream lines(all.str());
    for (std::string line; std::getline(lines, line);) {
        static const QRegularExpression name(QStringLiteral("t[0-9a-f]{16}\\.[0-9]+"));
        static const QRegularExpression digest(QStringLiteral(",\"digest\":\"[0-9a-f]{64}\""));
        QString entry = QString::fromStdString(line);
        if (entry.contains(name)) {
            own += entry.replace(name, QStringLiteral("t")).remove(digest).toStdString() + "\n";
        }
    }
    return own;
}

// One walk by keys and fingers: numbers with either mark, a note, reasons, stages.
std::string entriesOf(const char* language, const QLocale& numbers) {
    TempFolder folder;
    FixedClock clock;
    layStation(folder.path(), clock);
    TabletGlass tablet(folder.path(), clock);
    choose(tablet, language);
    QLocale::setDefault(numbers);
    beginRound(tablet.book(), "d-berry");
    field::Settings settings = tablet.book().settings();
    tablet.reopenWalk();
    for (const char* typed : {"24.5", "25,5", "23"}) {
        tablet.type(QString::fromLatin1(typed));
        tablet.press(Qt::Key_Return);
    }
    tablet.tapKey("noVine");
    settings.units["im"].inches = true;
    REQUIRE(tablet.book().change(settings).ok());
    tablet.reopenWalk();
    tablet.type(QStringLiteral("0,98"));
    tablet.press(Qt::Key_Return);
    REQUIRE(tablet.book().endWalk().ok());
    beginRound(tablet.book(), "a-stage");
    tablet.reopenWalk();
    tablet.tapKey("choice3");
    tablet.tapKey("choice2");
    tablet.tapKey("why");
    tablet.tapKey("choice0");
    return ownEntries(tablet);
}

} // namespace

TEST_CASE("every text is there in Spanish, with the same places for what is put in") {
    checkWhole(QStringLiteral("bullace_es.ts"), 1000);
}

TEST_CASE("English says one entry, and two entries") {
    checkWhole(QStringLiteral("bullace_en.ts"), 10);
    for (const Message& message : messagesIn(kLanguages + QStringLiteral("bullace_en.ts"))) {
        CHECK(message.counts);
    }
}

TEST_CASE("keys that stand together never read alike in Spanish where they differ in English") {
    const std::set<QString> together{QStringLiteral("ChoiceKeys"),
                                     QStringLiteral("NumberKeys"),
                                     QStringLiteral("StopAnswer"),
                                     QStringLiteral("StopKeys"),
                                     QStringLiteral("bullace::tablet::StopViewModel")};
    std::map<QString, QString> english;
    for (const Message& message : messagesIn(kLanguages + QStringLiteral("bullace_es.ts"))) {
        if (!together.contains(message.context)) {
            continue;
        }
        const QString& spanish = message.forms.back();
        INFO(spanish.toStdString());
        const auto [said, isNew] = english.emplace(spanish, message.source);
        CHECK((isNew || said->second == message.source));
    }
    CHECK(english.size() > 40);
}

TEST_CASE("Spanish has none of the words that mean another thing to the crews") {
    for (const Message& message : messagesIn(kLanguages + QStringLiteral("bullace_es.ts"))) {
        const QString spanish = message.forms.join(QLatin1Char(' ')).toLower();
        INFO(spanish.toStdString());
        CHECK_FALSE(spanish.contains(QStringLiteral("párese")));       // stand up
        CHECK_FALSE(spanish.contains(QStringLiteral("manos libres"))); // without holding it
        CHECK_FALSE(spanish.contains(QStringLiteral("vidrio")));       // a pane; here: pantalla
    }
}

TEST_CASE("no text of the sources is missing in the languages, and none is said for nothing") {
    checkTakenUp(QStringLiteral("bullace_es.ts"));
    checkTakenUp(QStringLiteral("bullace_en.ts"), {QStringLiteral("-pluralonly")});
}

TEST_CASE("a tablet speaks its own language, one that is not known is English") {
    quick::Language english(*qGuiApp, QLocale(QLocale::German, QLocale::Germany));
    CHECK(english.choose({}));
    CHECK(english.code() == QStringLiteral("en"));
    CHECK(QLocale().toString(1234.5, 'f', 1) == QStringLiteral("1234.5"));
    CHECK(english.choose(QStringLiteral("es")));
    CHECK_FALSE(english.choose(QStringLiteral("es")));
    CHECK(QCoreApplication::translate("NumberKeys", "Next") != QStringLiteral("Next"));
    CHECK(english.choose(QStringLiteral("fr")));
    CHECK(english.code() == QStringLiteral("en"));
    CHECK(QCoreApplication::translate("NumberKeys", "Next") == QStringLiteral("Next"));
}

TEST_CASE("numbers have their country's decimal mark, and never a mark between thousands") {
    quick::Language spain(*qGuiApp, QLocale(QLocale::Spanish, QLocale::Spain));
    CHECK(spain.choose({}));
    CHECK(spain.code() == QStringLiteral("es"));
    CHECK(QLocale().toString(1234567.5, 'f', 1) == QStringLiteral("1234567,5"));
    quick::Language mexico(*qGuiApp, QLocale(QLocale::Spanish, QLocale::Mexico));
    CHECK(mexico.choose({}));
    CHECK(QLocale().toString(1234567.5, 'f', 1) == QStringLiteral("1234567.5"));
    quick::Language states(*qGuiApp, QLocale(QLocale::English, QLocale::UnitedStates));
    CHECK(states.choose(QStringLiteral("es")));
    CHECK(QLocale().toString(1234567.5, 'f', 1) == QStringLiteral("1234567.5"));
}

TEST_CASE("the same keys record the same entries whatever the language") {
    const std::string english = entriesOf("en", QLocale(QLocale::English));
    CHECK(english.find("25.5") != std::string::npos);
    CHECK(english.find("0.98 in") != std::string::npos);
    CHECK(english.find("no-vine") != std::string::npos);
    CHECK(std::count(english.begin(), english.end(), '\n') >= 8);
    CHECK(entriesOf("es", QLocale(QLocale::Spanish, QLocale::Mexico)) == english);
    CHECK(entriesOf("es", QLocale(QLocale::Spanish, QLocale::Spain)) == english);
}

TEST_CASE("a change of language in the settings shows at once, and on the walk") {
    TempFolder folder;
    FixedClock clock;
    layStation(folder.path(), clock);
    TabletGlass tablet(folder.path(), clock);
    beginRound(tablet.book(), "b-score");
    tablet.reopenWalk();
    tablet.tapKey("noVine");
    const auto keySays = [&](const char* key) {
        return tablet.item(key).property("text").toString().toStdString();
    };
    CHECK(keySays("noVine") == "No vine");
    tablet.app().go(tablet::TabletApp::Settings);
    tablet.settle();
    tablet.tapText(QStringLiteral("Language")); // English by name
    CHECK(tablet.says(QStringLiteral("Language")));
    tablet.tapText(QStringLiteral("Language"));
    CHECK(tablet.says(QStringLiteral("Idioma"))); // from the view-model
    CHECK(tablet.says(QStringLiteral("Atrás")));
    CHECK(keySays("undo") == "Anular"); // from the page
    tablet.tapText(QStringLiteral("Atrás"));
    CHECK(keySays("noVine") == "Sin vid");
    CHECK(tablet.app().stop()->question() == QStringLiteral("Vigor"));
    tablet.app().go(tablet::TabletApp::Settings);
    tablet.settle();
    tablet.tapText(QStringLiteral("Idioma")); // the tablet's own: English here
    CHECK(tablet.says(QStringLiteral("Language")));
    CHECK(keySays("undo") == "Undo");
}

TEST_CASE("the language that nobody speaks is longer, and keeps what is put in") {
    CHECK(pseudoWords(QStringLiteral("Row %1, vine %2")).contains(QStringLiteral("%1")));
    CHECK(placeholders(pseudoWords(QStringLiteral("%1 of %2, %3 s"))).size() == 3);
    for (const char* words : {"Next", "No vine", "Write all entries to a file"}) {
        const QString plain = QString::fromLatin1(words);
        const QString pseudo = pseudoWords(plain);
        CHECK(static_cast<double>(pseudo.size()) >= 1.4 * static_cast<double>(plain.size()));
        CHECK(pseudo.front() == QLatin1Char('['));
        CHECK(pseudo.back() == QLatin1Char(']'));
    }
}
