#include "desk/vine_view_model.hpp"

#include "desk/desk_words.hpp"
#include "desk/word_codes.hpp"

#include "core/journal/json_value.hpp"
#include "quick/field_sign.hpp"
#include "quick/trade_words.hpp"

#include <algorithm>

namespace bullace::desk {

using quick::FieldSign;
using quick::fromText;
using quick::toText;

namespace {

constexpr std::string_view kAccession = "accession:";
constexpr std::string_view kLot = "lot:";

} // namespace

VineViewModel::VineViewModel(DeskSession& session, QObject* parent) : DeskPage(session, parent) {
    connect(&table_, &GridModel::currentChanged, this, &VineViewModel::offer);
}

QString VineViewModel::help() const {
    return tr(
        "All that was ever noted here, the newest day first, whatever the place was called and "
        "whatever stood in it. Enter on a line shows who wrote it, when, and what it was "
        "replaced by. E puts a value right, with a reason; X takes it back. What was there "
        "before stays in the history.");
}

void VineViewModel::begin(const QString& about) {
    const qsizetype hash = about.indexOf(QLatin1Char('#'));
    about_ = toText(hash < 0 ? about : about.left(hash));
    file_.reset();
    history_.reset();
    filter_.clear();
    if (hash >= 0) {
        readTheHistory(toText(about.mid(hash + 1)));
    }
}

void VineViewModel::refresh() {
    if (about_.empty()) {
        say(tr("A vine"), tr("Search for a position, an accession or a label with Ctrl+F."));
        table_.setColumns({}, {});
        table_.setRows({});
        offer();
        return;
    }
    token_.cancel();
    token_ = {};
    session_.read(
        this,
        office::Lane::Page,
        token_,
        [about = about_, catalogue = session_.catalogue(), today = session_.today()](
            store::Database& database) -> Result<office::VineFile> {
            if (about.rfind(kAccession, 0) == 0) {
                return office::readAccession(
                    database, *catalogue, about.substr(kAccession.size()), today);
            }
            if (about.rfind(kLot, 0) == 0) {
                return office::readLot(database, about.substr(kLot.size()));
            }
            return office::readVine(database, *catalogue, about, today);
        },
        [this](office::VineFile file) {
            file_ = std::move(file);
            if (!history_) {
                showList();
            }
        });
    if (history_) {
        readTheHistory(history_->subject);
    }
}

void VineViewModel::leave() {
    token_.cancel();
}

QString VineViewModel::valueWords(const std::string& subject, BytesView value) const {
    const journal::Subject parts = journal::readSubject(subject);
    return sayValue(*session_.catalogue(),
                    parts.form == journal::SubjectForm::Observation ? parts.descriptor
                                                                    : std::string_view{},
                    value,
                    session_.settings().units);
}

void VineViewModel::showList() {
    const vineyard::Catalogue& catalogue = *session_.catalogue();
    table_.setColumns(tr("Everything that was noted"),
                      {{tr("Day"), 13},
                       {tr("What"), 24},
                       {tr("Value"), 20, false, true},
                       {tr("Where"), 12},
                       {tr("Now"), 12}});
    std::vector<GridRow> rows;
    QString year;
    for (const office::VineValue& value : file_->values) {
        if (!filter_.isEmpty() && fromText(value.descriptor) != filter_) {
            continue;
        }
        if (const QString now = fromText(value.date).left(4); now != year) {
            year = now;
            rows.push_back(headingRow(year, QStringLiteral("year ") + year));
        }
        const bool isOpen = value.state == merge::State::Open;
        const bool isBack = value.state == merge::State::Retracted;
        GridRow row;
        row.key = fromText(value.subject);
        row.sign = isOpen ? FieldSign::Open : isBack ? FieldSign::Withdrawn : FieldSign::Done;
        row.signWord = isOpen ? tr("open") : isBack ? tr("taken back") : tr("settled");
        const QString title = descriptorWords(catalogue, value.descriptor);
        row.cells << quick::dateWords(*readDate(value.date))
                  << (value.sample.empty() ? title : tr("%1, a sample").arg(title))
                  << valueWords(value.subject, value.value) << fromText(value.position)
                  << row.signWord;
        rows.push_back(std::move(row));
    }
    table_.setRows(std::move(rows));
    const QString accession = file_->accession.empty()
                                  ? tr("nothing stands here now")
                                  : fromText(catalogue.accessionWords(file_->accession));
    say(isAccession() ? tr("Accession %1").arg(accession) : placeWordsOf(about_),
        isAccession()
            ? tr("%n value(s), wherever it stood.", nullptr, static_cast<int>(file_->values.size()))
            : tr("%1; %n value(s).", nullptr, static_cast<int>(file_->values.size()))
                  .arg(accession));
    showFacts();
    offer();
}

void VineViewModel::showFacts() {
    facts_.setColumns(tr("What stood here"), {{{}, 13}, {{}, 20, false, true}});
    std::vector<GridRow> rows;
    const auto add = [&rows](const QString& label, const QString& text) {
        GridRow row;
        row.cells << label << text;
        rows.push_back(std::move(row));
    };
    const vineyard::Catalogue& catalogue = *session_.catalogue();
    for (const vineyard::Planting& planting : file_->plantings) {
        const auto last = catalogue.plantings().lastDay(planting);
        const QString from = quick::dateWords(planting.from);
        add(isAccession() ? fromText(planting.position)
                          : fromText(catalogue.accessionWords(planting.accession)),
            last ? tr("%1 to %2").arg(from, quick::dateWords(*last)) : tr("since %1").arg(from));
    }
    const auto accession = catalogue.accessions().find(file_->accession);
    if (accession != catalogue.accessions().end()) {
        add(tr("Status"), quick::tradeWord(accession->second.status));
    }
    facts_.setRows(std::move(rows));
}

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
        const QString typed = entry.as ? tr(" (typed as %1)").arg(fromText(*entry.as)) : QString();
        row.cells << whenWords(entry.wall) << personWords(*session_.catalogue(), entry.author)
                  << (isUndo ? QString() : valueWords(history_->subject, entry.value) + typed)
                  << kind << lineState(line) << fromText(entry.why.value_or(std::string{}))
                  << fromText(entry.device);
        rows.push_back(std::move(row));
    }
    table_.setRows(std::move(rows));
    facts_.setRows({});
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
            showHistory();
        });
}

std::string VineViewModel::currentSubject() const {
    return history_ ? history_->subject : toText(table_.currentKey());
}

void VineViewModel::offer() {
    const bool hasValue = !currentSubject().empty();
    const bool mayWrite = hasValue && !session_.isReadOnly();
    const bool isPlace = file_ && vineyard::readPosition(about_).has_value() && !history_;
    actions_.set(
        {{QStringLiteral("history"), tr("Its history"), QStringLiteral("H"), hasValue && !history_},
         {QStringLiteral("list"),
          tr("Back to the list"),
          QStringLiteral("L"),
          history_.has_value()},
         {QStringLiteral("correct"), tr("Put it right"), QStringLiteral("E"), mayWrite},
         {QStringLiteral("takeBack"), tr("Take it back"), QStringLiteral("X"), mayWrite},
         {QStringLiteral("only"),
          filter_.isEmpty() ? tr("Only this descriptor") : tr("All descriptors"),
          QStringLiteral("D"),
          hasValue && !history_,
          !filter_.isEmpty()},
         {QStringLiteral("accession"),
          tr("The accession, wherever it stands"),
          QStringLiteral("A"),
          isPlace && !file_->accession.empty()},
         {QStringLiteral("before"), tr("Vine before"), QStringLiteral("PgUp"), isPlace},
         {QStringLiteral("behind"), tr("Next vine"), QStringLiteral("PgDown"), isPlace}});
}

void VineViewModel::open(int row) {
    table_.setCurrent(row);
    if (!history_ && !currentSubject().empty()) {
        readTheHistory(currentSubject());
    }
}

void VineViewModel::act(const QString& id) {
    if (id == QStringLiteral("history")) {
        readTheHistory(currentSubject());
    } else if (id == QStringLiteral("list")) {
        back();
    } else if (id == QStringLiteral("correct")) {
        askCorrection();
    } else if (id == QStringLiteral("takeBack")) {
        askReason({journal::nullValue()});
    } else if (id == QStringLiteral("only")) {
        filter_ = filter_.isEmpty() ? fromText(journal::readSubject(currentSubject()).descriptor)
                                    : QString();
        showList();
    } else if (id == QStringLiteral("accession")) {
        emit session_.asked(QStringLiteral("vine"),
                            QStringLiteral("accession:") + fromText(file_->accession));
    } else if (id == QStringLiteral("before")) {
        nextTo(-1);
    } else if (id == QStringLiteral("behind")) {
        nextTo(1);
    }
}

bool VineViewModel::back() {
    if (!history_) {
        return false;
    }
    history_.reset();
    refresh();
    return true;
}

// Along the row as it is planted.
void VineViewModel::nextTo(int by) {
    const auto position = vineyard::readPosition(about_);
    const vineyard::Block* block =
        position ? session_.catalogue()->block(position->block) : nullptr;
    if (block == nullptr) {
        return;
    }
    const std::vector<std::string> places = vineyard::positionsOf(*block);
    const auto here = std::find(places.begin(), places.end(), about_);
    const auto index = here - places.begin() + by;
    if (here != places.end() && index >= 0 && index < static_cast<std::ptrdiff_t>(places.size())) {
        begin(fromText(places[static_cast<std::size_t>(index)]));
        refresh();
    }
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
            const auto act =
                office::correct(seen ? *seen : *now, typed.value, typed.as, author, why);
            return act ? office::perform(database, *act, clock)
                       : Result<std::vector<journal::Place>>(act.error());
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
