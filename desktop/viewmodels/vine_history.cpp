// The history of one value, and what puts it right.
#include "desk/desk_words.hpp"
#include "desk/vine_view_model.hpp"
#include "desk/word_codes.hpp"

#include "core/journal/json_value.hpp"
#include "quick/field_sign.hpp"

namespace bullace::desk {

using quick::FieldSign;
using quick::fromText;
using quick::toText;

QString VineViewModel::lineState(const office::HistoryLine& line) const {
    if (line.uncounted) {
        return fromText(journal::standingSentence(*line.uncounted));
    }
    return line.isUndone              ? tr("undone")
           : line.isHead              ? tr("stands")
           : !line.replacedBy.empty() ? tr("replaced")
                                      : QString();
}

void VineViewModel::showHistory() {
    table_.setColumns(tr("The history of this value"),
                      {{tr("When"), 19},
                       {tr("Who"), 18},
                       {tr("Value"), 18},
                       {tr("Kind"), 12},
                       {tr("Now"), 12},
                       {tr("Why"), 24, false, true},
                       {tr("Device"), 18}});
    std::vector<GridRow> rows;
    for (const office::HistoryLine& line : history_->lines) {
        const office::Side& entry = line.entry;
        const bool isUndo = entry.kind == journal::Kind::Undo;
        GridRow row;
        row.key = fromText(entry.place.origin.text()) + QLatin1Char(' ') +
                  QString::number(entry.place.seq);
        row.sign = line.isHead                                 ? FieldSign::Done
                   : line.isUndone || line.uncounted || isUndo ? FieldSign::Withdrawn
                                                               : FieldSign::Waiting;
        row.signWord = lineState(line);
        row.isStrong = line.isHead;
        const QString kind = isUndo                                 ? tr("undo")
                             : entry.kind == journal::Kind::Ruling  ? tr("decision")
                             : entry.kind == journal::Kind::Retract ? tr("taken back")
                             : entry.kind == journal::Kind::Remark  ? tr("remark")
                             : entry.kind == journal::Kind::Observe ? tr("noted")
                                                                    : tr("entered");
        const QString value = valueWords(history_->subject, entry.value);
        const QString said =
            entry.as ? tr("%1 (typed as %2)").arg(value, fromText(*entry.as)) : value;
        row.cells << whenWords(entry.wall) << personWords(*session_.catalogue(), entry.author)
                  << (isUndo ? QString() : said) << kind << lineState(line)
                  << fromText(entry.why.value_or(std::string{})) << fromText(entry.device);
        rows.push_back(std::move(row));
    }
    table_.setRows(std::move(rows));
    facts_.setRows({});
    showPlot();
    say(subjectWords(*session_.catalogue(), history_->subject),
        tr("%n entry(s), the newest first.", nullptr, static_cast<int>(history_->lines.size())));
    offer();
}

void VineViewModel::readTheHistory(const std::string& subject) {
    session_.read(
        this,
        office::Lane::Page,
        token_,
        [subject](store::Database& database) { return office::readHistory(database, subject); },
        [this](office::SubjectHistory history) {
            history_ = std::move(history);
            wanted_.clear();
            showHistory();
        });
}

void VineViewModel::askCorrection() {
    const std::string subject = currentSubject();
    const journal::Subject parts = journal::readSubject(subject);
    const vineyard::Asked* asked = parts.form == journal::SubjectForm::Observation
                                       ? session_.catalogue()->descriptor(parts.descriptor)
                                       : nullptr;
    if (asked == nullptr) {
        emit session_.told(tr("This version does not know what can be typed here."));
        return;
    }
    QString now;
    for (const office::VineValue& value :
         file_ ? file_->values : std::vector<office::VineValue>{}) {
        if (value.subject == subject && !value.value.empty()) {
            now = fromText(office::typedText(*asked, value.value, session_.settings().units));
        }
    }
    ask(tr("What is right? %1").arg(subjectWords(*session_.catalogue(), subject)),
        now,
        [this, asked = *asked](const QString& text) {
            const Result<office::Typed> typed =
                office::readTyped(asked, toText(text), session_.settings().units, codeOfWord);
            if (!typed) {
                return quick::errorWords(typed.error());
            }
            askReason(*typed);
            return QString();
        });
}

void VineViewModel::askReason(office::Typed typed) {
    if (!isSomebodyThere()) {
        return;
    }
    askWhy([this, typed = std::move(typed)](const std::string& why) {
        write(typed, why);
        return QString();
    });
}

void VineViewModel::write(const office::Typed& typed, const std::string& why) {
    session_.write(
        this,
        [subject = currentSubject(),
         typed,
         why,
         author = session_.author(),
         seen = history_,
         &clock =
             session_.clock()](store::Database& database) -> Result<std::vector<journal::Place>> {
            // Over what was on the screen: the history where it is shown, else what stands now.
            const auto now = office::readHistory(database, subject);
            if (!now) {
                return now.error();
            }
            return office::perform(
                database,
                office::correct(seen ? *seen : *now, typed.value, typed.as, author, why),
                clock);
        },
        [this](Result<std::vector<journal::Place>> written) {
            if (!written) {
                session_.fail(written.error());
            }
            refresh();
        },
        DeskSession::Touches::Observations);
}

} // namespace bullace::desk
