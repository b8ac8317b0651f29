#include "desk/cross_book_rows.hpp"

#include "quick/trade_words.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>
#include <QLocale>

#include <algorithm>

namespace bullace::desk {

using breeding::BookEntry;
using breeding::BookStep;
using quick::dateWords;
using quick::fromText;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(CrossBookRows)
};

constexpr std::size_t kNoStep = breeding::kBookSteps;

QString daysText(const breeding::StepRecord& record) {
    if (!record.first) {
        return {};
    }
    return *record.first == *record.last
               ? dateWords(*record.first)
               : Tr::tr("%1 to %2", "days").arg(dateWords(*record.first), dateWords(*record.last));
}

QString sexText(const BookEntry& entry) {
    QStringList said;
    const auto add = [&said](const QString& what) { said << what; };
    if (entry.male > 0) {
        add(Tr::tr("%n male", nullptr, static_cast<int>(entry.male)));
    }
    if (entry.perfect > 0) {
        add(Tr::tr("%n perfect", nullptr, static_cast<int>(entry.perfect)));
    }
    if (entry.female > 0) {
        add(Tr::tr("%n female", nullptr, static_cast<int>(entry.female)));
    }
    return said.join(QStringLiteral(", "));
}

// "412; 18 May 2024"
QString stepText(const BookEntry& entry, BookStep step) {
    const breeding::StepRecord& record = entry.at(step);
    if (record.events == 0) {
        return {};
    }
    QStringList said;
    if (record.count) {
        said << QLocale().toString(static_cast<qlonglong>(*record.count));
    }
    if (step == BookStep::FirstFlower && !sexText(entry).isEmpty()) {
        said << sexText(entry);
    }
    said << daysText(record);
    return said.join(QStringLiteral("; "));
}

QString actWords(breeding::DueAct act) {
    switch (act) {
    case breeding::DueAct::BagsOff:
        return Tr::tr("count the set, bags off");
    case breeding::DueAct::Harvest:
        return Tr::tr("harvest");
    case breeding::DueAct::Stratify:
        return Tr::tr("stratify the seed");
    case breeding::DueAct::TakeOut:
        return Tr::tr("take out and sow");
    }
    return {};
}

} // namespace

QString stepWords(BookStep step) {
    switch (step) {
    case BookStep::Bagged:
        return Tr::tr("Bagged");
    case BookStep::Emasculated:
        return Tr::tr("Emasculated");
    case BookStep::Pollinated:
        return Tr::tr("Flowers pollinated");
    case BookStep::Set:
        return Tr::tr("Fruits set");
    case BookStep::Harvested:
        return Tr::tr("Fruits harvested");
    case BookStep::Seeds:
        return Tr::tr("Seeds");
    case BookStep::Sinkers:
        return Tr::tr("Seeds that sank");
    case BookStep::Stratified:
        return Tr::tr("Seeds stratified");
    case BookStep::Germinated:
        return Tr::tr("Seeds germinated");
    case BookStep::Planted:
        return Tr::tr("Seedlings planted");
    case BookStep::FirstFlower:
        return Tr::tr("Seedlings that flowered");
    case BookStep::Selected:
        return Tr::tr("Seedlings taken on");
    }
    return {};
}

QString parentWords(const season::StationNotes& notes, const std::string& id) {
    if (id.empty()) {
        return Tr::tr("open pollination");
    }
    const auto at = notes.accession(id);
    return fromText(at ? notes.accessions[*at].words : id);
}

QString groupTitle(breeding::BookGroup by) {
    switch (by) {
    case breeding::BookGroup::Mother:
        return Tr::tr("Mother");
    case breeding::BookGroup::Father:
        return Tr::tr("Father");
    case breeding::BookGroup::Year:
        return Tr::tr("Year");
    case breeding::BookGroup::All:
        return Tr::tr("Crosses");
    }
    return {};
}

QString
groupWords(const season::StationNotes& notes, breeding::BookGroup by, const std::string& group) {
    if (by == breeding::BookGroup::All) {
        return Tr::tr("all crosses");
    }
    if (by == breeding::BookGroup::Year) {
        return group == "0" ? Tr::tr("not begun") : fromText(group);
    }
    return parentWords(notes, group);
}

void addBookRows(const season::StationNotes& notes, std::span<const BookEntry> book, Study& study) {
    study.columns = {{Tr::tr("Cross"), 10},
                     {Tr::tr("Mother"), 18, false, true},
                     {Tr::tr("Father"), 18},
                     {Tr::tr("Year"), 5, true}};
    std::vector<BookStep> steps;
    for (std::size_t i = 0; i < kNoStep; ++i) {
        const auto step = static_cast<BookStep>(i);
        const bool isThere =
            std::ranges::any_of(book, [step](const auto& one) { return one.at(step).events > 0; });
        if (isThere) {
            steps.push_back(step);
            study.columns.push_back({stepWords(step), 18});
        }
    }
    for (const BookEntry& entry : book) {
        GridRow row;
        row.key = fromText(entry.head.mother);
        row.cells << fromText(entry.head.cross) << parentWords(notes, entry.head.mother)
                  << parentWords(notes, entry.head.father)
                  << (entry.head.year == 0 ? QString() : QString::number(entry.head.year));
        for (const BookStep step : steps) {
            row.cells << stepText(entry, step);
        }
        study.rows.push_back(std::move(row));
    }
}

void addRateRows(const season::StationNotes& notes,
                 std::span<const breeding::SuccessRate> rates,
                 breeding::BookGroup by,
                 Study& study) {
    study.columns = {{groupTitle(by), 18, false, true},
                     {Tr::tr("Crosses"), 6, true},
                     {Tr::tr("Left out"), 6, true},
                     {Tr::tr("Before"), 8, true},
                     {Tr::tr("After"), 8, true},
                     {Tr::tr("Share, % (95 %)"), 20, true},
                     {Tr::tr("More spread than chance"), 10, true}};
    for (const breeding::SuccessRate& rate : rates) {
        GridRow row;
        row.key = fromText(rate.group);
        const auto count = [](auto n) { return QLocale().toString(static_cast<qlonglong>(n)); };
        row.cells << groupWords(notes, by, rate.group) << count(rate.crosses) << count(rate.leftOut)
                  << count(rate.before) << count(rate.after);
        if (rate.rate) {
            statistics::Estimate percent{100 * rate.rate->value, {}, {}};
            if (rate.rate->interval) {
                percent.interval = {100 * rate.rate->interval->low,
                                    100 * rate.rate->interval->high};
            }
            row.cells << estimateText(percent, 1);
        } else {
            row.cells << QString();
        }
        row.cells << (rate.heterogeneity ? numberText(*rate.heterogeneity, 1) : QString());
        study.rows.push_back(std::move(row));
    }
}

void addDueRows(std::span<const breeding::DueWork> due, CivilDate today, Study& study) {
    study.columns = {{Tr::tr("Cross"), 10},
                     {Tr::tr("What"), 24},
                     {Tr::tr("From"), 14},
                     {Tr::tr("Days it waits"), 6, true},
                     {Tr::tr("Why"), 40, false, true}};
    for (const breeding::DueWork& work : due) {
        GridRow row;
        row.key = fromText(work.cross);
        const auto waits = daysBetween(work.from, today);
        row.cells << fromText(work.cross) << actWords(work.act) << dateWords(work.from)
                  << (waits > 0 ? QString::number(waits) : QString()) << remarkWords(work.reason);
        row.isStrong = waits > 0;
        study.rows.push_back(std::move(row));
    }
}

void addNameRows(const season::StationNotes& notes,
                 const season::StationCrosses& crosses,
                 Study& study) {
    study.columns = {{Tr::tr("Seedling"), 14},
                     {Tr::tr("Cross"), 10},
                     {Tr::tr("All its names, the earliest first"), 40, false, true},
                     {Tr::tr("Status"), 12},
                     {Tr::tr("Planted"), 14}};
    for (const season::NotedAccession& accession : notes.accessions) {
        if (accession.cross.empty() && accession.earlier.empty()) {
            continue;
        }
        GridRow row;
        row.key = fromText(accession.id);
        const auto chain = breeding::nameChain(crosses.names, accession.id);
        QStringList names;
        for (const std::string& name : chain ? *chain : std::vector<std::string>{}) {
            names << fromText(name);
        }
        row.cells << fromText(accession.words)
                  << (accession.cross.empty() && names.size() > 1 ? names.front()
                                                                  : fromText(accession.cross))
                  << (chain ? names.join(QStringLiteral(" → ")) : quick::errorWords(chain.error()))
                  << quick::tradeWord(accession.status)
                  << (accession.planted ? dateWords(season::dateOfDay(*accession.planted))
                                        : QString());
        study.rows.push_back(std::move(row));
    }
}

} // namespace bullace::desk
