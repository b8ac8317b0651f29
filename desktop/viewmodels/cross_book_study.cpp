// How far each cross is, with what success, what is due this week, and which seedlings came of it.
#include "desk/breeding_views.hpp"
#include "desk/cross_book_rows.hpp"
#include "desk/study_remarks.hpp"

#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <array>
#include <set>

namespace bullace::desk {

using breeding::BookEntry;
using breeding::BookGroup;
using breeding::BookStep;
using quick::fromText;
using quick::toText;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(CrossBookStudy)
};

const QString kTable = QStringLiteral("list");
const QString kRate = QStringLiteral("rate");
const QString kBy = QStringLiteral("by");
const QString kYear = QStringLiteral("year");
const QString kAll = QStringLiteral("all");
constexpr int kWeek = 7;

struct Rate {
    const char* key;
    BookStep from;
    BookStep to;
    const char* words;
};
constexpr std::array<Rate, 8> kRates{
    {{"set",
      BookStep::Pollinated,
      BookStep::Set,
      QT_TRANSLATE_NOOP("CrossBookStudy", "Fruits set of flowers")},
     {"harvest",
      BookStep::Pollinated,
      BookStep::Harvested,
      QT_TRANSLATE_NOOP("CrossBookStudy", "Fruits picked of flowers")},
     {"sinkers",
      BookStep::Seeds,
      BookStep::Sinkers,
      QT_TRANSLATE_NOOP("CrossBookStudy", "Sinkers of seeds")},
     {"germination",
      BookStep::Stratified,
      BookStep::Germinated,
      QT_TRANSLATE_NOOP("CrossBookStudy", "Germinated of stratified")},
     {"planting",
      BookStep::Germinated,
      BookStep::Planted,
      QT_TRANSLATE_NOOP("CrossBookStudy", "Planted of germinated")},
     {"flowering",
      BookStep::Planted,
      BookStep::FirstFlower,
      QT_TRANSLATE_NOOP("CrossBookStudy", "Flowered of planted")},
     {"taken",
      BookStep::Planted,
      BookStep::Selected,
      QT_TRANSLATE_NOOP("CrossBookStudy", "Taken on of planted")},
     {"kept",
      BookStep::Pollinated,
      BookStep::Selected,
      QT_TRANSLATE_NOOP("CrossBookStudy", "Taken on of flowers")}}};

const Rate& rateOf(const QString& key) {
    const auto* found = std::ranges::find_if(
        kRates, [&key](const Rate& rate) { return key == QLatin1String(rate.key); });
    return found == kRates.end() ? kRates.front() : *found;
}

BookGroup groupOf(const QString& key) {
    return key == QStringLiteral("father") ? BookGroup::Father
           : key == QStringLiteral("year") ? BookGroup::Year
           : key == kAll                   ? BookGroup::All
                                           : BookGroup::Mother;
}

std::vector<BookEntry> ofYear(std::vector<BookEntry> book, const QString& year) {
    std::erase_if(book, [&year](const BookEntry& entry) {
        return year != kAll && QString::number(entry.head.year) != year;
    });
    return book;
}

// What is due of crosses that are not closed.
std::vector<breeding::DueWork> dueOf(const StudyGround& ground, std::vector<BookEntry> book) {
    std::set<std::string> closed;
    for (const season::NotedCross& cross : ground.notes.crosses) {
        if (cross.isClosed) {
            closed.insert(cross.id);
        }
    }
    std::erase_if(book,
                  [&closed](const BookEntry& entry) { return closed.contains(entry.head.cross); });
    return breeding::dueWork(book, ground.today, kWeek);
}

class CrossBookView : public StudyView {
public:
    QString key() const override { return QStringLiteral("book"); }
    QString title() const override { return Tr::tr("Book of crosses"); }
    QString help() const override {
        return Tr::tr(
            "Each cross with its counts and days, from the bagged flower to the seedling that is "
            "taken on. Flowers and fruits are counted at the mother vine; seeds, sinkers, "
            "stratifying, sowing and germination are fields of the lot of seed in the "
            "collection, which names its cross; a seedling is an accession that names its cross. "
            "The picture has the share that got from one step to another, by mother, father or "
            "year, with 95 % limits; the tables have the crosses, those shares, what is due "
            "within a week or should have been done, and the names under which each seedling is "
            "and was known.");
    }

    std::vector<ChoiceGroup> choices(const StudyGround& ground, Chosen& chosen) const override {
        ChoiceGroup rates{kRate, Tr::tr("Success"), false, {}};
        for (const Rate& rate : kRates) {
            rates.lines.push_back({QLatin1String(rate.key), Tr::tr(rate.words)});
        }
        const ChoiceGroup by{kBy,
                             Tr::tr("By"),
                             false,
                             {{QStringLiteral("mother"), Tr::tr("mother")},
                              {QStringLiteral("father"), Tr::tr("father")},
                              {QStringLiteral("year"), Tr::tr("year")},
                              {kAll, Tr::tr("all together")}}};
        const ChoiceGroup tables{kTable,
                                 Tr::tr("Table of"),
                                 false,
                                 {{QStringLiteral("crosses"), Tr::tr("crosses")},
                                  {QStringLiteral("rates"), Tr::tr("success")},
                                  {QStringLiteral("due"), Tr::tr("what is due")},
                                  {QStringLiteral("names"), Tr::tr("names of seedlings")}}};
        ChoiceGroup years{kYear, Tr::tr("Crosses of"), false, {{kAll, Tr::tr("all years")}}};
        std::set<int, std::greater<>> known;
        for (const breeding::CrossHead& head : season::crossesOf(ground.notes).heads) {
            if (head.year != 0) {
                known.insert(head.year);
            }
        }
        for (const int year : known) {
            years.lines.push_back({QString::number(year), QString::number(year)});
        }
        std::vector<ChoiceGroup> groups{tables, rates, by, years};
        for (const ChoiceGroup& group : groups) {
            settleChoice(chosen, group);
        }
        return groups;
    }

    Study make(const StudyGround& ground, const Chosen& chosen) const override {
        Study study;
        study.title = title();
        study.tableName = title();
        const season::StationCrosses crosses = season::crossesOf(ground.notes);
        auto all = breeding::crossBook(crosses.heads, crosses.events);
        if (!all) {
            study.words = quick::errorWords(all.error());
            return study;
        }
        if (all->empty()) {
            study.words = Tr::tr("No cross is in the collection yet.");
            return study;
        }
        const auto due = dueOf(ground, *all);
        const std::vector<BookEntry> book = ofYear(std::move(*all), chosen.at(kYear));
        const Rate& rate = rateOf(chosen.at(kRate));
        const BookGroup by = groupOf(chosen.at(kBy));
        const auto rates = breeding::successRates(book, rate.from, rate.to, by);
        const QString table = chosen.at(kTable);
        if (table == QStringLiteral("rates")) {
            addRateRows(ground.notes, rates, by, study);
        } else if (table == QStringLiteral("due")) {
            addDueRows(due, ground.today, study);
        } else if (table == QStringLiteral("names")) {
            addNameRows(ground.notes, crosses, study);
        } else {
            addBookRows(ground.notes, book, study);
        }
        addPlot(ground.notes, rate, by, rates, study);
        tell(crosses, book, study);
        study.words = QStringLiteral("%1 %2").arg(
            Tr::tr("%n cross(es).", nullptr, static_cast<int>(book.size())),
            Tr::tr("%n due within a week, or waiting.", nullptr, static_cast<int>(due.size())));
        return study;
    }

private:
    static void addPlot(const season::StationNotes& notes,
                        const Rate& rate,
                        BookGroup by,
                        std::span<const breeding::SuccessRate> rates,
                        Study& study) {
        report::Plot plot;
        plot.title = toText(Tr::tr(rate.words));
        plot.x.title = plot.title;
        plot.x.unit = toText(Tr::tr("percent"));
        plot.x.beginsAtZero = true;
        plot.y.kind = report::PlotAxis::Names;
        plot.y.title = toText(groupTitle(by));
        plot.y.isReversed = true;
        report::PlotSeries points;
        points.kind = report::PlotSeries::Points;
        points.name = toText(Tr::tr("share with 95 % limits, larger for more"));
        std::size_t count = 0;
        for (const breeding::SuccessRate& one : rates) {
            if (!one.rate) {
                continue;
            }
            report::PlotPoint point;
            point.x = 100 * one.rate->value;
            point.y = static_cast<double>(plot.y.names.size());
            if (one.rate->interval) {
                point.xLow = 100 * one.rate->interval->low;
                point.xHigh = 100 * one.rate->interval->high;
            }
            point.weight = static_cast<double>(one.before);
            point.label = toText(groupWords(notes, by, one.group));
            plot.y.names.push_back(point.label);
            points.points.push_back(std::move(point));
            count += static_cast<std::size_t>(one.before);
        }
        if (points.points.empty()) {
            return;
        }
        plot.series.push_back(std::move(points));
        plot.notes.count = count;
        plot.notes.missing =
            toText(Tr::tr("n counts what was begun with; crosses without both counts are left "
                          "out."));
        study.plot = std::move(plot);
    }

    static void
    tell(const season::StationCrosses& crosses, std::span<const BookEntry> book, Study& study) {
        addRemarks(crosses.remarks, study.remarks);
        for (const BookEntry& entry : book) {
            addRemarks(entry.remarks, study.remarks);
        }
        study.openLeft += crosses.open;
        study.method = Tr::tr(
            "Counts of one step are added up. Limits of one cross are Clopper and Pearson's; of "
            "several Wilson's, wider where crosses differ more than chance lets them (McCullagh "
            "and Nelder 1989). What is due goes by the days since the step before: set counted "
            "after 14, harvest after 100, seed cold and damp for 90 days at 4 °C (Conner 2008).");
        study.cautions << Tr::tr("Pollen, seed and wild plants: permits, quarantine and access "
                                 "rules come first.");
    }
};

} // namespace

std::unique_ptr<StudyView> makeCrossBookView() {
    return std::make_unique<CrossBookView>();
}

} // namespace bullace::desk
