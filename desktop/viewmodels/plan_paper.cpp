#include "desk/plan_paper.hpp"

#include "paper/table_page.hpp"

#include "core/vineyard/position.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <map>
#include <set>

namespace bullace::desk {

using quick::fromText;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(PlanPaper)
};

// As many rows of the vineyard as stand side by side on a page.
constexpr std::size_t kMostRows = 8;
// Read at arm's length, in the row.
constexpr double kLeastCapsMm = 1.8;

paper::TablePage walkingList(const office::PlantingPlan& plan, const PlanWords& words) {
    paper::TablePage page{
        words.title, Tr::tr("In walking order."), {}, {}, words.notes, words.asOf, kLeastCapsMm};
    page.columns = {{Tr::tr("Position"), false},
                    {Tr::tr("Replicate"), true},
                    {Tr::tr("Accession"), false},
                    {Tr::tr("Check"), false},
                    {Tr::tr("Planted"), false}};
    for (const trials::PlannedVine& vine : plan.layout.vines) {
        page.rows.push_back(
            {fromText(plan.positions[vine.position]),
             QString::number(vine.replicate),
             fromText(vine.entry),
             vine.isCheck ? Tr::tr("check", "an accession that is known well") : QString(),
             QStringLiteral("☐")});
    }
    return page;
}

// A row of the vineyard is a column: vine 1 stands at the top.
std::vector<paper::TablePage> maps(const office::PlantingPlan& plan, const PlanWords& words) {
    std::map<unsigned, std::map<unsigned, QString>> cells; // by row, then vine
    std::set<unsigned> vines;
    for (const trials::PlannedVine& vine : plan.layout.vines) {
        const auto at = vineyard::readPosition(plan.positions[vine.position]);
        cells[at->row][at->vine] =
            QStringLiteral("%1 (%2)").arg(fromText(vine.entry)).arg(vine.replicate);
        vines.insert(at->vine);
    }
    std::vector<paper::TablePage> pages;
    for (auto from = cells.begin(); from != cells.end();) {
        paper::TablePage page{words.title,
                              Tr::tr("The block, each row a column; the replicate in brackets."),
                              {{Tr::tr("Vine"), true}},
                              {},
                              {},
                              words.asOf,
                              kLeastCapsMm};
        auto to = from;
        for (std::size_t i = 0; i < kMostRows && to != cells.end(); ++i, ++to) {
            page.columns.push_back({Tr::tr("Row %1").arg(to->first), false});
        }
        for (const unsigned vine : vines) {
            QStringList line{QString::number(vine)};
            for (auto row = from; row != to; ++row) {
                const auto found = row->second.find(vine);
                line << (found == row->second.end() ? QString() : found->second);
            }
            page.rows.push_back(std::move(line));
        }
        pages.push_back(std::move(page));
        from = to;
    }
    return pages;
}

} // namespace

QByteArray
planPdf(const office::PlantingPlan& plan, const PlanWords& words, paper::PaperSize size) {
    std::vector<paper::TablePage> tables{walkingList(plan, words)};
    for (paper::TablePage& map : maps(plan, words)) {
        tables.push_back(std::move(map));
    }
    return paper::tablesPdf(tables, size);
}

} // namespace bullace::desk
