#include "desk/selection_view_model.hpp"

#include "desk/desk_words.hpp"
#include "desk/photo_reading.hpp"
#include "desk/selection_words.hpp"
#include "desk/table_files.hpp"
#include "paper/pdf.hpp"

#include "core/report/csv.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::desk {

using quick::fromText;
using quick::toText;

namespace {

constexpr std::size_t kMostPhotos = 4;

} // namespace

SelectionViewModel::SelectionViewModel(DeskSession& session, QObject* parent)
    : DeskPage(session, parent) {
    wish_.counts = "yield 1, soluble-solids 1";
    connect(&table_, &GridModel::currentChanged, this, [this] {
        if (!isOneShown_ && ground_) {
            about_ = toText(table_.currentKey());
            showFacts();
            offer();
        }
    });
}

QString SelectionViewModel::help() const {
    return tr("Candidates by what counts. W says which descriptors count, and how much: a name "
              "with a number, below 0 where less is better. Predictions come from all seasons and "
              "places, by a mixed model through the pedigree. How likely it is that a candidate "
              "truly is among the best is told beside its rank. Enter shows one at a time: 1 pulls "
              "it, 2 looks again, 3 takes it on. A decision asks for its reason and is written at "
              "every vine of the selection, as one act that Ctrl+Z takes back.");
}

void SelectionViewModel::refresh() {
    token_.cancel();
    token_ = {};
    session_.read(
        this,
        office::Lane::Background,
        token_,
        [catalogue = session_.catalogue(), wish = wish_, today = session_.today(), token = token_](
            store::Database& database) {
            return readMeeting(database, *catalogue, wish, today, token);
        },
        [this](MeetingGround ground) {
            ground_ = std::make_shared<const MeetingGround>(std::move(ground));
            show();
        });
    if (!ground_) {
        say(tr("Selection meeting"), tr("The station's notes are being read …"));
    }
    offer();
}

void SelectionViewModel::leave() {
    token_.cancel();
}

const season::Candidate* SelectionViewModel::current() const {
    if (!ground_) {
        return nullptr;
    }
    const auto& candidates = ground_->list.candidates;
    const auto found = std::ranges::find_if(candidates, [this](const season::Candidate& each) {
        return ground_->notes.accessions[each.accession].id == about_;
    });
    return found == candidates.end() ? nullptr : &*found;
}

void SelectionViewModel::show() {
    if (!ground_) {
        refresh();
        return;
    }
    if (current() == nullptr) {
        isOneShown_ = false;
    }
    if (isOneShown_) {
        showOne();
    } else {
        showList();
    }
    showFacts();
    showPhotos();
    offer();
}

void SelectionViewModel::showList() {
    const SelectionWords words(*ground_, *session_.catalogue());
    const std::string about = about_;
    table_.setColumns(tr("Candidates"), words.listColumns());
    table_.setRows(words.list());
    const int row = table_.rowOf(fromText(about));
    table_.setCurrent(row >= 0 ? row : 0);
    about_ = toText(table_.currentKey());
    const auto count = static_cast<int>(ground_->list.candidates.size());
    say(tr("Selection meeting"),
        count == 0
            ? tr("The station has no accession of this kind.")
            : tr("%n candidate(s); what counts: %1.", nullptr, count).arg(fromText(wish_.counts)));
}

void SelectionViewModel::showOne() {
    const season::Candidate& candidate = *current();
    const SelectionWords words(*ground_, *session_.catalogue());
    table_.setColumns(words.name(candidate), words.evidenceColumns());
    table_.setRows(words.evidence(candidate));
    say(words.name(candidate), words.words(candidate));
}

void SelectionViewModel::showFacts() {
    facts_.setColumns(tr("What is known of it"), {{{}, 13}, {{}, 22, false, true}});
    std::vector<GridRow> rows;
    if (const season::Candidate* candidate = current()) {
        for (const auto& [label, text] :
             SelectionWords(*ground_, *session_.catalogue()).facts(*candidate)) {
            GridRow row;
            row.cells << label << text;
            rows.push_back(std::move(row));
        }
    }
    facts_.setRows(std::move(rows));
}

// The last photos of its vines, on its own page.
void SelectionViewModel::showPhotos() {
    std::vector<std::string> digests;
    const season::Candidate* candidate = isOneShown_ ? current() : nullptr;
    if (candidate != nullptr) {
        const auto& photos = ground_->notes.notesOf("photo").words;
        for (auto note = photos.rbegin(); note != photos.rend(); ++note) {
            if (ground_->notes.vines[note->vine].accession == candidate->accession &&
                digests.size() < kMostPhotos) {
                digests.push_back(ground_->notes.words[note->word]);
            }
        }
    }
    if (digests == shownPhotos_) {
        return;
    }
    shownPhotos_ = digests;
    photos_.setPictures({});
    if (digests.empty()) {
        return;
    }
    session_.read(
        this,
        office::Lane::Page,
        {},
        [digests](store::Database& database) { return readPhotos(database, digests); },
        [this, digests](std::vector<QImage> pictures) {
            if (digests == shownPhotos_) {
                photos_.setPictures(std::move(pictures));
            }
        });
}

void SelectionViewModel::offer() {
    const season::Candidate* candidate = current();
    const bool mayDecide = candidate != nullptr && !session_.isReadOnly() &&
                           !ground_->standing[candidate->accession].empty();
    std::vector<Action> actions{
        {QStringLiteral("pull"), tr("Pull it"), QStringLiteral("1"), mayDecide},
        {QStringLiteral("look-again"), tr("Look again"), QStringLiteral("2"), mayDecide},
        {QStringLiteral("take-on"), tr("Take it on"), QStringLiteral("3"), mayDecide}};
    if (isOneShown_) {
        actions.push_back({QStringLiteral("next"), tr("The next one"), QStringLiteral("N")});
        actions.push_back({QStringLiteral("before"), tr("The one before"), QStringLiteral("B")});
        actions.push_back({QStringLiteral("vine"),
                           tr("Everything on it"),
                           QStringLiteral("V"),
                           candidate != nullptr});
    } else {
        actions.push_back({QStringLiteral("wishes"), tr("What counts"), QStringLiteral("W")});
        actions.push_back(
            {QStringLiteral("best"), tr("How many are the best"), QStringLiteral("K")});
        actions.push_back({QStringLiteral("group"), tr("Whom to list"), QStringLiteral("G")});
        actions.push_back({QStringLiteral("write"),
                           tr("List as a file"),
                           QStringLiteral("F"),
                           ground_ != nullptr});
    }
    actions.push_back({QStringLiteral("print"),
                       tr("Print a page for each"),
                       QStringLiteral("P"),
                       ground_ != nullptr});
    actions_.set(std::move(actions));
}

void SelectionViewModel::open(int row) {
    if (isOneShown_ || !table_.holds(row)) {
        return;
    }
    about_ = toText(table_.at(row).key);
    isOneShown_ = current() != nullptr;
    show();
}

bool SelectionViewModel::back() {
    if (!isOneShown_) {
        return false;
    }
    isOneShown_ = false;
    show();
    return true;
}

void SelectionViewModel::step(int by) {
    const season::Candidate* candidate = current();
    if (candidate == nullptr) {
        return;
    }
    const auto& candidates = ground_->list.candidates;
    const auto last = static_cast<std::ptrdiff_t>(candidates.size()) - 1;
    const std::ptrdiff_t next =
        std::clamp<std::ptrdiff_t>(candidate - candidates.data() + by, 0, last);
    about_ = ground_->notes.accessions[candidates[static_cast<std::size_t>(next)].accession].id;
    show();
}

void SelectionViewModel::act(const QString& id) {
    if (id == QStringLiteral("next") || id == QStringLiteral("before")) {
        step(id == QStringLiteral("next") ? 1 : -1);
    } else if (id == QStringLiteral("wishes")) {
        askWishes();
    } else if (id == QStringLiteral("best")) {
        askBest();
    } else if (id == QStringLiteral("group")) {
        wish_.group = wish_.group == CandidateGroup::Selections  ? CandidateGroup::Seedlings
                      : wish_.group == CandidateGroup::Seedlings ? CandidateGroup::Everything
                                                                 : CandidateGroup::Selections;
        refresh();
    } else if (id == QStringLiteral("vine")) {
        emit session_.asked(QStringLiteral("vine"), fromText(about_));
    } else if (id == QStringLiteral("write")) {
        askFile(tr("The file for the list: .pdf or .csv"),
                QStringLiteral("selection-meeting.csv"),
                [this](const QString& path) { return writeList(path); });
    } else if (id == QStringLiteral("print")) {
        askFile(tr("The file for the pages: .pdf"),
                QStringLiteral("selection-pages.pdf"),
                [this](const QString& path) { return writePages(path); });
    } else if (isSomebodyThere()) {
        decide(toText(id));
    }
}

void SelectionViewModel::decide(const std::string& word) {
    const season::Candidate* candidate = current();
    if (candidate == nullptr) {
        return;
    }
    const QString name = SelectionWords(*ground_, *session_.catalogue()).name(*candidate);
    askWhy([this, word, name, positions = ground_->standing[candidate->accession]](
               const std::string& why) {
        session_.write(
            this,
            [positions,
             word,
             why,
             today = session_.today(),
             author = session_.author(),
             &clock = session_.clock()](store::Database& database) {
                return office::perform(
                    database,
                    office::verdictAct(database, positions, today, word, author, why),
                    clock);
            },
            [this, word, name](Result<std::vector<journal::Place>> written) {
                if (!written) {
                    session_.fail(written.error());
                } else {
                    emit session_.told(tr("%1: %2. Ctrl+Z takes it back.")
                                           .arg(name, SelectionWords::verdictWords(word)));
                }
            },
            DeskSession::Touches::Observations);
        return QString();
    });
}

void SelectionViewModel::askWishes() {
    ask(tr("What counts, and how much: yield 2, soluble-solids 1, rot -1"),
        fromText(wish_.counts),
        [this](const QString& typed) {
            const auto wishes = season::readWishes(toText(typed));
            if (!wishes) {
                return quick::errorWords(wishes.error());
            }
            wish_.counts = toText(typed);
            refresh();
            return QString();
        });
}

void SelectionViewModel::askBest() {
    ask(tr("Among how many best it has to be"),
        QString::number(wish_.best),
        [this](const QString& typed) {
            const int count = typed.toInt();
            if (count < 1) {
                return tr("Type a whole number from 1.");
            }
            wish_.best = static_cast<std::size_t>(count);
            refresh();
            return QString();
        });
}

paper::TablePage SelectionViewModel::pageOf(const season::Candidate& candidate) const {
    const SelectionWords words(*ground_, *session_.catalogue());
    paper::TablePage page = tablePage(session_,
                                      words.name(candidate),
                                      words.words(candidate),
                                      words.evidenceColumns(),
                                      words.evidence(candidate));
    for (const auto& [label, text] : words.facts(candidate)) {
        page.notes << tr("%1: %2", "a name and its words").arg(label, text);
    }
    page.notes << words.notes();
    return page;
}

QString SelectionViewModel::writePages(const QString& path) const {
    if (!ground_ || ground_->list.candidates.empty()) {
        return tr("There is no candidate to print.");
    }
    std::vector<paper::Page> pages;
    const season::Candidate* one = isOneShown_ ? current() : nullptr;
    for (const season::Candidate& candidate : ground_->list.candidates) {
        if (one == nullptr || one == &candidate) {
            std::vector<paper::Page> own =
                paper::tablePages(pageOf(candidate), paperSize(session_));
            std::ranges::move(own, std::back_inserter(pages));
        }
    }
    const Status written = paper::writePdf(path, pages, tr("Selection meeting"));
    return written ? QString() : quick::errorWords(written.error());
}

QString SelectionViewModel::writeList(const QString& path) const {
    if (!ground_) {
        return tr("There is no list yet.");
    }
    const SelectionWords told(*ground_, *session_.catalogue());
    paper::TablePage page = tablePage(session_, title(), words(), told.listColumns(), told.list());
    page.notes = told.notes();
    return writeTableFile(path, page, paperSize(session_));
}

} // namespace bullace::desk
