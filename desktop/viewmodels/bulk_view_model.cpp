#include "desk/bulk_view_model.hpp"

#include "desk/desk_words.hpp"

#include "core/journal/json_value.hpp"
#include "quick/field_sign.hpp"

#include <QLocale>

#include <algorithm>
#include <set>

namespace bullace::desk {

using office::Pick;
using quick::FieldSign;
using quick::fromText;
using quick::toText;

namespace {

struct Way {
    const char* id;
    const char* key;
    Pick pick;
};
constexpr Way kWays[] = {
    {"later", "1", Pick::Later},
    {"greatest", "2", Pick::Greatest},
    {"least", "3", Pick::Least},
    {"mean", "4", Pick::Mean},
    {"photo", "5", Pick::Photographed},
    {"value", "6", Pick::WithValue},
    {"samples", "7", Pick::Samples},
};

} // namespace

BulkViewModel::BulkViewModel(DeskSession& session, QObject* parent) : DeskPage(session, parent) {}

QString BulkViewModel::help() const {
    return tr(
        "Choose by a number what is taken of conflicts like the one you came from, and narrow "
        "them to one block, one descriptor, the same people or a greatest difference. The "
        "table shows every outcome, those farthest apart on top. Then decide five at random "
        "yourself; if you would take something else than the condition, narrow it. All are "
        "written as one act, which Ctrl+Z takes back.");
}

void BulkViewModel::begin(const QString& subject) {
    subject_ = toText(subject);
    like_.reset();
    condition_ = {};
    outcomes_.clear();
    byHand_.clear();
    answers_.clear();
    step_ = Step::Condition;
}

void BulkViewModel::refresh() {
    if (!like_) {
        readCase();
    } else if (step_ == Step::Condition) {
        preview();
    }
}

void BulkViewModel::leave() {
    token_.cancel();
}

void BulkViewModel::readCase() {
    token_ = {};
    session_.read(
        this,
        office::Lane::Page,
        token_,
        [subject = subject_, catalogue = session_.catalogue()](store::Database& database) {
            return office::readCase(database, *catalogue, subject);
        },
        [this](office::CaseFile file) {
            condition_.cause = file.cause;
            condition_.descriptor =
                file.form == journal::SubjectForm::Observation ? file.descriptor : std::string{};
            like_ = std::move(file);
            preview();
        });
}

void BulkViewModel::preview() {
    token_.cancel();
    token_ = {};
    session_.read(
        this,
        office::Lane::Background,
        token_,
        [condition = condition_, token = token_](store::Database& database) {
            return office::bulkOutcomes(database, condition, token);
        },
        [this](std::vector<office::BulkOutcome> outcomes) {
            outcomes_ = std::move(outcomes);
            showPreview();
        });
}

QString BulkViewModel::pickWords(Pick pick) const {
    switch (pick) {
    case Pick::Later:
        return tr("take the one noted later");
    case Pick::Greatest:
        return tr("take the greatest, or the further stage");
    case Pick::Least:
        return tr("take the least");
    case Pick::Mean:
        return tr("take the mean");
    case Pick::Person:
        return tr("take what %1 noted").arg(personWords(*session_.catalogue(), condition_.person));
    case Pick::Photographed:
        return tr("take the one with a photo");
    case Pick::WithValue:
        return tr("take the value, not the taking back");
    case Pick::Samples:
        return tr("keep all as samples");
    }
    return {};
}

QString BulkViewModel::conditionWords() const {
    QStringList parts{causeWords(condition_.cause)};
    if (!condition_.descriptor.empty()) {
        parts << descriptorWords(*session_.catalogue(), condition_.descriptor);
    }
    if (!condition_.block.empty()) {
        parts << tr("block %1").arg(fromText(condition_.block));
    }
    if (!condition_.authors.empty()) {
        QStringList people;
        for (const std::string& author : condition_.authors) {
            people << personWords(*session_.catalogue(), author);
        }
        parts << people.join(tr(" and "));
    }
    if (condition_.mostApart) {
        parts << tr("no more than %1 apart").arg(QLocale().toString(*condition_.mostApart, 'g', 6));
    }
    return tr("%1: %2", "conditions, what is done")
        .arg(parts.join(QStringLiteral(", ")), pickWords(condition_.pick));
}

QString BulkViewModel::valueWords(const office::BulkOutcome& outcome, BytesView value) const {
    const journal::Subject subject = journal::readSubject(outcome.subject);
    const std::string_view descriptor =
        subject.form == journal::SubjectForm::Observation ? subject.descriptor : std::string_view{};
    return sayValue(*session_.catalogue(), descriptor, value, session_.settings().units);
}

std::size_t BulkViewModel::decidedCount() const {
    return static_cast<std::size_t>(
        std::count_if(outcomes_.begin(), outcomes_.end(), [](const auto& outcome) {
            return !outcome.taken.empty();
        }));
}

void BulkViewModel::showPreview() {
    step_ = Step::Condition;
    table_.setColumns(tr("What the condition would do"),
                      {{tr("Conflict"), 40, false, true},
                       {tr("Values"), 24},
                       {tr("Apart"), 8, true},
                       {tr("Outcome"), 20}});
    std::vector<GridRow> rows;
    for (const office::BulkOutcome& outcome : outcomes_) {
        QStringList values;
        for (const Bytes& value : outcome.values) {
            values << valueWords(outcome, value);
        }
        GridRow row;
        row.key = fromText(outcome.subject);
        row.sign = outcome.taken.empty() ? FieldSign::Marked : FieldSign::Done;
        row.signWord = outcome.taken.empty() ? tr("stays open") : tr("decided");
        row.cells << subjectWords(*session_.catalogue(), outcome.subject)
                  << values.join(QStringLiteral("  |  "))
                  << (outcome.spread ? QLocale().toString(*outcome.spread, 'g', 6) : QString())
                  << (outcome.taken.empty()  ? tr("stays open")
                      : outcome.keepsSamples ? tr("all as samples")
                                             : valueWords(outcome, outcome.taken));
        rows.push_back(std::move(row));
    }
    table_.setRows(std::move(rows));
    say(tr("Many at once"),
        conditionWords() + QStringLiteral("\n") +
            tr("%1 conflicts are like this; %n would be decided.",
               nullptr,
               static_cast<int>(decidedCount()))
                .arg(outcomes_.size()));
    offerConditions();
}

void BulkViewModel::offerConditions() {
    std::vector<Action> actions;
    for (const Way& way : kWays) {
        actions.push_back({QLatin1String(way.id),
                           pickWords(way.pick),
                           QLatin1String(way.key),
                           true,
                           condition_.pick == way.pick});
    }
    std::set<std::string> authors;
    for (const office::Side& side : like_ ? like_->sides : std::vector<office::Side>{}) {
        authors.insert(side.author);
    }
    int number = 8;
    for (const std::string& author : authors) {
        if (number <= 9 && authors.size() > 1) {
            actions.push_back(
                {QStringLiteral("person ") + fromText(author),
                 tr("take what %1 noted").arg(personWords(*session_.catalogue(), author)),
                 QString::number(number++),
                 true,
                 condition_.pick == Pick::Person && condition_.person == author});
        }
    }
    const journal::Subject subject = journal::readSubject(subject_);
    actions.push_back({QStringLiteral("block"),
                       condition_.block.empty() ? tr("Only this block") : tr("All blocks"),
                       QStringLiteral("B"),
                       subject.position.has_value(),
                       !condition_.block.empty()});
    actions.push_back(
        {QStringLiteral("descriptor"),
         condition_.descriptor.empty() ? tr("Only this descriptor") : tr("All descriptors"),
         QStringLiteral("D"),
         like_ && like_->form == journal::SubjectForm::Observation,
         !condition_.descriptor.empty()});
    actions.push_back({QStringLiteral("people"),
                       condition_.authors.empty() ? tr("Only these people") : tr("All people"),
                       QStringLiteral("P"),
                       like_.has_value(),
                       !condition_.authors.empty()});
    actions.push_back({QStringLiteral("apart"),
                       tr("Greatest difference"),
                       QStringLiteral("A"),
                       true,
                       condition_.mostApart.has_value()});
    actions.push_back({QStringLiteral("byHand"),
                       tr("Decide five by hand"),
                       QStringLiteral("F"),
                       decidedCount() > 0});
    actions_.set(std::move(actions));
}

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
    if (session_.author().empty()) {
        emit session_.told(tr("Say first who sits at the desk: Ctrl+0."));
        return;
    }
    const auto count = static_cast<int>(decidedCount());
    session_.write(
        this,
        [outcomes = outcomes_,
         decider = office::Decider{session_.author(), toText(conditionWords())},
         &clock =
             session_.clock()](store::Database& database) -> Result<std::vector<journal::Place>> {
            const Result<office::Act> act = office::bulkAct(database, outcomes, {}, decider);
            return act ? office::perform(database, *act, clock)
                       : Result<std::vector<journal::Place>>(act.error());
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

void BulkViewModel::act(const QString& id) {
    for (const Way& way : kWays) {
        if (id == QLatin1String(way.id)) {
            condition_.pick = way.pick;
            preview();
            return;
        }
    }
    if (id.startsWith(QStringLiteral("person "))) {
        condition_.pick = Pick::Person;
        condition_.person = toText(id.mid(7));
        preview();
    } else if (id == QStringLiteral("block")) {
        const journal::Subject subject = journal::readSubject(subject_);
        condition_.block =
            condition_.block.empty() ? std::string(subject.position->block) : std::string{};
        preview();
    } else if (id == QStringLiteral("descriptor")) {
        condition_.descriptor = condition_.descriptor.empty() ? like_->descriptor : std::string{};
        preview();
    } else if (id == QStringLiteral("people")) {
        std::set<std::string> authors;
        for (const office::Side& side : like_->sides) {
            authors.insert(side.author);
        }
        condition_.authors = condition_.authors.empty()
                                 ? std::vector<std::string>(authors.begin(), authors.end())
                                 : std::vector<std::string>{};
        preview();
    } else if (id == QStringLiteral("apart")) {
        ask(tr("No more apart than? Empty for any difference."), {}, [this](const QString& text) {
            const auto number = office::readTypedNumber(toText(text));
            if (!text.isEmpty() && !number) {
                return tr("Write a number, like 2.");
            }
            condition_.mostApart = text.isEmpty() ? std::nullopt : number;
            preview();
            return QString();
        });
    } else if (id == QStringLiteral("byHand")) {
        // The time of day is as good as any die here; what is drawn is kept.
        byHand_ =
            office::byHandFirst(outcomes_, static_cast<std::uint64_t>(session_.clock().nowMs()));
        answers_.clear();
        showByHand();
    } else if (id.startsWith(QStringLiteral("hand "))) {
        answerByHand(id.mid(5).toULongLong());
    } else if (id == QStringLiteral("narrow")) {
        showPreview();
    } else if (id == QStringLiteral("apply")) {
        apply();
    }
}

bool BulkViewModel::back() {
    if (step_ == Step::Condition) {
        return false;
    }
    showPreview();
    return true;
}

} // namespace bullace::desk
