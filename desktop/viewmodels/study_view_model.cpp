#include "desk/study_view_model.hpp"

#include "desk/desk_words.hpp"
#include "desk/table_files.hpp"
#include "desk/vine_plot.hpp"
#include "office/station_notes_reading.hpp"
#include "paper/pdf.hpp"
#include "paper/table_page.hpp"

#include "core/report/csv.hpp"
#include "quick/field_sign.hpp"

#include <QRegularExpression>

#include <algorithm>

namespace bullace::desk {

using quick::FieldSign;
using quick::fromText;
using quick::toText;

namespace {

const QString kView = QStringLiteral("view");

// The station as it is now, unless what was read before still holds.
Result<std::shared_ptr<const StudyGround>> groundFrom(store::Database& database,
                                                      std::shared_ptr<const StudyGround> before,
                                                      StudyGround now,
                                                      const office::Token& token) {
    if (before != nullptr) {
        return before;
    }
    auto notes = office::readStationNotes(database, *now.catalogue, token);
    if (!notes) {
        return notes.error();
    }
    now.notes = std::move(*notes);
    return std::shared_ptr<const StudyGround>(std::make_shared<StudyGround>(std::move(now)));
}

GridRow factRow(const QString& label, const QString& words) {
    GridRow row;
    row.key = label + words;
    row.cells << label << words;
    return row;
}

} // namespace

StudyViewModel::StudyViewModel(DeskSession& session,
                               StudyReading& reading,
                               const StudyShelf& shelf,
                               QObject* parent)
    : DeskPage(session, parent),
      pageTitle_(shelf.title),
      reading_(reading) {
    for (std::unique_ptr<StudyView>& made : shelf.views()) {
        views_.push_back(std::move(made));
    }
    const auto forget = [this] { reading_.ground.reset(); };
    connect(&session_, &DeskSession::changed, this, forget);
    connect(&session_, &DeskSession::catalogueChanged, this, forget);
    connect(&session_, &DeskSession::settingsChanged, this, forget);
    connect(&session_, &DeskSession::deskChanged, this, [this] {
        reading_.ground.reset();
        chosen_.clear();
        study_ = {};
    });
}

StudyViewModel::~StudyViewModel() = default;

QString StudyViewModel::help() const {
    return tr("The list chooses what is shown; Enter takes a line, and a second time gives it "
              "back where several can be chosen. T shows the table in the place of the picture, "
              "and the picture again; a drawing larger than its room is moved by the arrows, and "
              "+, - and 0 make it larger, smaller, and show all of it. P writes the picture, W the "
              "table, as the file's name ends: "
              "PDF, SVG or CSV. O goes to what is still open and was left out.") +
           QStringLiteral("\n\n") + view()->help();
}

void StudyViewModel::refresh() {
    token_.cancel();
    token_ = {};
    if (study_.title.isEmpty()) {
        say(pageTitle_(), tr("The station's notes are being read …"));
        showChoices();
        offer();
    }
    StudyGround now{
        {}, session_.catalogue(), session_.settings().units, session_.today(), session_.author()};
    session_.read(
        this,
        office::Lane::Background,
        token_,
        [ground = reading_.ground,
         now = std::move(now),
         view = view(),
         chosen = chosen_[view()->key()],
         token = token_](store::Database& database) -> Result<Made> {
            auto read = groundFrom(database, ground, now, token);
            if (!read) {
                return read.error();
            }
            Made made{*read, {}, chosen, {}};
            made.groups = view->choices(*made.ground, made.chosen);
            made.study = view->make(*made.ground, made.chosen);
            return made;
        },
        [this](Made made) { show(std::move(made)); });
}

void StudyViewModel::leave() {
    token_.cancel();
}

void StudyViewModel::show(Made made) {
    reading_.ground = std::move(made.ground);
    groups_ = std::move(made.groups);
    chosen_[view()->key()] = std::move(made.chosen);
    study_ = std::move(made.study);
    say(study_.title, study_.words);
    if (study_.plot) {
        plot_.setPlot(*study_.plot);
    }
    if (study_.drawing) {
        drawing_.setDrawing(*study_.drawing);
    }
    results_.setColumns(study_.tableName, study_.columns);
    results_.setRows(study_.rows);
    showChoices();
    showFacts();
    offer();
    emit shown();
}

void StudyViewModel::showChoices() {
    table_.setColumns(tr("What is shown"), {{tr("Show"), 20, false, true}});
    std::vector<GridRow> rows;
    const auto add = [&rows](const QString& group, const ChoiceLine& line, bool isTaken) {
        GridRow row;
        row.key = group + QLatin1Char(' ') + line.key;
        row.sign = isTaken ? FieldSign::Done : -1;
        row.signWord = isTaken ? tr("chosen") : QString();
        row.isStrong = isTaken;
        row.cells << line.text;
        rows.push_back(std::move(row));
    };
    rows.push_back(headingRow(tr("View"), kView));
    for (const auto& each : views_) {
        add(kView, {each->key(), each->title()}, each == view());
    }
    const Chosen& chosen = chosen_[view()->key()];
    for (const ChoiceGroup& group : groups_) {
        rows.push_back(headingRow(group.title, group.key));
        for (const ChoiceLine& line : group.lines) {
            add(group.key, line, isChosen(chosen, group, line.key));
        }
    }
    table_.setRows(std::move(rows));
}

void StudyViewModel::showFacts() {
    facts_.setColumns(tr("What has to be told with it"), {{{}, 12}, {{}, 30, false, true}});
    std::vector<GridRow> rows;
    if (!study_.method.isEmpty()) {
        rows.push_back(factRow(tr("Method"), study_.method));
    }
    if (study_.openLeft > 0) {
        rows.push_back(factRow(tr("Left out"),
                               tr("%n open conflict(s), until somebody settles them: key O.",
                                  nullptr,
                                  static_cast<int>(study_.openLeft))));
    }
    if (study_.missedLeft > 0) {
        rows.push_back(factRow(tr("Left out"),
                               tr("%n place(s) where nothing could be observed, or nobody looked.",
                                  nullptr,
                                  static_cast<int>(study_.missedLeft))));
    }
    for (const Remark& remark : study_.remarks) {
        rows.push_back(factRow(tr("Note"), remarkWords(remark)));
    }
    for (const RemarkOfSome& remark : study_.ofSome) {
        rows.push_back(factRow(tr("Note"), remarkWords(remark, study_)));
    }
    for (const QString& caution : study_.cautions) {
        rows.push_back(factRow(tr("Caution"), caution));
    }
    facts_.setRows(std::move(rows));
}

void StudyViewModel::open(int row) {
    table_.setCurrent(row);
    const QString key = table_.currentKey();
    const qsizetype space = key.indexOf(QLatin1Char(' '));
    if (space < 0) {
        return;
    }
    const QString group = key.left(space);
    const QString line = key.mid(space + 1);
    if (group == kView) {
        choose(line, {});
        return;
    }
    const auto found = std::ranges::find(groups_, group, &ChoiceGroup::key);
    if (found == groups_.end()) {
        return;
    }
    QString& now = chosen_[view()->key()][group];
    if (!found->isMany) {
        now = line;
    } else {
        QStringList lines = now.split(QLatin1Char(','), Qt::SkipEmptyParts);
        if (lines.removeAll(line) == 0) {
            lines << line;
        }
        now = lines.join(QLatin1Char(','));
    }
    refresh();
}

void StudyViewModel::choose(const QString& view, const Chosen& chosen) {
    for (std::size_t i = 0; i < views_.size(); ++i) {
        if (views_[i]->key() == view && view_ != i) {
            view_ = i;
            groups_.clear();
        }
    }
    for (const auto& [group, line] : chosen) {
        chosen_[this->view()->key()][group] = line;
    }
    refresh();
}

void StudyViewModel::openResult(int row) {
    if (!results_.holds(row)) {
        return;
    }
    results_.setCurrent(row);
    const QString key = results_.currentKey();
    const StudyGround* ground = reading_.ground.get();
    if (!key.isEmpty() && ground != nullptr && ground->notes.accession(toText(key))) {
        emit session_.asked(QStringLiteral("vine"), key);
    }
}

void StudyViewModel::offer() {
    std::vector<Action> actions{
        {QStringLiteral("table"),
         tr("Table or picture"),
         QStringLiteral("T"),
         hasPicture(),
         hasPicture() && isTableWanted_},
        {QStringLiteral("picture"), tr("Write the picture"), QStringLiteral("P"), hasPicture()},
        {QStringLiteral("write"), tr("Write the table"), QStringLiteral("W"), !study_.rows.empty()},
        {QStringLiteral("open"), tr("What is open"), QStringLiteral("O"), study_.openLeft > 0}};
    if (study_.deed) {
        actions.push_back({QStringLiteral("deed"), study_.deed->text, study_.deed->keyText});
    }
    for (const StudyAction& own : view()->actions()) {
        actions.push_back({own.page, own.text, own.keyText});
    }
    actions_.set(std::move(actions));
}

void StudyViewModel::act(const QString& id) {
    if (id == QStringLiteral("table")) {
        isTableWanted_ = !isTableWanted_;
        offer();
        emit shown();
    } else if (id == QStringLiteral("picture")) {
        askFile(tr("The file for the picture: .pdf, .svg or .csv"),
                fileName(QStringLiteral(".pdf")),
                [this](const QString& path) { return writePicture(path); });
    } else if (id == QStringLiteral("write")) {
        askFile(tr("The file for the table: .pdf or .csv"),
                fileName(QStringLiteral(".csv")),
                [this](const QString& path) { return writeTable(path); });
    } else if (id == QStringLiteral("open")) {
        emit session_.asked(QStringLiteral("conflicts"), {});
    } else if (id == QStringLiteral("deed")) {
        doDeed();
    } else {
        emit session_.asked(id, {}); // one of the view's own
    }
}

void StudyViewModel::doDeed() {
    if (!study_.deed || !isSomebodyThere()) {
        return;
    }
    session_.perform(this,
                     *study_.deed->act,
                     [this, done = study_.deed->done](Result<std::vector<journal::Place>> written) {
                         if (!written) {
                             session_.fail(written.error());
                         } else {
                             emit session_.told(done);
                         }
                     });
}

QString StudyViewModel::fileName(const QString& end) const {
    static const QRegularExpression others(QStringLiteral("[^\\p{L}\\p{N}]+"));
    QString name = study_.title.toLower();
    name.replace(others, QStringLiteral("-"));
    return name + end;
}

QString StudyViewModel::writePicture(const QString& path) const {
    if (study_.drawing) {
        report::Drawing drawing = *study_.drawing;
        for (const QString& caution : study_.cautions) {
            drawing.notes.push_back(toText(caution));
        }
        const Status written = writeDrawingFile(path, drawing, session_.settings().isA4);
        return written ? QString() : quick::errorWords(written.error());
    }
    if (!study_.plot) {
        return tr("There is no picture.");
    }
    // What stands beside it on the screen goes with it onto the paper.
    report::Plot plot = *study_.plot;
    for (const QString& caution : study_.cautions) {
        plot.notes.cautions.push_back(toText(caution));
    }
    const Status written = writePlotFile(path, plot, session_.settings().isA4);
    return written ? QString() : quick::errorWords(written.error());
}

QString StudyViewModel::writeTable(const QString& path) const {
    paper::TablePage page =
        tablePage(session_, study_.title, study_.words, study_.columns, study_.rows);
    for (int i = 0; i < facts_.count(); ++i) {
        page.notes << tr("%1: %2").arg(facts_.textAt(i, 0), facts_.textAt(i, 1));
    }
    return writeTableFile(path, page, paperSize(session_));
}

} // namespace bullace::desk
