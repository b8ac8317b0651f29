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
        parts << people.join(QStringLiteral(" ") + tr("and") + QStringLiteral(" "));
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
            tr("Like this are %n conflict(s).", nullptr, static_cast<int>(outcomes_.size())) +
            QStringLiteral(" ") +
            tr("Decided would be %n.", nullptr, static_cast<int>(decidedCount())));
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
