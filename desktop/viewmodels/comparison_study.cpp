// The comparison sheet: accessions side by side, each with its n and interval, and the difference
// to a reference marked where it is beyond doubt.
#include "desk/desk_words.hpp"
#include "desk/study_views.hpp"

#include "core/season/comparison.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>

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

// A descriptor as it stands on the sheet.
struct SheetItem {
    const vineyard::Asked* asked = nullptr;
    Unit unit;
    int decimals = 1;
    ComparedItem compared;

    [[nodiscard]] double shown(double stored) const { return stored / unit.factor + unit.zero; }
    [[nodiscard]] double shownLength(double stored) const { return stored / unit.factor; }
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
        std::vector<std::string> codes;
        ChoiceGroup items{kItems, Tr::tr("What"), true, {}};
        ChoiceGroup picture{kPicture, Tr::tr("Picture of"), false, {}};
        for (const vineyard::Asked* asked : ground.catalogue->descriptors()) {
            if (canCompare(*asked) && !ground.notes.notesOf(asked->known.code).numbers.empty()) {
                codes.emplace_back(asked->known.code);
                items.lines.push_back({fromText(asked->known.code), quick::titleWords(*asked)});
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
        ChoiceGroup reference = accessionChoice(ground, codes, false);
        reference.key = kReference;
        reference.title = Tr::tr("Reference");
        settleChoice(chosen, reference);
        const ChoiceGroup accessions = accessionChoice(ground, codes, true);
        settleChoice(chosen, accessions);
        return {items, picture, reference, accessions};
    }

    Study make(const StudyGround& ground, const Chosen& chosen) const override {
        Study study;
        study.title = title();
        study.tableName = title();
        const auto reference = ground.notes.accession(toText(chosen.at(kReference)));
        const std::vector<std::size_t> accessions = accessionsOf(ground, chosen);
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

private:
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
        std::vector<ComparedItem> compared;
        for (const QString& code : chosen.at(kItems).split(QLatin1Char(','), Qt::SkipEmptyParts)) {
            const std::string descriptor = toText(code);
            const auto value =
                descriptor == "yield" ? season::SeasonValue::Sum : season::SeasonValue::Mean;
            compared.push_back(
                season::compareNumbers(ground.notes, descriptor, accessions, reference, value));
            countLeftOut(ground.notes.notesOf(descriptor), 0, study);
        }
        season::adjustForAll(compared);
        std::vector<SheetItem> items;
        for (ComparedItem& one : compared) {
            const vineyard::Asked* asked = ground.catalogue->descriptor(one.key);
            if (asked == nullptr) {
                continue;
            }
            const Unit unit = unitFor(asked->known.unit, ground.units);
            study.remarks.insert(study.remarks.end(), one.remarks.begin(), one.remarks.end());
            items.push_back({asked,
                             unit,
                             std::min(2, shownDecimals(unit, asked->known.decimals) + 1),
                             std::move(one)});
        }
        return items;
    }

    static QString cellText(const SheetItem& item, const ComparedCell& cell) {
        if (!cell.mean) {
            return {};
        }
        QString text = numberText(item.shown(cell.mean->value), item.decimals);
        if (cell.mean->interval) {
            const double half = (cell.mean->interval->high - cell.mean->interval->low) / 2;
            text += QStringLiteral(" ±%1").arg(numberText(item.shownLength(half), item.decimals));
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
            const QString name = quick::titleWords(*item.asked);
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
        const std::string code = toText(chosen.at(kPicture));
        const auto item = std::ranges::find_if(
            items, [&code](const SheetItem& one) { return one.asked->known.code == code; });
        if (item == items.end()) {
            return;
        }
        report::Plot plot;
        plot.title = toText(Tr::tr("%1: difference to %2")
                                .arg(quick::titleWords(*item->asked),
                                     fromText(ground.notes.accessions[reference].words)));
        plot.x.kind = report::PlotAxis::Names;
        plot.x.title = toText(Tr::tr("Accession"));
        plot.y.title = toText(Tr::tr("Difference"));
        plot.y.unit = std::string(item->unit.shown);
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
            if (cell.difference->interval) {
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
