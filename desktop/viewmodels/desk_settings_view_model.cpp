#include "desk/desk_settings_view_model.hpp"

#include "desk/desk_words.hpp"

#include <array>

namespace bullace::desk {

using quick::fromText;
using quick::toText;

namespace {

constexpr std::array kScales{1.0, 1.25, 1.5, 1.75, 2.0};

struct UnitLine {
    const char* key;
    bool UnitWishes::*flag;
};
constexpr UnitLine kUnits[] = {
    {"fahrenheit", &UnitWishes::fahrenheit},
    {"inches", &UnitWishes::inches},
    {"pounds", &UnitWishes::pounds},
    {"feet", &UnitWishes::feet},
    {"percent", &UnitWishes::percent},
};

} // namespace

DeskSettingsViewModel::DeskSettingsViewModel(DeskSession& session, QObject* parent)
    : DeskPage(session, parent) {
    connect(&session_, &DeskSession::settingsChanged, this, &DeskSettingsViewModel::refresh);
}

QString DeskSettingsViewModel::help() const {
    return tr("Say who sits here: every decision is written under that name. Enter on a line "
              "changes it. Letters grow to twice their size.");
}

void DeskSettingsViewModel::refresh() {
    const DeskSettings& settings = session_.settings();
    say(tr("This desk"),
        settings.author.empty()
            ? tr("Nobody sits here yet: choose who you are before you decide anything.")
            : tr("%1 sits here.").arg(personWords(*session_.catalogue(), settings.author)));
    table_.setColumns(tr("Settings"), {{tr("What"), 40}, {tr("Now"), 30, false, true}});
    std::vector<GridRow> rows;
    const auto add = [&rows](const QString& key, const QString& label, const QString& now) {
        GridRow row;
        row.key = key;
        row.cells << label << now;
        rows.push_back(std::move(row));
    };
    add(QStringLiteral("author"),
        tr("Who sits here"),
        settings.author.empty() ? tr("nobody")
                                : personWords(*session_.catalogue(), settings.author));
    add(QStringLiteral("scale"),
        tr("Size of letters"),
        tr("%1 percent").arg(qRound(settings.textScale * 100)));
    add(QStringLiteral("dusk"),
        tr("Light"),
        settings.isDusk ? tr("dusk: light on dark") : tr("day: black on white"));
    add(QStringLiteral("language"),
        tr("Language"),
        settings.language.empty()   ? tr("as the computer")
        : settings.language == "es" ? QStringLiteral("Español")
                                    : QStringLiteral("English"));
    add(QStringLiteral("names"),
        tr("Names of observers before a decision"),
        settings.showsNames ? tr("shown") : tr("hidden"));
    add(QStringLiteral("paper"),
        tr("Paper"),
        settings.isA4 ? QStringLiteral("A4") : QStringLiteral("Letter"));
    const QString asStored = tr("as stored");
    const QString shown[] = {tr("°F for °C"),
                             tr("inches for mm"),
                             tr("pounds for kg"),
                             tr("feet for cm and m"),
                             tr("percent for g/L")};
    int line = 0;
    for (const UnitLine& unit : kUnits) {
        add(QLatin1String(unit.key),
            tr("Unit: %1").arg(shown[line]),
            settings.units.*unit.flag ? tr("yes") : asStored);
        ++line;
    }
    table_.setRows(std::move(rows));
    actions_.set({{QStringLiteral("author"), tr("Who sits here"), QStringLiteral("W")},
                  {QStringLiteral("scale"), tr("Size of letters"), QStringLiteral("S")},
                  {QStringLiteral("dusk"), tr("Day or dusk"), QStringLiteral("D")},
                  {QStringLiteral("language"), tr("Language"), QStringLiteral("L")}});
}

void DeskSettingsViewModel::open(int row) {
    table_.setCurrent(row);
    act(table_.currentKey());
}

void DeskSettingsViewModel::act(const QString& id) {
    if (id == QStringLiteral("author")) {
        askAuthor();
    } else if (!id.isEmpty()) {
        change(id);
    }
}

void DeskSettingsViewModel::askAuthor() {
    QStringList codes;
    for (const vineyard::Person& person : session_.catalogue()->people()) {
        codes << fromText(person.code);
    }
    ask(codes.isEmpty()
            ? tr("Your short code, two or three letters")
            : tr("Your short code; the station knows %1").arg(codes.join(QStringLiteral(", "))),
        fromText(session_.author()),
        [this](const QString& text) {
            constexpr int kLongest = 64; // bytes, as the journal's limit
            if (text.isEmpty() || toText(text).size() > kLongest ||
                text.contains(QLatin1Char('/'))) {
                return tr("A short code, like ed.");
            }
            DeskSettings settings = session_.settings();
            settings.author = toText(text);
            session_.change(std::move(settings));
            return QString();
        });
}

void DeskSettingsViewModel::change(const QString& key) {
    DeskSettings settings = session_.settings();
    if (key == QStringLiteral("scale")) {
        std::size_t next = 0;
        while (next < kScales.size() && kScales[next] <= settings.textScale + 0.01) {
            ++next;
        }
        settings.textScale = kScales[next % kScales.size()];
    } else if (key == QStringLiteral("dusk")) {
        settings.isDusk = !settings.isDusk;
    } else if (key == QStringLiteral("paper")) {
        settings.isA4 = !settings.isA4;
    } else if (key == QStringLiteral("names")) {
        settings.showsNames = !settings.showsNames;
    } else if (key == QStringLiteral("language")) {
        settings.language = settings.language.empty()   ? "en"
                            : settings.language == "en" ? "es"
                                                        : "";
    } else {
        for (const UnitLine& unit : kUnits) {
            if (key == QLatin1String(unit.key)) {
                settings.units.*unit.flag = !(settings.units.*unit.flag);
            }
        }
    }
    session_.change(std::move(settings));
}

} // namespace bullace::desk
