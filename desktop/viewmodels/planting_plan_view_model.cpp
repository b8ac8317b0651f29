#include "desk/planting_plan_view_model.hpp"

#include "desk/desk_words.hpp"
#include "desk/plan_paper.hpp"
#include "desk/plan_typing.hpp"
#include "desk/study.hpp"
#include "paper/pdf.hpp"

#include "quick/words.hpp"

#include <algorithm>
#include <cstdint>

namespace bullace::desk {

using quick::fromText;
using quick::toText;
using trials::LayoutKind;

namespace {

QString joined(const std::vector<std::string>& list) {
    QStringList words;
    for (const std::string& each : list) {
        words << fromText(each);
    }
    return words.join(QStringLiteral(", "));
}

// Like 20260314: another one for each day, and the same all day.
std::uint64_t seedOf(CivilDate day) {
    return static_cast<std::uint64_t>(static_cast<int>(day.year())) * 10'000 +
           static_cast<unsigned>(day.month()) * 100 + static_cast<unsigned>(day.day());
}

} // namespace

PlantingPlanViewModel::PlantingPlanViewModel(DeskSession& session, QObject* parent)
    : DeskPage(session, parent) {}

QString PlantingPlanViewModel::help() const {
    return tr("A trial is laid out in the places of a block where nothing stands on the day. "
              "Complete blocks hold every accession once in each replicate. An augmented design "
              "has the selections once and the checks in every block. Rows and columns also spread "
              "the accessions over both. The seed decides the draw: the same seed gives the same "
              "plan again. Accessions are typed with commas between; A040-A052 stands for all from "
              "the one to the other, and a status such as selection for all that have it. Nothing "
              "is written before you press T; then all plantings and the replicates are one act, "
              "which Ctrl+Z takes back.");
}

void PlantingPlanViewModel::begin() {
    wish_ = {};
    plan_.reset();
    fault_.reset();
    wish_.day = session_.today();
    wish_.seed = seedOf(wish_.day);
    const auto& blocks = session_.catalogue()->blocks();
    wish_.block = blocks.empty() ? std::string() : blocks.front().code;
}

void PlantingPlanViewModel::refresh() {
    token_.cancel();
    token_ = {};
    if (wish_.entries.empty() || wish_.block.empty()) {
        show({});
        return;
    }
    session_.read(
        this,
        office::Lane::Background,
        token_,
        [catalogue = session_.catalogue(),
         wish = wish_](store::Database& database) -> Result<Planned> {
            auto plan = office::planPlanting(database, *catalogue, wish);
            return plan ? Planned{std::move(*plan), {}} : Planned{{}, plan.error()};
        },
        [this](Planned planned) { show(std::move(planned)); });
}

void PlantingPlanViewModel::leave() {
    token_.cancel();
}

void PlantingPlanViewModel::show(Planned planned) {
    plan_ = std::move(planned.plan);
    fault_ = std::move(planned.fault);
    say(tr("Planting plan"), answerWords());
    showPlaces();
    showFacts();
    offer();
}

// What has to be told with the plan stands above it, whole.
QString PlantingPlanViewModel::answerWords() const {
    if (fault_) {
        return quick::errorWords(*fault_);
    }
    if (!plan_) {
        return wish_.block.empty() ? tr("There is no block yet: the page Collection makes one.")
                                   : tr("E takes the accessions that are to be planted.");
    }
    const trials::Layout& layout = plan_->layout;
    QStringList words{
        tr("%n vine(s) in walking order.", nullptr, static_cast<int>(layout.vines.size()))};
    if (layout.differenceVariance) {
        words << tr("A difference of two accessions will have %1 times the variance of one vine.")
                     .arg(numberText(*layout.differenceVariance, 2));
    }
    if (layout.efficiency && wish_.kind != LayoutKind::CompleteBlocks) {
        words
            << tr("Efficiency beside complete blocks: %1.").arg(numberText(*layout.efficiency, 2));
    }
    for (const Remark& remark : layout.remarks) {
        words << remarkWords(remark);
    }
    const auto unknown = std::ranges::count_if(layout.vines, [this](const auto& vine) {
        return !session_.catalogue()->accessions().contains(vine.entry);
    });
    if (unknown > 0) {
        words << tr("%n vine(s) of accessions that the collection does not hold yet.",
                    nullptr,
                    static_cast<int>(unknown));
    }
    return words.join(QLatin1Char(' '));
}

void PlantingPlanViewModel::showPlaces() {
    table_.setColumns(
        tr("Places in walking order"),
        {{tr("Position"), 12},
         {wish_.kind == LayoutKind::Augmented ? tr("Block of the design") : tr("Replicate"),
          10,
          true},
         {tr("Accession"), 22, false, true},
         {tr("Check"), 8}});
    std::vector<GridRow> rows;
    if (plan_) {
        for (const trials::PlannedVine& vine : plan_->layout.vines) {
            GridRow row;
            row.key = fromText(plan_->positions[vine.position]);
            row.isStrong = vine.isCheck;
            row.cells << row.key << QString::number(vine.replicate)
                      << fromText(session_.catalogue()->accessionWords(vine.entry))
                      << (vine.isCheck ? tr("check", "an accession that is known well")
                                       : QString());
            rows.push_back(std::move(row));
        }
    }
    table_.setRows(std::move(rows));
}

QString PlantingPlanViewModel::designWords() const {
    switch (wish_.kind) {
    case LayoutKind::CompleteBlocks:
        return tr("complete blocks");
    case LayoutKind::Augmented:
        return tr("augmented");
    case LayoutKind::RowsAndColumns:
        return tr("rows and columns");
    }
    return {};
}

QString PlantingPlanViewModel::placeText() const {
    return placesText({wish_.block, wish_.rows});
}

void PlantingPlanViewModel::showFacts() {
    facts_.setColumns(tr("The plan"), {{{}, 11}, {{}, 12, false, true}});
    std::vector<GridRow> rows;
    const auto add = [&rows](const QString& label, const QString& words) {
        GridRow row;
        row.key = label + words;
        row.cells << label << words;
        rows.push_back(std::move(row));
    };
    add(tr("Design"), designWords());
    add(tr("Places"), placeText());
    add(tr("Accessions"), joined(wish_.entries));
    add(tr("Checks"), joined(wish_.checks));
    add(tr("Replicates"), QString::number(wish_.replicates));
    add(tr("Seed"), QString::number(wish_.seed));
    add(tr("Planted on"), quick::dateWords(wish_.day));
    if (plan_) {
        const trials::Layout& layout = plan_->layout;
        add(tr("Places left"), QString::number(layout.spare.size()));
        add(tr("Not free"), QString::number(layout.lost.size()));
    }
    facts_.setRows(std::move(rows));
}

void PlantingPlanViewModel::offer() {
    const bool isPlanned = plan_.has_value();
    actions_.set({{QStringLiteral("design"), tr("Another design"), QStringLiteral("D")},
                  {QStringLiteral("places"), tr("Block and rows"), QStringLiteral("B")},
                  {QStringLiteral("entries"), tr("Accessions"), QStringLiteral("E")},
                  {QStringLiteral("checks"), tr("Checks"), QStringLiteral("C")},
                  {QStringLiteral("replicates"), tr("Replicates"), QStringLiteral("N")},
                  {QStringLiteral("seed"), tr("Seed"), QStringLiteral("S")},
                  {QStringLiteral("day"), tr("Day"), QStringLiteral("Y")},
                  {QStringLiteral("print"), tr("Print"), QStringLiteral("P"), isPlanned},
                  {QStringLiteral("plant"),
                   tr("Enter as plantings"),
                   QStringLiteral("T"),
                   isPlanned && !session_.isReadOnly()}});
}

void PlantingPlanViewModel::act(const QString& id) {
    if (id == QStringLiteral("design")) {
        wish_.kind = wish_.kind == LayoutKind::CompleteBlocks ? LayoutKind::Augmented
                     : wish_.kind == LayoutKind::Augmented    ? LayoutKind::RowsAndColumns
                                                              : LayoutKind::CompleteBlocks;
        refresh();
    } else if (id == QStringLiteral("print")) {
        askFile(tr("The file for the planting plan: .pdf"),
                tr("planting-plan") + QStringLiteral(".pdf"),
                [this](const QString& path) { return writePlan(path); });
    } else if (id == QStringLiteral("plant")) {
        plant();
    } else {
        askNext(id);
    }
}

void PlantingPlanViewModel::askNext(const QString& id) {
    if (id == QStringLiteral("places")) {
        askPlaces();
    } else if (id == QStringLiteral("entries")) {
        askAccessions(tr("Which accessions are planted? With commas between: A040-A052, selection"),
                      &office::PlanWish::entries);
    } else if (id == QStringLiteral("checks")) {
        askAccessions(tr("Which accessions are the checks? With commas between"),
                      &office::PlanWish::checks);
    } else if (id == QStringLiteral("replicates")) {
        askReplicates();
    } else if (id == QStringLiteral("seed")) {
        askSeed();
    } else if (id == QStringLiteral("day")) {
        askDay();
    }
}

void PlantingPlanViewModel::askPlaces() {
    ask(tr("Which block, and which rows where not all: B2 1-4"),
        placeText(),
        [this](const QString& text) {
            const auto places = typedPlaces(text);
            if (!places) {
                return fromText(places.error().message);
            }
            wish_.block = places->block;
            wish_.rows = places->rows;
            refresh();
            return QString();
        });
}

void PlantingPlanViewModel::askAccessions(const QString& prompt,
                                          std::vector<std::string> office::PlanWish::*list) {
    ask(prompt, joined(wish_.*list), [this, list](const QString& text) {
        wish_.*list = typedAccessions(*session_.catalogue(), text);
        refresh();
        return QString();
    });
}

void PlantingPlanViewModel::askReplicates() {
    ask(tr("How many replicates (of an augmented design: blocks)?"),
        QString::number(wish_.replicates),
        [this](const QString& text) {
            bool isWhole = false;
            const unsigned replicates = text.toUInt(&isWhole);
            if (!isWhole || replicates < 1) {
                return tr("A whole number from 1 is needed.");
            }
            wish_.replicates = replicates;
            refresh();
            return QString();
        });
}

void PlantingPlanViewModel::askSeed() {
    ask(tr("Which number does the draw begin from?"),
        QString::number(wish_.seed),
        [this](const QString& text) {
            bool isWhole = false;
            const qulonglong seed = text.toULongLong(&isWhole);
            if (!isWhole) {
                return tr("A whole number is needed.");
            }
            wish_.seed = seed;
            refresh();
            return QString();
        });
}

void PlantingPlanViewModel::askDay() {
    ask(tr("On which day is it planted? 2026-03-14"),
        fromText(writeDate(wish_.day)),
        [this](const QString& text) {
            const auto day = readDate(toText(text.trimmed()));
            if (!day) {
                return tr("A day like 2026-03-14 is needed.");
            }
            wish_.day = *day;
            refresh();
            return QString();
        });
}

QString PlantingPlanViewModel::writePlan(const QString& path) const {
    if (!plan_) {
        return tr("There is no plan.");
    }
    PlanWords words{tr("Planting plan, %1").arg(placeText()), {}, {}};
    words.asOf = whenWords(session_.clock().nowMs(), session_.clock());
    words.notes << answerWords();
    for (int i = 0; i < facts_.count(); ++i) {
        words.notes << tr("%1: %2").arg(facts_.textAt(i, 0), facts_.textAt(i, 1));
    }
    const auto size = session_.settings().isA4 ? paper::PaperSize::A4 : paper::PaperSize::Letter;
    const Status written = paper::writeFile(path, planPdf(*plan_, words, size));
    return written ? QString() : quick::errorWords(written.error());
}

void PlantingPlanViewModel::plant() {
    if (!plan_ || !isSomebodyThere()) {
        return;
    }
    const int vines = static_cast<int>(plan_->layout.vines.size());
    const std::string why = toText(tr("%1, seed %2").arg(designWords()).arg(plan_->wish.seed));
    session_.write(
        this,
        [plan = std::move(*plan_), why, author = session_.author(), &clock = session_.clock()](
            store::Database& database) -> Result<std::vector<journal::Place>> {
            return office::perform(database, office::plantPlan(database, plan, author, why), clock);
        },
        [this, vines](Result<std::vector<journal::Place>> written) {
            if (!written) {
                session_.fail(written.error());
                refresh();
                return;
            }
            emit session_.told(
                tr("%n vine(s) were planted; Ctrl+Z takes them back.", nullptr, vines));
            emit session_.asked(QStringLiteral("back"), {});
        });
    plan_.reset();
    offer();
}

} // namespace bullace::desk
