// The comparison sheet: accessions side by side, each with its n and interval, and the difference
// to a reference marked where it is beyond doubt.
#include "desk/comparison_items.hpp"
#include "desk/desk_words.hpp"
#include "desk/stage_readings.hpp"
#include "desk/study_remarks.hpp"
#include "desk/study_views.hpp"

#include "core/season/comparison.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

namespace bullace::desk {

using descriptors::DescriptorKind;
using quick::fromText;
using quick::toText;
using season::ComparedCell;
using season::ComparedItem;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(ComparisonStudy)
};

const QString kReference = QStringLiteral("reference");
const QString kItems = QStringLiteral("items");
const QString kPicture = QStringLiteral("picture");
const QString kAccessions = QStringLiteral("accessions");
const QString kSide = QStringLiteral("side");
const QString kTaxa = QStringLiteral("taxa");
constexpr int kAnyYear = 2023; // whose days stand for those of any season

// What stands on the sheet while nobody has chosen: as much as one page holds.
constexpr std::size_t kMostItems = 8;
constexpr std::array<std::string_view, 12> kFirst{"berries-per-cluster",
                                                  "berry-diameter",
                                                  "berry-weight",
                                                  "seeds-per-berry",
                                                  "soluble-solids",
                                                  "titratable-acidity",
                                                  "clusters",
                                                  "yield",
                                                  "pruning-weight",
                                                  "vigour",
                                                  "dead-spurs",
                                                  "rot"};

bool canCompare(const vineyard::Asked& asked) {
    const DescriptorKind kind = asked.known.kind;
    return kind == DescriptorKind::Count || kind == DescriptorKind::Measure ||
           kind == DescriptorKind::Score || kind == DescriptorKind::Percent;
}

// What is compared, as it stands on the sheet.
struct SheetItem {
    QString key;
    QString title;
    Unit unit;
    int decimals = 1;
    bool isDate = false; // means are days of the season
    ComparedItem compared;

    [[nodiscard]] double shown(double stored) const { return stored / unit.factor + unit.zero; }
    [[nodiscard]] double shownLength(double stored) const { return stored / unit.factor; }
    [[nodiscard]] QString meanText(double stored) const {
        return isDate ? seasonDayText(stored, kAnyYear) : numberText(shown(stored), decimals);
    }
};

class ComparisonView : public StudyView {
public:
    QString key() const override { return QStringLiteral("comparison"); }
    QString title() const override { return Tr::tr("Comparison sheet"); }
    QString help() const override {
        return Tr::tr("Accessions side by side over all seasons. Each cell has the mean, half of "
                      "its 95 % interval, and in brackets the number of vines. A triangle says "
                      "that the accession lies above or below the reference beyond doubt, when all "
                      "differences of the sheet are looked at together. The picture shows the "
                      "differences of one descriptor. W and a name that ends in .pdf writes the "
                      "sheet on one page of paper.");
    }

    std::vector<ChoiceGroup> choices(const StudyGround& ground, Chosen& chosen) const override {
        std::vector<std::string_view> codes;
        ChoiceGroup side{kSide, Tr::tr("Side by side"), false, {}};
        side.lines = {{QStringLiteral("accessions"), Tr::tr("accessions")},
                      {kTaxa, Tr::tr("taxa")}};
        settleChoice(chosen, side);
        const bool isByTaxon = chosen[kSide] == kTaxa;
        ChoiceGroup items{kItems, Tr::tr("What"), true, {}};
        ChoiceGroup picture{kPicture, Tr::tr("Picture of"), false, {}};
        for (const vineyard::Asked* asked : ground.catalogue->descriptors()) {
            if (canCompare(*asked) && !ground.notes.notesOf(asked->known.code).numbers.empty()) {
                codes.push_back(asked->known.code);
                items.lines.push_back({fromText(asked->known.code), quick::titleWords(*asked)});
            }
        }
        for (const FurtherItem& item : furtherItems(ground.notes)) {
            if (!isByTaxon) {
                items.lines.push_back({item.key, item.title});
            }
        }
        if (chosen[kItems].isEmpty()) {
            chosen[kItems] = firstItems(ground);
        }
        settleChoice(chosen, items);
        for (const ChoiceLine& line : items.lines) {
            if (isChosen(chosen, items, line.key)) {
                picture.lines.push_back(line);
            }
        }
        settleChoice(chosen, picture);
        ChoiceGroup reference =
            isByTaxon ? taxonChoice(ground) : accessionChoice(ground, codes, false);
        reference.key = kReference;
        reference.title = Tr::tr("Reference");
        settleChoice(chosen, reference);
        if (isByTaxon) {
            return {side, items, picture, reference};
        }
        const ChoiceGroup accessions = accessionChoice(ground, codes, true);
        settleChoice(chosen, accessions);
        return {side, items, picture, reference, accessions};
    }

    Study make(const StudyGround& ground, const Chosen& chosen) const override {
        if (chosen.at(kSide) != kTaxa) {
            return sheetOf(ground, chosen, accessionsOf(ground, chosen));
        }
        StudyGround by{season::byTaxon(ground.notes, toText(withoutTaxon())),
                       ground.catalogue,
                       ground.units,
                       ground.today,
                       ground.author};
        std::vector<std::size_t> all(by.notes.accessions.size());
        std::iota(all.begin(), all.end(), std::size_t{0});
        Study study = sheetOf(by, chosen, all);
        study.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                  "What repeats in a taxon are its accessions: the "
                                                  "number in brackets counts them."),
                                 {}});
        return study;
    }

private:
    static QString withoutTaxon() { return Tr::tr("without a taxon"); }

    static ChoiceGroup taxonChoice(const StudyGround& ground) {
        ChoiceGroup group;
        for (const season::NotedAccession& accession : ground.notes.accessions) {
            const QString taxon =
                accession.taxon.empty() ? withoutTaxon() : fromText(accession.taxon);
            if (std::ranges::find(group.lines, taxon, &ChoiceLine::key) == group.lines.end()) {
                group.lines.push_back({taxon, taxon});
            }
        }
        std::ranges::sort(group.lines, {}, &ChoiceLine::key);
        return group;
    }

    static Study sheetOf(const StudyGround& ground,
                         const Chosen& chosen,
                         const std::vector<std::size_t>& accessions) {
        Study study;
        study.title = Tr::tr("Comparison sheet");
        study.tableName = study.title;
        const auto reference = ground.notes.accession(toText(chosen.at(kReference)));
        if (!reference || accessions.empty()) {
            study.words = Tr::tr("Nothing has been counted or measured yet.");
            return study;
        }
        const std::vector<SheetItem> items = itemsOf(ground, chosen, accessions, *reference, study);
        const QString name = fromText(ground.notes.accessions[*reference].words);
        study.words = Tr::tr("Against %1: mean ± half of the 95 % interval (vines). ▲ above and ▼ "
                             "below the reference beyond doubt.")
                          .arg(name);
        addTable(ground, accessions, *reference, items, study);
        addPlot(ground, chosen, accessions, *reference, items, study);
        study.method = Tr::tr("Vines' means put right for their seasons by least squares; errors "
                              "pooled over accessions; differences by Student's t, adjusted by "
                              "Holm's method for all differences of the sheet.");
        return study;
    }

    static QString firstItems(const StudyGround& ground) {
        QStringList first;
        for (const std::string_view code : kFirst) {
            const bool isThere = ground.catalogue->descriptor(code) != nullptr &&
                                 !ground.notes.notesOf(code).numbers.empty();
            if (isThere && first.size() < static_cast<qsizetype>(kMostItems)) {
                first << fromText(code);
            }
        }
        return first.join(QLatin1Char(','));
    }

    static std::vector<std::size_t> accessionsOf(const StudyGround& ground, const Chosen& chosen) {
        const ChoiceGroup group{kAccessions, {}, true, {}};
        std::vector<std::size_t> accessions;
        for (std::size_t i = 0; i < ground.notes.accessions.size(); ++i) {
            if (isChosen(chosen, group, fromText(ground.notes.accessions[i].id))) {
                accessions.push_back(i);
            }
        }
        std::ranges::sort(
            accessions, {}, [&ground](std::size_t i) { return ground.notes.accessions[i].id; });
        return accessions;
    }

    static std::vector<SheetItem> itemsOf(const StudyGround& ground,
                                          const Chosen& chosen,
                                          const std::vector<std::size_t>& accessions,
                                          std::size_t reference,
                                          Study& study) {
        std::vector<SheetItem> items;
        std::vector<ComparedItem> compared;
        const std::vector<FurtherItem> further = furtherItems(ground.notes);
        for (const QString& key : chosen.at(kItems).split(QLatin1Char(','), Qt::SkipEmptyParts)) {
            const auto found = std::ranges::find(further, key, &FurtherItem::key);
            if (found != further.end()) {
                compared.push_back(found->compare(accessions, reference));
                items.push_back({key,
                                 found->title,
                                 unitFor(found->unit, {}),
                                 found->isDate ? 0 : 1,
                                 found->isDate,
                                 {}});
            } else if (const auto* asked = ground.catalogue->descriptor(toText(key))) {
                compared.push_back(numbersOf(ground, *asked, accessions, reference, study));
                const Unit unit = unitFor(asked->known.unit, ground.units);
                const int decimals = std::min(2, shownDecimals(unit, asked->known.decimals) + 1);
                items.push_back({key, quick::titleWords(*asked), unit, decimals, false, {}});
            }
        }
        season::adjustForAll(compared);
        for (std::size_t i = 0; i < items.size(); ++i) {
            addRemarks(compared[i].remarks, study.remarks);
            items[i].compared = std::move(compared[i]);
        }
        return items;
    }

    static ComparedItem numbersOf(const StudyGround& ground,
                                  const vineyard::Asked& asked,
                                  const std::vector<std::size_t>& accessions,
                                  std::size_t reference,
                                  Study& study) {
        const auto value =
            asked.known.code == "yield" ? season::SeasonValue::Sum : season::SeasonValue::Mean;
        countLeftOut(ground.notes.notesOf(asked.known.code), 0, study);
        return season::compareNumbers(ground.notes, asked.known.code, accessions, reference, value);
    }

    static QString cellText(const SheetItem& item, const ComparedCell& cell) {
        if (!cell.mean) {
            return {};
        }
        QString text = item.meanText(cell.mean->value);
        if (cell.mean->interval) {
            const double half = (cell.mean->interval->high - cell.mean->interval->low) / 2;
            text +=
                std::isfinite(half)
                    ? QStringLiteral(" ±%1").arg(numberText(item.shownLength(half), item.decimals))
                    : QStringLiteral(" ±?");
        }
        text += QStringLiteral(" (%1)").arg(cell.vines);
        if (cell.isBeyondDoubt()) {
            text += cell.difference->value > 0 ? QStringLiteral(" ▲") : QStringLiteral(" ▼");
        }
        return text;
    }

    static void addTable(const StudyGround& ground,
                         const std::vector<std::size_t>& accessions,
                         std::size_t reference,
                         const std::vector<SheetItem>& items,
                         Study& study) {
        study.columns = {{Tr::tr("Accession"), 14, false, true}};
        for (const SheetItem& item : items) {
            const QString unit = fromText(item.unit.shown);
            const QString& name = item.title;
            study.columns.push_back(
                {unit.isEmpty() ? name : Tr::tr("%1, %2", "a title and its unit").arg(name, unit),
                 14,
                 true});
        }
        for (std::size_t i = 0; i < accessions.size(); ++i) {
            GridRow row;
            row.key = fromText(ground.notes.accessions[accessions[i]].id);
            row.isStrong = accessions[i] == reference;
            row.cells << fromText(ground.notes.accessions[accessions[i]].words);
            for (const SheetItem& item : items) {
                row.cells << cellText(item, item.compared.cells[i]);
            }
            study.rows.push_back(std::move(row));
        }
    }

    static void addPlot(const StudyGround& ground,
                        const Chosen& chosen,
                        const std::vector<std::size_t>& accessions,
                        std::size_t reference,
                        const std::vector<SheetItem>& items,
                        Study& study) {
        const auto item = std::ranges::find(items, chosen.at(kPicture), &SheetItem::key);
        if (item == items.end()) {
            return;
        }
        report::Plot plot;
        plot.title =
            toText(Tr::tr("%1: difference to %2")
                       .arg(item->title, fromText(ground.notes.accessions[reference].words)));
        plot.x.kind = report::PlotAxis::Names;
        plot.x.title = toText(Tr::tr("Accession"));
        plot.y.title = toText(Tr::tr("Difference"));
        plot.y.unit = item->isDate ? std::string("d") : std::string(item->unit.shown);
        report::PlotSeries doubtful{
            report::PlotSeries::Points, toText(Tr::tr("In doubt")), {}, false, false, {}};
        report::PlotSeries certain{
            report::PlotSeries::Points, toText(Tr::tr("Beyond doubt")), {}, false, false, {}};
        std::size_t values = 0;
        for (std::size_t i = 0; i < accessions.size(); ++i) {
            const ComparedCell& cell = item->compared.cells[i];
            if (!cell.difference) {
                continue;
            }
            report::PlotPoint point;
            point.x = static_cast<double>(plot.x.names.size());
            point.y = item->shownLength(cell.difference->value);
            const auto& limits = cell.difference->interval;
            if (limits && std::isfinite(limits->low) && std::isfinite(limits->high)) {
                point.yLow = item->shownLength(cell.difference->interval->low);
                point.yHigh = item->shownLength(cell.difference->interval->high);
            }
            point.label = ground.notes.accessions[accessions[i]].id;
            plot.x.names.push_back(point.label);
            values += cell.values;
            (cell.isBeyondDoubt() ? certain : doubtful).points.push_back(std::move(point));
        }
        for (report::PlotSeries* series : {&certain, &doubtful}) {
            if (!series->points.empty()) {
                plot.series.push_back(std::move(*series));
            }
        }
        if (plot.series.empty()) {
            return;
        }
        plot.marks = {{0, ground.notes.accessions[reference].id, true}};
        plot.notes.count = values;
        plot.notes.missing = toText(Tr::tr("What is open or was not observed is left out."));
        study.plot = std::move(plot);
    }
};

} // namespace

std::unique_ptr<StudyView> makeComparisonView() {
    return std::make_unique<ComparisonView>();
}

} // namespace bullace::desk
