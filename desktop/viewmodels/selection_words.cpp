#include "desk/selection_words.hpp"

#include "desk/desk_words.hpp"
#include "desk/study.hpp"

#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>

namespace bullace::desk {

using quick::fromText;

namespace {

constexpr std::size_t kMostVerdicts = 6; // that are told of one candidate

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(SelectionWords)
};

// "18.4 ± 0.6"
QString withError(double value, double error, int decimals) {
    return Tr::tr("%1 ± %2", "a value and its standard error")
        .arg(numberText(value, decimals), numberText(error, decimals));
}

QString percentText(double share) {
    return Tr::tr("%1 %", "percent").arg(numberText(share * 100, 0));
}

} // namespace

QString SelectionWords::verdictWords(const std::string& word) {
    return word == "pull"         ? Tr::tr("pull", "a decision")
           : word == "look-again" ? Tr::tr("look again", "a decision")
           : word == "take-on"    ? Tr::tr("take on", "a decision")
                                  : Tr::tr("open: two decisions", "a decision");
}

QString SelectionWords::name(const season::Candidate& candidate) const {
    return fromText(ground_.notes.accessions[candidate.accession].words);
}

QString SelectionWords::decidedText(const season::Candidate& candidate) const {
    const auto verdicts = ground_.verdictsOf(candidate.accession);
    if (verdicts.empty()) {
        return {};
    }
    const office::VerdictNote& last = *verdicts.front();
    const QString what = Tr::tr("%1, %2", "a decision and its day")
                             .arg(verdictWords(last.word), quick::dateWords(last.date));
    return last.why ? Tr::tr("%1: %2", "a decision and its reason").arg(what, fromText(*last.why))
                    : what;
}

std::vector<GridColumn> SelectionWords::listColumns() const {
    std::vector<GridColumn> columns{
        {Tr::tr("Rank"), 4, true},
        {Tr::tr("Selection"), 16, false, true},
        {Tr::tr("Merit"), 10, true},
        {Tr::tr("Among the %n best", nullptr, static_cast<int>(ground_.list.best)), 8, true}};
    for (const season::WishedResult& wish : ground_.list.wishes) {
        columns.push_back({descriptorWords(catalogue_, wish.descriptor), 10, true});
    }
    columns.push_back({Tr::tr("Decided"), 24});
    return columns;
}

std::vector<GridRow> SelectionWords::list() const {
    std::vector<GridRow> rows;
    for (const season::Candidate& candidate : ground_.list.candidates) {
        GridRow row;
        row.key = fromText(ground_.notes.accessions[candidate.accession].id);
        row.cells << (candidate.merit ? QString::number(candidate.rank) : QString())
                  << name(candidate)
                  << (candidate.merit ? withError(*candidate.merit, candidate.meritError, 2)
                                      : QString())
                  << (candidate.merit ? percentText(candidate.amongBest) : QString());
        for (const season::Evidence& evidence : candidate.evidence) {
            row.cells << (evidence.isKnown ? withError(evidence.value, evidence.standardError, 1)
                                           : QString());
        }
        row.cells << decidedText(candidate);
        rows.push_back(std::move(row));
    }
    return rows;
}

std::vector<GridColumn> SelectionWords::evidenceColumns() const {
    return {{Tr::tr("Descriptor"), 18, false, true},
            {Tr::tr("Predicted"), 12, true},
            {Tr::tr("Reliability"), 9, true},
            {Tr::tr("Rank"), 8, true},
            {Tr::tr("Records"), 7, true},
            {Tr::tr("Counts"), 6, true}};
}

std::vector<GridRow> SelectionWords::evidence(const season::Candidate& candidate) const {
    std::vector<GridRow> rows;
    for (std::size_t i = 0; i < ground_.list.wishes.size(); ++i) {
        const season::WishedResult& wish = ground_.list.wishes[i];
        const season::Evidence& evidence = candidate.evidence[i];
        GridRow row;
        row.key = fromText(wish.descriptor);
        row.cells << descriptorWords(catalogue_, wish.descriptor);
        row.cells << (evidence.isKnown ? withError(evidence.value, evidence.standardError, 2)
                                       : Tr::tr("not known"));
        row.cells << (evidence.reliability ? numberText(*evidence.reliability, 2) : QString());
        row.cells << (evidence.rank == 0 ? QString()
                                         : Tr::tr("%1 of %2", "a rank among so many")
                                               .arg(evidence.rank)
                                               .arg(ground_.list.candidates.size()));
        row.cells << QString::number(evidence.records) << numberText(wish.weight, 1);
        rows.push_back(std::move(row));
    }
    addOthers(candidate, rows);
    return rows;
}

// Everything else that was noted of its vines: plain means, and the last of what is no number.
void SelectionWords::addOthers(const season::Candidate& candidate,
                               std::vector<GridRow>& rows) const {
    const auto isIts = [&](std::uint32_t vine) {
        return vine != season::kNoVine &&
               ground_.notes.vines[vine].accession == candidate.accession;
    };
    const std::size_t before = rows.size();
    for (const auto& [code, of] : ground_.notes.of) {
        const bool isWished =
            std::ranges::any_of(ground_.list.wishes, [&code = code](const auto& wish) {
                return wish.descriptor == code;
            });
        if (isWished || code == "verdict" || code == "photo") {
            continue;
        }
        double sum = 0;
        std::size_t count = 0;
        for (const season::NumberNote& note : of.numbers) {
            sum += isIts(note.vine) ? note.value : 0;
            count += isIts(note.vine) ? 1U : 0U;
        }
        const season::WordNote* last = nullptr;
        for (const season::WordNote& note : of.words) {
            const bool isLater = isIts(note.vine) && (last == nullptr || note.day >= last->day);
            last = isLater ? &note : last;
            count += isIts(note.vine) ? 1U : 0U;
        }
        if (count == 0) {
            continue;
        }
        GridRow row;
        row.key = fromText(code);
        row.cells << descriptorWords(catalogue_, code)
                  << (last != nullptr ? fromText(ground_.notes.words[last->word])
                                      : numberText(sum / static_cast<double>(count), 2))
                  << QString() << QString() << QString::number(count) << QString();
        rows.push_back(std::move(row));
    }
    if (rows.size() > before) {
        rows.insert(
            rows.begin() + static_cast<std::ptrdiff_t>(before),
            headingRow(Tr::tr("Also noted: plain means, or the last"), QStringLiteral("others")));
    }
}

SelectionWords::Facts SelectionWords::facts(const season::Candidate& candidate) const {
    const season::NotedAccession& noted = ground_.notes.accessions[candidate.accession];
    Facts facts;
    const auto parent = [this](const std::string& id) {
        return id.empty() ? Tr::tr("not known") : fromText(catalogue_.accessionWords(id));
    };
    if (candidate.merit) {
        facts.emplace_back(Tr::tr("Merit"), withError(*candidate.merit, candidate.meritError, 2));
        facts.emplace_back(
            Tr::tr("Truly among the %n best", nullptr, static_cast<int>(ground_.list.best)),
            percentText(candidate.amongBest));
    }
    facts.emplace_back(Tr::tr("Mother"), parent(noted.mother));
    facts.emplace_back(Tr::tr("Father"), parent(noted.father));
    if (candidate.accession < ground_.inbreeding.size()) {
        facts.emplace_back(Tr::tr("Inbreeding"),
                           numberText(ground_.inbreeding[candidate.accession], 3));
    }
    facts.emplace_back(Tr::tr("Flowers"), flowerWords(vineyard::flowerSexOf(noted.flowerSex)));
    QStringList positions;
    for (const std::string& position : ground_.standing[candidate.accession]) {
        positions << fromText(position);
    }
    facts.emplace_back(Tr::tr("Stands at"),
                       positions.isEmpty() ? Tr::tr("no vine")
                                           : positions.join(QStringLiteral(", ")));
    addDecisions(candidate, facts);
    return facts;
}

// The last ones; a decision made at several vines at once is told once.
void SelectionWords::addDecisions(const season::Candidate& candidate, Facts& facts) const {
    std::size_t told = 0;
    const office::VerdictNote* last = nullptr;
    for (const office::VerdictNote* verdict : ground_.verdictsOf(candidate.accession)) {
        const bool isSame = last != nullptr && last->date == verdict->date &&
                            last->word == verdict->word && last->author == verdict->author &&
                            last->why == verdict->why;
        if (isSame || told == kMostVerdicts) {
            continue;
        }
        last = verdict;
        ++told;
        const QString who = personWords(catalogue_, verdict->author);
        const QString what =
            Tr::tr("%1 (%2)", "a decision, by whom").arg(verdictWords(verdict->word), who);
        facts.emplace_back(
            quick::dateWords(verdict->date),
            verdict->why
                ? Tr::tr("%1: %2", "a decision and its reason").arg(what, fromText(*verdict->why))
                : what);
    }
}

QString SelectionWords::words(const season::Candidate& candidate) const {
    if (!candidate.merit) {
        return Tr::tr("Nothing of what counts was noted of it.");
    }
    return Tr::tr("Rank %1 of %2 by what counts; truly among the %3 best with a probability of "
                  "%4.")
        .arg(candidate.rank)
        .arg(ground_.list.candidates.size())
        .arg(ground_.list.best)
        .arg(percentText(candidate.amongBest));
}

QStringList SelectionWords::notes() const {
    QStringList notes;
    notes << Tr::tr("Predictions by a mixed model of each descriptor over all seasons; merit is "
                    "their weighted sum in genetic standard deviations.");
    std::size_t open = 0;
    for (const season::WishedResult& wish : ground_.list.wishes) {
        open += wish.open;
        for (const Remark& remark : wish.remarks) {
            notes << Tr::tr("%1: %2").arg(descriptorWords(catalogue_, wish.descriptor),
                                          remarkWords(remark));
        }
    }
    if (open > 0) {
        notes << Tr::tr("%n open conflict(s) left out.", nullptr, static_cast<int>(open));
    }
    for (const Remarks* remarks : {&ground_.list.remarks, &ground_.remarks}) {
        for (const Remark& remark : *remarks) {
            notes << remarkWords(remark);
        }
    }
    return notes;
}

} // namespace bullace::desk
