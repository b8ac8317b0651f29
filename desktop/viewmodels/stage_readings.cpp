#include "desk/stage_readings.hpp"

#include "quick/words.hpp"

#include <QCoreApplication>
#include <QDate>
#include <QLocale>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>
#include <utility>

namespace bullace::desk {

using quick::fromText;
using quick::toText;
using season::NumberNote;
using season::Organs;
using season::StageReading;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(StageReadings)
};

constexpr std::string_view kStage = "stage";
constexpr std::string_view kLeast = "stage-least";
constexpr std::array<std::string_view, 5> kPercents{
    "bud-break", "caps-off", "coloured", "ripe", "leaf-fall"};

const std::array<AskedStage, 7> kStages{{
    {"bud-break", {9, 50}, "bud-break"},
    {"bloom-start", {61, 10}, "caps-off"},
    {"bloom-full", {65, 50}, "caps-off"},
    {"bloom-end", {69, 100}, "caps-off"},
    {"first-colour", {81, 1}, "coloured"},
    {"ripe", {89, 50}, "ripe"},
    {"leaf-fall", {95, 50}, "leaf-fall"},
}};

// An estimate can lie anywhere; what lies further off is no day that anybody looks for.
constexpr double kMostDays = 2 * 366;

// The year is said only where it is another one.
QString dayWords(CivilDate date, int year) {
    if (static_cast<int>(date.year()) != year) {
        return quick::dateWords(date);
    }
    const QDate day(year,
                    static_cast<int>(static_cast<unsigned>(date.month())),
                    static_cast<int>(static_cast<unsigned>(date.day())));
    //: a date of a year that is known: day, month in letters
    return QLocale().toString(day, Tr::tr("d MMM"));
}

using ByVine = std::map<std::pair<int, std::uint32_t>, std::vector<StageReading>>;

void addReadings(const season::DescriptorNotes& notes,
                 const StageReading& like,
                 int season,
                 ByVine& vines) {
    for (const NumberNote& note : notes.numbers) {
        const CivilDate date = season::dateOfDay(note.day);
        const int year = static_cast<int>(date.year());
        if (season != 0 && year != season) {
            continue;
        }
        StageReading reading = like;
        reading.day = date;
        reading.value = note.low;
        std::vector<StageReading>& readings = vines[{year, note.vine}];
        readings.push_back(reading);
        if (note.high != note.low) {
            reading.value = note.high;
            readings.push_back(reading);
        }
    }
}

} // namespace

std::span<const AskedStage> askedStages() {
    return kStages;
}

QString stageWords(const AskedStage& stage) {
    const std::array<QString, kStages.size()> words{Tr::tr("Bud break"),
                                                    Tr::tr("Bloom begins"),
                                                    Tr::tr("Full bloom"),
                                                    Tr::tr("Bloom over"),
                                                    Tr::tr("First colour"),
                                                    Tr::tr("Ripe"),
                                                    Tr::tr("Leaf fall")};
    for (std::size_t i = 0; i < kStages.size(); ++i) {
        if (kStages[i].key == stage.key) {
            return words[i];
        }
    }
    return {};
}

ChoiceGroup stageChoice() {
    ChoiceGroup group{QStringLiteral("stage"), Tr::tr("Stage"), false, {}};
    for (const AskedStage& stage : kStages) {
        group.lines.push_back({fromText(stage.key), stageWords(stage)});
    }
    return group;
}

const AskedStage& stageOf(const QString& key) {
    const auto found = std::ranges::find(kStages, toText(key), &AskedStage::key);
    return found == kStages.end() ? kStages.front() : *found;
}

std::vector<int> stageSeasons(const season::StationNotes& notes) {
    std::set<int, std::greater<>> years;
    const auto add = [&](std::string_view code) {
        for (const int year : seasonsOf(notes.notesOf(code))) {
            years.insert(year);
        }
    };
    add(kStage);
    std::ranges::for_each(kPercents, add);
    return {years.begin(), years.end()};
}

ChoiceGroup stageAccessions(const StudyGround& ground) {
    std::vector<std::string> codes{std::string(kStage)};
    for (const std::string_view code : kPercents) {
        codes.emplace_back(code);
    }
    return accessionChoice(ground, codes, true);
}

std::vector<season::VineReadings>
readingsOf(const season::StationNotes& notes, const AskedStage& stage, int season) {
    ByVine vines;
    const StageReading most{{}, StageReading::Kind::Stage, 0, Organs::MostAdvanced};
    const StageReading least{{}, StageReading::Kind::Stage, 0, Organs::LeastAdvanced};
    const StageReading percent{{}, StageReading::Kind::Percent, 0, Organs::MostAdvanced};
    addReadings(notes.notesOf(kStage), most, season, vines);
    addReadings(notes.notesOf(kLeast), least, season, vines);
    addReadings(notes.notesOf(stage.percent), percent, season, vines);
    std::vector<season::VineReadings> readings;
    readings.reserve(vines.size());
    for (auto& [key, of] : vines) {
        const season::NotedVine& vine = notes.vines[key.second];
        readings.push_back(
            {notes.accessions[vine.accession].id, vine.position, key.first, std::move(of)});
    }
    return readings;
}

void countStageLeftOut(const season::StationNotes& notes,
                       const AskedStage& stage,
                       int season,
                       Study& study) {
    for (const std::string_view code : {kStage, kLeast, stage.percent}) {
        countLeftOut(notes.notesOf(code), season, study);
    }
}

void addOnsets(const season::AccessionSeason& season, std::vector<season::YearOnset>& onsets) {
    for (const season::OnsetInterval& onset : season.onsets) {
        onsets.push_back({season.year, onset});
    }
}

ChoiceGroup siteChoice(const season::StationNotes& notes) {
    ChoiceGroup group{QStringLiteral("site"), Tr::tr("Weather of"), false, {}};
    for (const auto& [site, days] : notes.weather) {
        group.lines.push_back({fromText(site), fromText(site)});
    }
    return group;
}

const weather::DailyDays* weatherOf(const StudyGround& ground, const Chosen& chosen) {
    const auto& sites = ground.notes.weather;
    const auto site = chosen.find(QStringLiteral("site"));
    const auto found = site == chosen.end() ? sites.end() : sites.find(toText(site->second));
    return found != sites.end() ? &found->second : sites.empty() ? nullptr : &sites.begin()->second;
}

weather::HeatRule seasonHeat() {
    return {weather::DegreeDayMethod::SingleSine, {kSeasonBaseC, {}}};
}

std::vector<season::HeatCurve> heatCurves(const weather::DailyDays& record,
                                          std::span<const int> years) {
    std::vector<season::HeatCurve> curves;
    for (const int year : years) {
        auto sum = weather::heatCurve(record, {}, seasonHeat(), year);
        if (sum) {
            curves.push_back({year, std::move(sum->days)});
        }
    }
    return curves;
}

double seasonPlotDay(double day, int year) {
    const double near = std::clamp(day, -kMostDays, kMostDays);
    return report::plotDay(season::dateOfSeason(near, year));
}

QString seasonDayText(double day, int year) {
    return std::isfinite(day) && std::abs(day) <= kMostDays
               ? dayWords(season::dateOfSeason(day, year), year)
               : Tr::tr("beyond any season");
}

QString seasonSpanText(const statistics::Interval& days, int year) {
    const bool hasLow = std::isfinite(days.low);
    const bool hasHigh = std::isfinite(days.high);
    if (hasLow && hasHigh) {
        return Tr::tr("%1 to %2", "days")
            .arg(seasonDayText(days.low, year), seasonDayText(days.high, year));
    }
    return hasLow    ? Tr::tr("after %1", "a day").arg(seasonDayText(days.low, year))
           : hasHigh ? Tr::tr("by %1", "a day").arg(seasonDayText(days.high, year))
                     : Tr::tr("nothing bounds it");
}

void addRemarks(const Remarks& remarks, Remarks& to) {
    for (const Remark& remark : remarks) {
        if (std::ranges::find(to, remark) == to.end()) {
            to.push_back(remark);
        }
    }
}

void NamedRemarks::add(const std::string& accession, const Remarks& remarks) {
    for (const Remark& remark : remarks) {
        auto found =
            std::ranges::find(all_, remark, &std::pair<Remark, std::vector<std::string>>::first);
        if (found == all_.end()) {
            found = all_.insert(all_.end(), {remark, {}});
        }
        if (std::ranges::find(found->second, accession) == found->second.end()) {
            found->second.push_back(accession);
        }
    }
}

void NamedRemarks::tell(Remarks& to) const {
    constexpr std::size_t kMostNamed = 8;
    for (const auto& [remark, accessions] : all_) {
        QStringList names;
        for (std::size_t i = 0; i < std::min(kMostNamed, accessions.size()); ++i) {
            names << fromText(accessions[i]);
        }
        QString words = names.join(QStringLiteral(", "));
        if (accessions.size() > kMostNamed) {
            words +=
                QLatin1Char(' ') +
                Tr::tr("and %n more", nullptr, static_cast<int>(accessions.size() - kMostNamed));
        }
        to.push_back(
            {BULLACE_SENTENCE("Remark", "%1: %2"), {toText(words), toText(remarkWords(remark))}});
    }
}

} // namespace bullace::desk
