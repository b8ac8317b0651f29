#include "desk/vine_view_model.hpp"

#include "desk/desk_words.hpp"
#include "desk/photo_reading.hpp"
#include "desk/vine_plot.hpp"

#include "core/journal/json_value.hpp"
#include "quick/field_sign.hpp"
#include "quick/trade_words.hpp"

#include <algorithm>
#include <map>

namespace bullace::desk {

using quick::FieldSign;
using quick::fromText;
using quick::toText;

namespace {

constexpr std::string_view kAccession = "accession:";
constexpr std::string_view kLot = "lot:";

} // namespace

VineViewModel::VineViewModel(DeskSession& session, QObject* parent) : DeskPage(session, parent) {
    connect(&table_, &GridModel::currentChanged, this, [this] {
        offer();
        showPhotos();
    });
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
    wanted_ = hash < 0 ? std::string{} : toText(about.mid(hash + 1));
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
                return office::readAccession(database, *catalogue, about.substr(kAccession.size()));
            }
            if (about.rfind(kLot, 0) == 0) {
                return office::readLot(database, about.substr(kLot.size()));
            }
            return office::readVine(database, *catalogue, about, today);
        },
        [this](office::VineFile file) {
            file_ = std::move(file);
            if (!history_ && wanted_.empty()) {
                showList();
            }
        });
    if (history_ || !wanted_.empty()) {
        readTheHistory(history_ ? history_->subject : wanted_);
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
    // Of an accession there are thousands of lines: what they share is worded once.
    const QString open = tr("open");
    const QString back = tr("taken back");
    const QString settled = tr("settled");
    std::map<std::string, QString> titles;
    std::string day;
    QString dayWords;
    std::vector<GridRow> rows;
    rows.reserve(file_->values.size());
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
        row.signWord = isOpen ? open : isBack ? back : settled;
        QString& title = titles[value.descriptor];
        if (title.isEmpty()) {
            title = descriptorWords(catalogue, value.descriptor);
        }
        if (value.date != day) {
            day = value.date;
            dayWords = quick::dateWords(*readDate(day));
        }
        row.cells << dayWords << (value.sample.empty() ? title : tr("%1, a sample").arg(title))
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
    showPlot();
    showPhotos();
    offer();
}

void VineViewModel::showPlot() {
    const vineyard::Asked* asked = session_.catalogue()->descriptor(toText(filter_));
    auto plot = asked == nullptr || !file_ || history_
                    ? std::nullopt
                    : vinePlot(*file_, *asked, session_.settings().units);
    hasPlot_ = plot.has_value();
    if (plot) {
        plot_.setPlot(std::move(*plot));
    }
    emit plotChanged();
}

// Of the photo whose line is current.
void VineViewModel::showPhotos() {
    std::string digest;
    const std::string subject = currentSubject();
    for (const office::VineValue& value :
         file_ ? file_->values : std::vector<office::VineValue>{}) {
        if (value.subject == subject && value.descriptor == "photo") {
            digest = journal::textOf(value.value).value_or("");
        }
    }
    if (digest == photo_) {
        return;
    }
    photo_ = digest;
    if (digest.empty()) {
        photos_.setPictures({});
        return;
    }
    session_.read(
        this,
        office::Lane::Page,
        {},
        [digest](store::Database& database) { return readPhotos(database, {digest}); },
        [this, digest](std::vector<QImage> pictures) {
            if (digest == photo_) {
                photos_.setPictures(std::move(pictures));
            }
        });
}

void VineViewModel::askPlotFile() {
    askFile(
        tr("The file for the plot: .pdf for a page, .svg for a drawing, .csv for its numbers"),
        QStringLiteral("%1-%2.pdf").arg(fromText(about_).replace(QLatin1Char(':'), u'-'), filter_),
        [this](const QString& path) {
            const Status written = writePlotFile(path, plot_.plot(), session_.settings().isA4);
            return written ? QString() : quick::errorWords(written.error());
        });
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
         {QStringLiteral("plotFile"), tr("Write the plot"), QStringLiteral("P"), hasPlot_},
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
    } else if (id == QStringLiteral("plotFile")) {
        askPlotFile();
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

} // namespace bullace::desk
