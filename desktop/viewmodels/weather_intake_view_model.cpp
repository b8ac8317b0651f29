#include "desk/weather_intake_view_model.hpp"

#include "desk/file_rows.hpp"
#include "desk/study.hpp"

#include "quick/words.hpp"

#include <QFile>
#include <QFileInfo>

#include <algorithm>

namespace bullace::desk {

using quick::fromText;
using quick::toText;
using weather::DailyForm;
using weather::DateOrder;
using weather::TemperatureUnit;

namespace {

constexpr std::size_t kPreviewDays = 10;
constexpr std::size_t kMostFacts = 12; // of a kind; the rest is counted

BytesView bytesOf(const QByteArray& file) {
    return {file.constData(), static_cast<std::size_t>(file.size())};
}

QString daysText(const weather::HeatGap& gap) {
    const QString first = quick::dateWords(gap.first);
    return gap.first == gap.last ? first
                                 : WeatherIntakeViewModel::tr("%1 to %2", "days")
                                       .arg(first, quick::dateWords(gap.last));
}

} // namespace

WeatherIntakeViewModel::WeatherIntakeViewModel(DeskSession& session, QObject* parent)
    : DeskPage(session, parent) {}

QString WeatherIntakeViewModel::help() const {
    return tr("Choose a file of daily weather: NOAA's daily record as .dly or as CSV, or the table "
              "of a temperature logger. What the file does not say is asked: °C or °F, day or "
              "month first, and what the site is called. Then its first days are shown, every gap, "
              "and what is left out and why. Nothing is written before you press T or Enter. "
              "Values that are there already are not written again; the file's values go over "
              "others, and the old ones stay in the journal.");
}

void WeatherIntakeViewModel::begin() {
    token_.cancel();
    token_ = {};
    file_.reset();
    intake_.reset();
    plan_.reset();
    site_.clear();
}

void WeatherIntakeViewModel::refresh() {
    if (file_ == nullptr) {
        showFiles();
    } else if (plan_) {
        show();
    }
}

void WeatherIntakeViewModel::leave() {
    begin();
}

void WeatherIntakeViewModel::showFiles() {
    table_.setColumns(tr("Files"), fileColumns());
    table_.setRows(
        fileRows({QStringLiteral("*.dly"), QStringLiteral("*.csv"), QStringLiteral("*.txt")},
                 session_.clock()));
    facts_.setRows({});
    say(tr("Take in weather"), tr("Enter takes a file up; F types the name of another."));
    actions_.set({{QStringLiteral("file"), tr("Type a file's name"), QStringLiteral("F")}});
}

QString WeatherIntakeViewModel::takeFile(const QString& path) {
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) {
        return tr("%1 cannot be read.").arg(path);
    }
    auto bytes = std::make_shared<const QByteArray>(file.readAll());
    auto look = office::lookAtWeather(bytesOf(*bytes));
    if (!look) {
        return quick::errorWords(look.error());
    }
    begin();
    path_ = path;
    file_ = std::move(bytes);
    look_ = std::move(*look);
    wish_ = {};
    hasUnit_ = !look_.needsUnit;
    actions_.set({});
    askNext();
    return {};
}

// What the file does not say is asked, one after the other.
void WeatherIntakeViewModel::askNext() {
    if (!hasUnit_) {
        askUnit();
    } else if (look_.logger && !look_.logger->isOrderCertain && !wish_.order) {
        askOrder();
    } else {
        readFile();
    }
}

void WeatherIntakeViewModel::askUnit() {
    ask(tr("The file does not say its unit: are its temperatures in °C or in °F? C or F"),
        {},
        [this](const QString& text) {
            const QString unit = text.toUpper().remove(QStringLiteral("°"));
            if (unit != QStringLiteral("C") && unit != QStringLiteral("F")) {
                return tr("C or F is needed.");
            }
            wish_.unit = unit == QStringLiteral("F") ? TemperatureUnit::Fahrenheit
                                                     : TemperatureUnit::Celsius;
            hasUnit_ = true;
            askNext();
            return QString();
        });
}

void WeatherIntakeViewModel::askOrder() {
    ask(tr("Nobody can tell which number of its dates is the month. Does the day stand first, or "
           "the month? D or M"),
        {},
        [this](const QString& text) {
            const QString order = text.toUpper();
            if (order != QStringLiteral("D") && order != QStringLiteral("M")) {
                return tr("D or M is needed.");
            }
            wish_.order =
                order == QStringLiteral("D") ? DateOrder::DayFirst : DateOrder::MonthFirst;
            askNext();
            return QString();
        });
}

void WeatherIntakeViewModel::readFile() {
    say(QFileInfo(path_).fileName(), tr("The file is being read …"));
    session_.read(
        this,
        office::Lane::Background,
        token_,
        [file = file_, look = look_, wish = wish_](store::Database&) {
            return office::readWeatherFile(bytesOf(*file), look, wish);
        },
        [this](office::WeatherIntake intake) {
            intake_ = std::make_shared<const office::WeatherIntake>(std::move(intake));
            site_.empty() ? askSite() : planAgain();
        });
}

void WeatherIntakeViewModel::askSite() {
    ask(tr("What is the place called where this was measured?"),
        fromText(site_.empty() ? intake_->station : site_),
        [this](const QString& text) {
            const std::string site = toText(text);
            if (!office::siteFault(site).empty()) {
                return tr("A site's name has 1 to 56 letters, and no /.");
            }
            site_ = site;
            planAgain();
            return QString();
        });
}

void WeatherIntakeViewModel::planAgain() {
    plan_.reset();
    const std::string why = toText(tr("from %1").arg(QFileInfo(path_).fileName()));
    session_.read(
        this,
        office::Lane::Background,
        token_,
        [intake = intake_, site = site_, author = session_.author(), why](
            store::Database& database) {
            return office::planWeather(database, *intake, site, author, why);
        },
        [this](office::WeatherPlan plan) {
            plan_ = std::move(plan);
            show();
        });
}

QString WeatherIntakeViewModel::formWords() const {
    if (!look_.daily) {
        return tr("readings of a logger; days from midnight to midnight by its clock");
    }
    switch (*look_.daily) {
    case DailyForm::FixedWidth:
        return tr("NOAA's daily record, fixed columns");
    case DailyForm::ByStation:
        return tr("NOAA's daily record, one value in a line");
    case DailyForm::Ordered:
        return tr("NOAA's daily record, one day in a line");
    }
    return {};
}

QString WeatherIntakeViewModel::unitWords() const {
    const auto said = look_.logger ? look_.logger->unit : std::nullopt;
    if (!look_.needsUnit && !said) {
        return tr("°C, as the form lays down");
    }
    const bool isFahrenheit = said.value_or(wish_.unit) == TemperatureUnit::Fahrenheit;
    const QString unit = isFahrenheit ? QStringLiteral("°F") : QStringLiteral("°C");
    return said ? tr("%1, as the file says").arg(unit) : tr("%1, as you said").arg(unit);
}

void WeatherIntakeViewModel::show() {
    const auto& days = intake_->days;
    const std::size_t fresh = plan_->fresh + plan_->replaced;
    say(tr("%1, for %2").arg(QFileInfo(path_).fileName(), fromText(site_)),
        tr("%n day(s) from %1 to %2.", nullptr, static_cast<int>(days.size()))
                .arg(quick::dateWords(days.begin()->first),
                     quick::dateWords(days.rbegin()->first)) +
            QLatin1Char('\n') +
            (fresh == 0 ? tr("All of its values are there already.")
                        : tr("%1 values are new, %2 are there already, %3 go over others.")
                              .arg(plan_->fresh)
                              .arg(plan_->there)
                              .arg(plan_->replaced)));
    showDays();
    showFacts();
    actions_.set(
        {{QStringLiteral("take"),
          tr("Take it in"),
          QStringLiteral("T"),
          fresh > 0 && !session_.isReadOnly()},
         {QStringLiteral("unit"), tr("Say the unit again"), QStringLiteral("U"), look_.needsUnit},
         {QStringLiteral("site"), tr("Name the site"), QStringLiteral("S")}});
}

void WeatherIntakeViewModel::showDays() {
    table_.setColumns(tr("The first days"),
                      {{tr("Day"), 16},
                       {tr("Least, °C"), 12, true},
                       {tr("Greatest, °C"), 12, true},
                       {tr("Rain, mm"), 12, true}});
    const auto text = [](const std::optional<double>& value) {
        return value ? numberText(*value, 1) : QString();
    };
    std::vector<GridRow> rows;
    for (const auto& [date, day] : intake_->days) {
        if (rows.size() == kPreviewDays) {
            break;
        }
        GridRow row;
        row.key = fromText(writeDate(date));
        row.cells << quick::dateWords(date) << text(day.least) << text(day.greatest)
                  << text(day.rain);
        rows.push_back(std::move(row));
    }
    table_.setRows(std::move(rows));
}

void WeatherIntakeViewModel::showFacts() {
    facts_.setColumns(tr("What else is known"), {{{}, 12}, {{}, 30, false, true}});
    std::vector<GridRow> rows;
    const auto add = [&rows](const QString& label, const QString& words) {
        GridRow row;
        row.key = label + words;
        row.cells << label << words;
        rows.push_back(std::move(row));
    };
    // At most so many of a kind; the rest is counted.
    const auto addAll = [&](const QString& label, std::size_t count, const auto& words) {
        for (std::size_t i = 0; i < std::min(count, kMostFacts); ++i) {
            add(label, words(i));
        }
        if (count > kMostFacts) {
            add(label, tr("and %n more", nullptr, static_cast<int>(count - kMostFacts)));
        }
    };
    add(tr("Form"), formWords());
    add(tr("Unit"), unitWords());
    addAll(tr("Note"), intake_->remarks.size(), [this](std::size_t i) {
        return remarkWords(intake_->remarks[i]);
    });
    addAll(tr("Lacking"), intake_->gaps.size(), [this](std::size_t i) {
        return daysText(intake_->gaps[i]);
    });
    if (intake_->failedQuality > 0) {
        add(tr("Left out"),
            tr("%n value(s) that failed the check of who measured them.",
               nullptr,
               static_cast<int>(intake_->failedQuality)));
    }
    if (!intake_->otherElements.empty()) {
        QStringList others;
        for (const std::string& element : intake_->otherElements) {
            others << fromText(element);
        }
        add(tr("Left out"), tr("Other measurements: %1.").arg(others.join(QStringLiteral(", "))));
    }
    addAll(tr("Left out"), intake_->unread.size(), [this](std::size_t i) {
        const weather::UnreadLine& line = intake_->unread[i];
        return tr("Line %1: %2").arg(line.line).arg(fromText(line.what));
    });
    facts_.setRows(std::move(rows));
}

void WeatherIntakeViewModel::open(int row) {
    table_.setCurrent(row);
    if (file_ != nullptr) {
        run(QStringLiteral("take"));
        return;
    }
    const QString refusal = takeFile(table_.currentKey());
    if (!refusal.isEmpty()) {
        emit session_.told(refusal);
    }
}

void WeatherIntakeViewModel::act(const QString& id) {
    if (id == QStringLiteral("file")) {
        ask(tr("The file's name"), {}, [this](const QString& text) { return takeFile(text); });
    } else if (id == QStringLiteral("take")) {
        take();
    } else if (id == QStringLiteral("unit")) {
        hasUnit_ = false;
        askNext();
    } else if (id == QStringLiteral("site")) {
        askSite();
    }
}

bool WeatherIntakeViewModel::back() {
    if (file_ == nullptr) {
        return false;
    }
    begin();
    showFiles();
    return true;
}

void WeatherIntakeViewModel::take() {
    if (!plan_ || !isSomebodyThere()) {
        return;
    }
    for (office::Act& act : plan_->acts) {
        for (store::Draft& draft : act.drafts) {
            draft.author = session_.author();
        }
    }
    session_.write(
        this,
        [plan = std::move(*plan_), &clock = session_.clock()](store::Database& database) {
            return office::takeInWeather(database, plan, clock);
        },
        [this](Result<std::size_t> written) {
            const bool isStillHere = intake_ != nullptr;
            if (!written) {
                session_.fail(written.error());
                isStillHere ? planAgain() : void();
                return;
            }
            emit session_.told(
                tr("%n value(s) were taken in.", nullptr, static_cast<int>(*written)));
            if (isStillHere) {
                emit session_.asked(QStringLiteral("back"), {});
            }
        });
    plan_.reset();
    actions_.set({});
}

} // namespace bullace::desk
