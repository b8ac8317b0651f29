#include "desk/rulebook_view_model.hpp"

#include "desk/desk_words.hpp"

#include "core/journal/json_value.hpp"
#include "quick/field_sign.hpp"

#include <QLocale>

#include <algorithm>
#include <array>

namespace bullace::desk {

using office::RuleDraft;
using quick::FieldSign;
using quick::fromText;
using quick::toText;

namespace {

constexpr std::uint64_t kStep = 10; // between the numbers of two rules, for one between them
constexpr std::array kFields{&RuleDraft::where,
                             &RuleDraft::from,
                             &RuleDraft::to,
                             &RuleDraft::descriptors,
                             &RuleDraft::rule,
                             &RuleDraft::within};

} // namespace

RulebookViewModel::RulebookViewModel(DeskSession& session, QObject* parent)
    : DeskPage(session, parent) {
    connect(&table_, &GridModel::currentChanged, this, &RulebookViewModel::offer);
}

QString RulebookViewModel::help() const {
    return tr(
        "Rules are tried in their order; the first that fits the place, the day and the "
        "descriptor decides. Where none fits, the descriptor's own rule does. Before a change is "
        "saved the page shows what it would settle and what it would open. Saving changes derived "
        "values at once and loses nothing; an older rule comes back with Ctrl+Z.");
}

void RulebookViewModel::refresh() {
    if (step_ != Step::List) {
        return; // what is being edited is not taken away
    }
    token_.cancel();
    token_ = {};
    session_.read(
        this,
        office::Lane::Page,
        token_,
        [](store::Database& database) { return office::readRules(database); },
        [this](std::vector<office::RuleLine> lines) {
            lines_ = std::move(lines);
            if (step_ == Step::List) {
                showList();
            }
        });
}

void RulebookViewModel::leave() {
    token_.cancel();
    step_ = Step::List;
    preview_.reset();
}

QString RulebookViewModel::lineWords(const RuleDraft& draft) const {
    const Result<Bytes> value = office::ruleValue(draft);
    const auto rule = value ? merge::readBookRule(*value) : std::nullopt;
    return rule ? ruleWords(rule->rule) : QString();
}

void RulebookViewModel::showList() {
    step_ = Step::List;
    table_.setColumns(tr("Rules"),
                      {{tr("Rule"), 7, true},
                       {tr("Where"), 13},
                       {tr("From"), 13},
                       {tr("To"), 13},
                       {tr("Descriptors"), 26},
                       {tr("What it does"), 30, false, true}});
    std::vector<GridRow> rows;
    const auto dateOr = [](const std::string& date, const QString& other) {
        const auto day = readDate(date);
        return day ? quick::dateWords(*day) : other;
    };
    for (const office::RuleLine& line : lines_) {
        GridRow row;
        row.key = QString::number(line.number);
        row.sign = line.isOpen       ? FieldSign::Open
                   : line.isReadable ? FieldSign::Done
                                     : FieldSign::Marked;
        row.signWord = line.isOpen       ? tr("changed by two: settle that first")
                       : line.isReadable ? tr("holds")
                                         : tr("not understood, passed over");
        QStringList titles;
        const QStringList codes =
            fromText(line.draft.descriptors).split(QStringLiteral(", "), Qt::SkipEmptyParts);
        for (const QString& code : codes) {
            titles << descriptorWords(*session_.catalogue(), toText(code));
        }
        row.cells << QString::number(line.number)
                  << (line.draft.where.empty() ? tr("everywhere") : fromText(line.draft.where))
                  << dateOr(line.draft.from, tr("always")) << dateOr(line.draft.to, tr("always"))
                  << (titles.isEmpty() ? tr("all") : titles.join(QStringLiteral(", ")))
                  << (line.isReadable ? lineWords(line.draft) : row.signWord);
        rows.push_back(std::move(row));
    }
    table_.setRows(std::move(rows));
    say(tr("Rulebook"),
        lines_.empty()
            ? tr("No rule yet: each descriptor's own rule decides.")
            : tr("%n rule(s), tried from the top.", nullptr, static_cast<int>(lines_.size())));
    offer();
}

void RulebookViewModel::showEdit() {
    step_ = Step::Edit;
    table_.setColumns(
        tr("The rule"),
        {{tr("Field"), 18}, {tr("Value"), 30}, {tr("What it takes"), 40, false, true}});
    struct Line {
        QString label;
        QString takes;
    };
    const Line lines[] = {
        {tr("Where"), tr("a vine, row or block: B2-07-14, B2-07-*, B2-*; empty for everywhere")},
        {tr("From"), tr("a day like 2026-05-14; empty for always")},
        {tr("To"), tr("a day like 2026-09-30; empty for always")},
        {tr("Descriptors"), tr("codes with commas between them; empty for all")},
        {tr("Rule"), tr("ask, later, advanced, greatest, least, mean or all")},
        {tr("Within"),
         tr("a number, or percent of the mean like 5 %; beyond it a person decides")}};
    std::vector<GridRow> rows;
    for (std::size_t i = 0; i < kFields.size(); ++i) {
        GridRow row;
        row.key = QString::number(i);
        row.editable = {1};
        row.cells << lines[i].label << fromText(draft_.*kFields[i]) << lines[i].takes;
        rows.push_back(std::move(row));
    }
    table_.setRows(std::move(rows));
    const Result<Bytes> value = office::ruleValue(draft_);
    say(tr("Rule %1").arg(number_),
        value ? tr("%1.", "a rule in words").arg(lineWords(draft_))
              : quick::errorWords(value.error()));
    offer();
}

void RulebookViewModel::readPreview() {
    token_.cancel();
    token_ = {};
    session_.read(
        this,
        office::Lane::Page,
        token_,
        [changes = changes_, token = token_](store::Database& database) {
            return office::previewRules(database, changes, token);
        },
        [this](office::RulePreview preview) {
            preview_ = std::move(preview);
            showPreview();
        });
}

void RulebookViewModel::showPreview() {
    step_ = Step::Preview;
    table_.setColumns(tr("What would change"),
                      {{tr("Subject"), 40, false, true}, {tr("Now"), 22}, {tr("Then"), 22}});
    std::vector<GridRow> rows;
    const auto said = [this](const std::string& subject, merge::State state, BytesView value) {
        const journal::Subject parts = journal::readSubject(subject);
        return state == merge::State::Open
                   ? tr("open")
                   : sayValue(
                         *session_.catalogue(), parts.descriptor, value, session_.settings().units);
    };
    for (const office::RuleEffect& effect : preview_->sample) {
        GridRow row;
        row.key = fromText(effect.subject);
        row.sign = effect.after == merge::State::Open ? FieldSign::Open : FieldSign::Done;
        row.signWord = effect.after == merge::State::Open ? tr("opens") : tr("settles");
        row.cells << subjectWords(*session_.catalogue(), effect.subject)
                  << said(effect.subject, effect.before, effect.valueBefore)
                  << said(effect.subject, effect.after, effect.valueAfter);
        rows.push_back(std::move(row));
    }
    table_.setRows(std::move(rows));
    say(tr("What would change"),
        tr("Of %1 subjects whose values do not agree: %2 would be settled, %3 would become open, "
           "%4 "
           "would have another value.")
            .arg(preview_->contested)
            .arg(preview_->becomeSettled)
            .arg(preview_->becomeOpen)
            .arg(preview_->changeValue));
    offer();
}

std::optional<std::size_t> RulebookViewModel::currentLine() const {
    const QString key = table_.currentKey();
    for (std::size_t i = 0; i < lines_.size(); ++i) {
        if (QString::number(lines_[i].number) == key) {
            return i;
        }
    }
    return std::nullopt;
}

void RulebookViewModel::offer() {
    const bool mayWrite = !session_.isReadOnly();
    const auto line = step_ == Step::List ? currentLine() : std::nullopt;
    const bool canEdit = mayWrite && line && !lines_[*line].isOpen;
    if (step_ == Step::List) {
        actions_.set(
            {{QStringLiteral("edit"), tr("Change this rule"), QStringLiteral("E"), canEdit},
             {QStringLiteral("add"), tr("Add a rule"), QStringLiteral("A"), mayWrite},
             {QStringLiteral("up"),
              tr("Try it earlier"),
              QStringLiteral("Ctrl+Up"),
              canEdit && *line > 0},
             {QStringLiteral("down"),
              tr("Try it later"),
              QStringLiteral("Ctrl+Down"),
              canEdit && *line + 1 < lines_.size()},
             {QStringLiteral("away"), tr("Take it away"), QStringLiteral("X"), canEdit}});
    } else if (step_ == Step::Edit) {
        actions_.set({{QStringLiteral("field"), tr("Type this field"), QStringLiteral("E")},
                      {QStringLiteral("preview"),
                       tr("What would change?"),
                       QStringLiteral("P"),
                       office::ruleValue(draft_).ok()},
                      {QStringLiteral("drop"), tr("Leave it as it was"), QStringLiteral("Esc")}});
    } else {
        actions_.set({{QStringLiteral("save"), tr("Save it"), QStringLiteral("S"), mayWrite},
                      {QStringLiteral("drop"), tr("Not so"), QStringLiteral("Esc")}});
    }
}

void RulebookViewModel::edit(std::size_t line) {
    draft_ = lines_[line].draft;
    number_ = lines_[line].number;
    heads_ = lines_[line].heads;
    table_.setCurrent(-1);
    showEdit();
}

void RulebookViewModel::addRule() {
    draft_ = {};
    number_ = lines_.empty() ? kStep : (lines_.back().number / kStep + 1) * kStep;
    heads_.clear();
    showEdit();
}

std::string* RulebookViewModel::field(int row) {
    return step_ == Step::Edit && row >= 0 && row < static_cast<int>(kFields.size())
               ? &(draft_.*kFields[static_cast<std::size_t>(row)])
               : nullptr;
}

void RulebookViewModel::askField(int row) {
    std::string* text = field(row);
    if (text == nullptr) {
        return;
    }
    ask(table_.at(row).cells.value(0) + QStringLiteral(": ") + table_.at(row).cells.value(2),
        fromText(*text),
        [this, row](const QString& answer) {
            RuleDraft next = draft_;
            next.*kFields[static_cast<std::size_t>(row)] = toText(answer);
            const Result<Bytes> value = office::ruleValue(next);
            if (!value) {
                return quick::errorWords(value.error());
            }
            draft_ = std::move(next);
            showEdit();
            return QString();
        });
}

void RulebookViewModel::type(int row, int column, const QString& text) {
    std::string* into = column == 1 ? field(row) : nullptr;
    if (into != nullptr) {
        *into = toText(text.trimmed());
        showEdit();
    }
}

void RulebookViewModel::open(int row) {
    table_.setCurrent(row);
    if (step_ == Step::Edit) {
        askField(row);
    } else if (step_ == Step::List && actions_.isEnabled(QStringLiteral("edit"))) {
        edit(*currentLine());
    }
}

// Two rules change places: both are written anew under the other's number, as one act.
void RulebookViewModel::move(int by) {
    const auto line = currentLine();
    const std::size_t other = *line + static_cast<std::size_t>(by);
    const Result<Bytes> here = office::ruleValue(lines_[*line].draft);
    const Result<Bytes> there = office::ruleValue(lines_[other].draft);
    if (!here || !there) {
        session_.fail(here ? there.error() : here.error());
        return;
    }
    changes_ = {{lines_[*line].number, *there, lines_[*line].heads},
                {lines_[other].number, *here, lines_[other].heads}};
    readPreview();
}

void RulebookViewModel::takeAway() {
    const office::RuleLine& line = lines_[*currentLine()];
    changes_ = {{line.number, {}, line.heads}};
    readPreview();
}

void RulebookViewModel::save() {
    if (!isSomebodyThere()) {
        return;
    }
    askWhy([this](const std::string& why) {
        const Result<office::Act> act = office::ruleAct(changes_, session_.author(), why);
        if (!act) {
            return quick::errorWords(act.error());
        }
        session_.perform(this, *act, [this](Result<std::vector<journal::Place>> written) {
            if (!written) {
                session_.fail(written.error());
            }
            step_ = Step::List;
            preview_.reset();
            refresh();
        });
        return QString();
    });
}

void RulebookViewModel::act(const QString& id) {
    if (id == QStringLiteral("edit")) {
        edit(*currentLine());
    } else if (id == QStringLiteral("add")) {
        addRule();
    } else if (id == QStringLiteral("up")) {
        move(-1);
    } else if (id == QStringLiteral("down")) {
        move(1);
    } else if (id == QStringLiteral("away")) {
        takeAway();
    } else if (id == QStringLiteral("field")) {
        askField(table_.current());
    } else if (id == QStringLiteral("preview")) {
        const Result<Bytes> value = office::ruleValue(draft_);
        if (value) {
            changes_ = {{number_, *value, heads_}};
            readPreview();
        }
    } else if (id == QStringLiteral("save")) {
        save();
    } else if (id == QStringLiteral("drop")) {
        back();
    }
}

bool RulebookViewModel::back() {
    if (step_ == Step::List) {
        return false;
    }
    step_ = Step::List;
    preview_.reset();
    refresh();
    return true;
}

} // namespace bullace::desk
