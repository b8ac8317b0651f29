// One conflict on the screen: its values as cards, the row around it on the wire, and the facts.
#include "desk/conflict_plot.hpp"
#include "desk/conflicts_view_model.hpp"
#include "desk/desk_words.hpp"
#include "desk/study.hpp"

#include "core/journal/json_value.hpp"
#include "quick/trade_words.hpp"
#include "quick/wire.hpp"

namespace bullace::desk {

using quick::fromText;

QString ConflictsViewModel::valueWords(BytesView value) const {
    return sayValue(*session_.catalogue(), file_->descriptor, value, session_.settings().units);
}

QString ConflictsViewModel::subjectText() const {
    return file_ ? subjectWords(*session_.catalogue(), file_->subject) : QString();
}

QString ConflictsViewModel::accessionText() const {
    return file_ && !file_->accession.empty()
               ? fromText(session_.catalogue()->accessionWords(file_->accession))
               : QString();
}

QString ConflictsViewModel::outcomeText() const {
    if (!file_ || file_->state == merge::State::Open) {
        return {};
    }
    return file_->state == merge::State::Retracted
               ? tr("Settled: no value counts")
               : tr("Settled: %1").arg(valueWords(file_->value));
}

QString ConflictsViewModel::datedWords(const office::Dated& dated) const {
    const QString value = dated.state == merge::State::Open ? tr("open") : valueWords(dated.value);
    return tr("%1 on %2").arg(value, quick::dateWords(*readDate(dated.date)));
}

void ConflictsViewModel::addFact(std::vector<GridRow>& rows,
                                 const QString& label,
                                 const QString& text) const {
    if (!text.isEmpty()) {
        GridRow row;
        row.cells << label << text;
        rows.push_back(std::move(row));
    }
}

std::vector<GridRow> ConflictsViewModel::factRows() const {
    std::vector<GridRow> rows;
    if (!file_) {
        return rows;
    }
    const office::CaseFile& file = *file_;
    const auto dated = [this](const std::optional<office::Dated>& one) {
        return one ? datedWords(*one) : QString();
    };
    addFact(rows,
            tr("Agreed before"),
            file.agreed ? tr("%1, by %2, %3")
                              .arg(valueWords(file.agreed->value),
                                   personWords(*session_.catalogue(), file.agreed->author),
                                   whenWords(file.agreed->wall))
                        : tr("nothing: these are the first"));
    addFact(rows, tr("Here, before"), dated(file.before));
    addFact(rows, tr("Here, after"), dated(file.after));
    addFact(rows, tr("A year before"), dated(file.lastSeason));
    QStringList sisters;
    for (const office::Dated& sister : file.sisters) {
        sisters << tr("%1 at %2").arg(valueWords(sister.value), fromText(sister.position));
    }
    addFact(rows, tr("Other vines of it"), sisters.join(QStringLiteral("; ")));
    QStringList looks;
    for (const office::Dated& look : file.looks) {
        looks << datedWords(look);
    }
    addFact(rows,
            tr("Second look"),
            !looks.isEmpty() ? looks.join(QStringLiteral("; "))
            : file.round     ? tr("asked for; nobody was there yet")
                             : QString());
    QStringList notes;
    for (const std::string& note : file.notes) {
        notes << tr("“%1”").arg(fromText(note));
    }
    addFact(rows, tr("Notes of the day"), notes.join(QStringLiteral(" ")));
    addFact(rows,
            tr("Photos of the day"),
            file.photos.empty() ? tr("no photo")
                                : tr("%n photo(s)", nullptr, static_cast<int>(file.photos.size())));
    if (file.heat) {
        const QString degreeDays =
            tr("%1 (base %2 °C)")
                .arg(numberText(file.heat->degreeDays, 0), numberText(office::kHeatBaseC, 0));
        addFact(rows,
                tr("Degree-days to that day"),
                file.heat->isOnlySite ? degreeDays
                                      : tr("%1, at %2").arg(degreeDays, fromText(file.heat->site)));
    }
    addFact(rows, tr("The rule"), ruleVerdict(file));
    const auto counts = overruled_.find(office::ruleOf(file.rule, file.descriptor));
    if (file.form == journal::SubjectForm::Observation && counts != overruled_.end()) {
        addFact(rows, QString(), overruledWords(counts->second));
    }
    return rows;
}

QString ConflictsViewModel::wireTag(const office::Dated& dated) const {
    if (file_->place == dated.position) {
        QStringList tags;
        int number = 1;
        for (const office::Side& side : file_->sides) {
            tags << QStringLiteral("%1: %2").arg(number++).arg(valueWords(side.value));
        }
        // One line: the wire breaks words at plain spaces.
        return tags.join(QStringLiteral("   ")).replace(QLatin1Char(' '), QChar(QChar::Nbsp));
    }
    return dated.value.empty() ? QString() : valueWords(dated.value);
}

void ConflictsViewModel::showWire() {
    std::vector<quick::WireStop> stops;
    for (const office::Dated& dated : file_ ? file_->row : std::vector<office::Dated>{}) {
        quick::WireStop stop;
        stop.place = quick::vineWords(dated.position);
        stop.tag = wireTag(dated);
        stop.isHere = dated.position == file_->place;
        stop.isMarked = !stop.isHere && dated.state == merge::State::Open;
        const auto none = journal::memberOf(dated.value, "none");
        const auto reason = none ? journal::textOf(*none).value_or("") : std::string_view{};
        const auto empty =
            session_.catalogue()->accessionAt(dated.position, *readDate(file_->date)).empty();
        stop.kind = reason == "dead"                      ? quick::WireVine::Dead
                    : reason == "no-vine" || empty        ? quick::WireVine::Missing
                    : dated.value.empty() && !stop.isHere ? quick::WireVine::NotObserved
                                                          : quick::WireVine::Plain;
        stops.push_back(std::move(stop));
    }
    wire_.set(std::move(stops));
}

void ConflictsViewModel::showPlot() {
    const vineyard::Asked* asked = file_ && file_->form == journal::SubjectForm::Observation
                                       ? session_.catalogue()->descriptor(file_->descriptor)
                                       : nullptr;
    auto plot =
        asked == nullptr ? std::nullopt : conflictPlot(*file_, *asked, session_.settings().units);
    hasPlot_ = plot.has_value();
    if (plot) {
        plot_.setPlot(std::move(*plot));
    }
}

void ConflictsViewModel::showCase() {
    std::vector<SideCard> cards;
    for (std::size_t i = 0; file_ && i < file_->sides.size(); ++i) {
        const office::Side& side = file_->sides[i];
        const auto* taken = choice_ ? std::get_if<TakeSide>(&*choice_) : nullptr;
        SideCard card;
        card.number = QString::number(i + 1);
        card.value = valueWords(side.value);
        card.detail = valueDetail(*session_.catalogue(), file_->descriptor, side.value);
        card.who = areNamesShown_ ? personWords(*session_.catalogue(), side.author) : QString();
        card.when = whenWords(side.wall);
        card.device = areNamesShown_ ? fromText(side.device) : QString();
        QStringList more;
        if (side.kind == journal::Kind::Ruling) {
            more << tr("decided at the office");
        }
        if (side.as) {
            more << tr("typed as %1").arg(fromText(*side.as));
        }
        if (side.why) {
            more << tr("“%1”").arg(fromText(*side.why));
        }
        card.more = more.join(QStringLiteral(", "));
        card.isChosen = taken != nullptr && taken->side == i;
        cards.push_back(std::move(card));
    }
    sides_.set(std::move(cards));
    facts_.setColumns(tr("What else is known"), {{{}, 15}, {{}, 30, false, true}});
    facts_.setRows(factRows());
    showWire();
    showPlot();
    offer();
    emit caseChanged();
}

} // namespace bullace::desk
