// Many at once: five decided by hand, then all of it as one act.
#include "desk/bulk_view_model.hpp"
#include "desk/desk_words.hpp"

#include "core/journal/json_value.hpp"

#include <algorithm>

namespace bullace::desk {

using office::Pick;
using quick::fromText;
using quick::toText;

void BulkViewModel::showByHand() {
    if (answers_.size() == byHand_.size()) {
        showReady();
        return;
    }
    step_ = Step::ByHand;
    const office::BulkOutcome& outcome = outcomes_[byHand_[answers_.size()]];
    // Nothing of the outcome is on the screen: the person decides for herself.
    table_.setColumns(tr("One of five"), {{{}, 8}, {tr("Value"), 30, false, true}});
    std::vector<GridRow> rows;
    std::vector<Action> actions;
    for (std::size_t i = 0; i < outcome.values.size(); ++i) {
        const QString number = QString::number(i + 1);
        GridRow row;
        row.key = number;
        row.isStrong = true;
        row.cells << number << valueWords(outcome, outcome.values[i]);
        rows.push_back(std::move(row));
        actions.push_back({QStringLiteral("hand ") + number,
                           tr("Take %1").arg(valueWords(outcome, outcome.values[i])),
                           number});
    }
    actions.push_back({QStringLiteral("hand 0"), tr("None of them"), QStringLiteral("0")});
    table_.setRows(std::move(rows));
    actions_.set(std::move(actions));
    say(tr("By hand, %1 of %2").arg(answers_.size() + 1).arg(byHand_.size()),
        subjectWords(*session_.catalogue(), outcome.subject) + QStringLiteral("\n") +
            tr("Which would you take? The condition's answer is shown when all are decided."));
}

void BulkViewModel::answerByHand(std::size_t side) {
    const office::BulkOutcome& outcome = outcomes_[byHand_[answers_.size()]];
    answers_.push_back(
        {byHand_[answers_.size()],
         side == 0 || side > outcome.values.size() ? Bytes{} : outcome.values[side - 1]});
    showByHand();
}

// A mean and samples are none of the values: the person took one that counts in them.
std::size_t BulkViewModel::differingCount() const {
    return static_cast<std::size_t>(
        std::count_if(answers_.begin(), answers_.end(), [this](const Answer& answer) {
            const office::BulkOutcome& outcome = outcomes_[answer.outcome];
            if (condition_.pick == Pick::Mean || condition_.pick == Pick::Samples) {
                return answer.value.empty();
            }
            return answer.value.empty() || !journal::isSameValue(answer.value, outcome.taken);
        }));
}

void BulkViewModel::showReady() {
    step_ = Step::Ready;
    table_.setColumns(
        tr("By hand, and by the condition"),
        {{tr("Conflict"), 40, false, true}, {tr("You"), 20}, {tr("The condition"), 20}});
    std::vector<GridRow> rows;
    for (const Answer& answer : answers_) {
        const office::BulkOutcome& outcome = outcomes_[answer.outcome];
        GridRow row;
        row.key = fromText(outcome.subject);
        row.cells << subjectWords(*session_.catalogue(), outcome.subject)
                  << (answer.value.empty() ? tr("none of them") : valueWords(outcome, answer.value))
                  << (outcome.keepsSamples ? tr("all as samples")
                                           : valueWords(outcome, outcome.taken));
        rows.push_back(std::move(row));
    }
    table_.setRows(std::move(rows));
    const auto differing = static_cast<int>(differingCount());
    say(tr("Many at once"),
        conditionWords() + QStringLiteral("\n") +
            (differing == 0 ? tr("You decided as the condition does. %n conflict(s) would be "
                                 "settled as one act.",
                                 nullptr,
                                 static_cast<int>(decidedCount()))
                            : tr("You decided otherwise in %n of them: narrow the condition.",
                                 nullptr,
                                 differing)));
    actions_.set({{QStringLiteral("apply"),
                   tr("Settle them all"),
                   QStringLiteral("S"),
                   differing == 0 && !session_.isReadOnly()},
                  {QStringLiteral("narrow"), tr("Narrow the condition"), QStringLiteral("N")}});
}

void BulkViewModel::apply() {
    if (!isSomebodyThere()) {
        return;
    }
    const auto count = static_cast<int>(decidedCount());
    session_.write(
        this,
        [outcomes = outcomes_,
         decider = office::Decider{session_.author(), toText(conditionWords())},
         &clock =
             session_.clock()](store::Database& database) -> Result<std::vector<journal::Place>> {
            return office::perform(
                database, office::bulkAct(database, outcomes, {}, decider), clock);
        },
        [this, count](Result<std::vector<journal::Place>> written) {
            if (!written) {
                session_.fail(written.error());
                preview();
                return;
            }
            emit session_.told(
                tr("%n conflict(s) settled. Ctrl+Z takes all of it back.", nullptr, count));
            emit session_.asked(QStringLiteral("back"), {});
        },
        DeskSession::Touches::Observations);
}

} // namespace bullace::desk
