// The keys of a conflict: what they choose, why, and what is then written.
#include "desk/conflicts_view_model.hpp"
#include "desk/desk_words.hpp"
#include "desk/word_codes.hpp"

#include "core/journal/json_value.hpp"

namespace bullace::desk {

using quick::fromText;
using quick::toText;

namespace {

struct Reason {
    const char* id;
    const char* key;
    std::string_view why;
};
constexpr Reason kReasons[] = {
    {"photo", "P", office::kPhotoShows},
    {"knows", "K", office::kKnowsVine},
    {"slip", "T", office::kTypingSlip},
};

} // namespace

// The act of each choice; made where the database is written, so it holds all that it needs.
struct ConflictsViewModel::Settling {
    store::Database& database;
    const vineyard::Catalogue& catalogue;
    const office::CaseFile& file;
    const office::Decider& decider;
    CivilDate today;
    const std::string& title;

    Result<office::Act> operator()(const TakeSide& side) const {
        return office::ruleFor(catalogue, file, file.sides[side.side].value, decider);
    }
    Result<office::Act> operator()(const TakeValue& value) const {
        return office::ruleFor(catalogue, file, value.typed.value, decider);
    }
    Result<office::Act> operator()(const MoveSide& move) const {
        return office::moveSide(database, file, move.side, move.position, decider);
    }
    Result<office::Act> operator()(const KeepAll&) const {
        return office::keepAsSamples(database, file, decider);
    }
    Result<office::Act> operator()(const LookAgain&) const {
        return office::lookAgain(database, file, today, title, decider);
    }
};

void ConflictsViewModel::offerDeciding(std::vector<Action>& actions) const {
    const bool isOpen = file_ && file_->state == merge::State::Open && !session_.isReadOnly();
    const bool isObservation = file_ && file_->form == journal::SubjectForm::Observation && isOpen;
    const auto sides = file_ ? file_->sides.size() : std::size_t{0};
    for (std::size_t i = 0; i < sides && i < 9; ++i) {
        const QString number = QString::number(i + 1);
        actions.push_back({QStringLiteral("side") + number,
                           tr("Take %1: %2").arg(number, valueWords(file_->sides[i].value)),
                           number,
                           isOpen});
    }
    const bool isSample = file_ && !journal::readSubject(file_->subject).sample.empty();
    const bool isAtVine = isObservation && vineyard::readPosition(file_->place).has_value();
    actions.push_back({QStringLiteral("both"),
                       tr("Keep all as samples"),
                       QStringLiteral("B"),
                       isObservation && !isSample});
    actions.push_back(
        {QStringLiteral("value"), tr("Another value"), QStringLiteral("E"), isObservation});
    actions.push_back({QStringLiteral("look"), tr("Look again"), QStringLiteral("R"), isAtVine});
    actions.push_back(
        {QStringLiteral("vine"), tr("Another vine"), QStringLiteral("W"), isAtVine && !isSample});
    actions.push_back({QStringLiteral("later"), tr("Later"), QStringLiteral("L"), isOpen});
}

void ConflictsViewModel::offer() {
    std::vector<Action> actions;
    if (choice_) {
        actions = {{QStringLiteral("photo"), tr("The photo shows it"), QStringLiteral("P")},
                   {QStringLiteral("knows"), tr("Knows the vine"), QStringLiteral("K")},
                   {QStringLiteral("slip"), tr("Typing slip"), QStringLiteral("T")},
                   {QStringLiteral("other"), tr("Another reason"), QStringLiteral("O")},
                   {QStringLiteral("drop"), tr("Not yet"), QStringLiteral("Esc")}};
        actions_.set(std::move(actions));
        return;
    }
    offerDeciding(actions);
    actions.push_back(
        {QStringLiteral("next"), tr("Next open"), QStringLiteral("Space"), openCount() > 0});
    actions.push_back({QStringLiteral("groupDown"), tr("Next cause"), QStringLiteral("PgDown")});
    actions.push_back({QStringLiteral("groupUp"), tr("Cause before"), QStringLiteral("PgUp")});
    if (photos_.count() > 1) {
        actions.push_back({QStringLiteral("turn"), tr("Next photo"), QStringLiteral("F")});
    }
    actions.push_back({QStringLiteral("names"),
                       areNamesShown_ ? tr("Hide names") : tr("Show names"),
                       QStringLiteral("N")});
    actions.push_back({QStringLiteral("bulk"),
                       tr("Many at once"),
                       QStringLiteral("G"),
                       openCount() > 0 && !session_.isReadOnly()});
    actions.push_back({QStringLiteral("open"),
                       tr("Everything on this vine"),
                       QStringLiteral("V"),
                       file_.has_value()});
    actions.push_back(
        {QStringLiteral("undo"), tr("Undo"), QStringLiteral("Ctrl+Z"), !session_.isReadOnly()});
    actions.push_back(
        {QStringLiteral("redo"), tr("Redo"), QStringLiteral("Ctrl+Y"), session_.canRedo()});
    actions_.set(std::move(actions));
}

void ConflictsViewModel::act(const QString& id) {
    for (const Reason& reason : kReasons) {
        if (id == QLatin1String(reason.id)) {
            decide(fromText(reason.why));
            return;
        }
    }
    if (id.startsWith(QStringLiteral("side"))) {
        choose(TakeSide{id.mid(4).toULongLong() - 1});
    } else if (id == QStringLiteral("turn")) {
        photos_.turn();
    } else if (id == QStringLiteral("both")) {
        choose(KeepAll{});
    } else if (id == QStringLiteral("value")) {
        askValue();
    } else if (id == QStringLiteral("look")) {
        choose(LookAgain{});
    } else if (id == QStringLiteral("vine")) {
        askVine();
    } else if (id == QStringLiteral("other")) {
        askReason();
    } else if (id == QStringLiteral("drop")) {
        back();
    } else if (id == QStringLiteral("later") || id == QStringLiteral("next")) {
        goToNextOpen();
    } else if (id == QStringLiteral("groupDown")) {
        goToGroup(1);
    } else if (id == QStringLiteral("groupUp")) {
        goToGroup(-1);
    } else if (id == QStringLiteral("names")) {
        areNamesShown_ = !areNamesShown_;
        DeskSettings settings = session_.settings();
        settings.showsNames = areNamesShown_;
        session_.change(std::move(settings));
        showCase();
    } else if (id == QStringLiteral("bulk")) {
        emit session_.asked(QStringLiteral("bulk"), table_.currentKey());
    } else if (id == QStringLiteral("open")) {
        emit session_.asked(QStringLiteral("vine"), fromText(file_->place));
    } else if (id == QStringLiteral("undo")) {
        session_.undo();
    } else if (id == QStringLiteral("redo")) {
        session_.redo();
    }
}

bool ConflictsViewModel::back() {
    if (!choice_) {
        return false;
    }
    choice_.reset();
    choiceText_.clear();
    readCurrent();
    showCase();
    return true;
}

QString ConflictsViewModel::wordsOf(const Choice& choice) const {
    if (const auto* side = std::get_if<TakeSide>(&choice)) {
        return valueWords(file_->sides[side->side].value);
    }
    if (const auto* value = std::get_if<TakeValue>(&choice)) {
        return valueWords(value->typed.value);
    }
    if (const auto* move = std::get_if<MoveSide>(&choice)) {
        return tr("%1 moves to %2")
            .arg(valueWords(file_->sides[move->side].value), fromText(move->position));
    }
    return std::holds_alternative<KeepAll>(choice) ? tr("all kept as samples")
                                                   : tr("somebody looks again");
}

void ConflictsViewModel::choose(Choice choice) {
    if (!file_ || file_->state != merge::State::Open) {
        return;
    }
    choiceText_ = tr("%1. Why?").arg(wordsOf(choice));
    choice_ = std::move(choice);
    showCase();
}

void ConflictsViewModel::askValue() {
    ask(tr("Which value?"), {}, [this](const QString& text) {
        const vineyard::Asked* asked = session_.catalogue()->descriptor(file_->descriptor);
        if (asked == nullptr) {
            return tr("Nobody here knows this descriptor; take one of the values.");
        }
        const Result<office::Typed> typed =
            office::readTyped(*asked, toText(text), session_.settings().units, codeOfWord);
        if (!typed) {
            return quick::errorWords(typed.error());
        }
        choose(TakeValue{*typed});
        return QString();
    });
}

void ConflictsViewModel::askVine() {
    ask(tr("Which value was of another vine, and which vine? Its number, then block, row and vine: "
           "1 B2-07-14"),
        {},
        [this](const QString& text) {
            const QStringList parts = text.split(QLatin1Char(' '), Qt::SkipEmptyParts);
            bool isNumber = false;
            const auto side = parts.value(0).toULongLong(&isNumber);
            const std::string position = toText(parts.value(1).toUpper());
            if (parts.size() != 2 || !isNumber || side < 1 || side > file_->sides.size()) {
                return tr("First the number of the value, then the vine: 1 B2-07-14.");
            }
            if (!vineyard::readPosition(position) || position == file_->place) {
                return tr("%1 is no other vine. Write block, row and vine: B2-07-14.")
                    .arg(parts.value(1));
            }
            choose(MoveSide{static_cast<std::size_t>(side - 1), position});
            return QString();
        });
}

void ConflictsViewModel::askReason() {
    askWhy([this](const std::string& why) {
        decide(fromText(why));
        return QString();
    });
}

void ConflictsViewModel::decide(const QString& why) {
    if (!choice_ || !file_) {
        return;
    }
    if (!isSomebodyThere()) {
        return;
    }
    const Choice choice = *choice_;
    const QString outcome = wordsOf(choice);
    const std::string subject = file_->subject;
    choice_.reset();
    choiceText_.clear();
    const bool isLook = std::holds_alternative<LookAgain>(choice);
    session_.write(
        this,
        [choice,
         file = *file_,
         catalogue = session_.catalogue(),
         decider = office::Decider{session_.author(), toText(why)},
         today = session_.today(),
         title = toText(tr("Second looks")),
         &clock =
             session_.clock()](store::Database& database) -> Result<std::vector<journal::Place>> {
            return office::perform(
                database,
                std::visit(Settling{database, *catalogue, file, decider, today, title}, choice),
                clock);
        },
        [this, subject, outcome](Result<std::vector<journal::Place>> written) {
            onDecided(subject, outcome, std::move(written));
        },
        isLook ? DeskSession::Touches::Collection : DeskSession::Touches::Observations);
    showCase();
}

void ConflictsViewModel::onDecided(const std::string& subject,
                                   const QString& outcome,
                                   Result<std::vector<journal::Place>> written) {
    if (!written) {
        session_.fail(written.error());
        refresh();
        readCurrent();
        return;
    }
    decidedMs_.push_back(session_.clock().nowMs());
    if (Item* settled = item(subject)) {
        // A second look leaves it open; the reading that follows tells.
        settled->outcome = outcome;
        settled->isOpen = false;
    }
    showList();
    goToNextOpen();
}

} // namespace bullace::desk
