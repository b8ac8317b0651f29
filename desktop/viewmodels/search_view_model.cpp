#include "desk/search_view_model.hpp"

#include "desk/desk_words.hpp"

#include "quick/trade_words.hpp"

namespace bullace::desk {

using office::FoundKind;
using quick::fromText;
using quick::toText;

namespace {

constexpr std::size_t kMostFound = 200;

} // namespace

SearchViewModel::SearchViewModel(DeskSession& session, QObject* parent)
    : DeskPage(session, parent) {
    connect(&session_, &DeskSession::changed, this, [this] { isStale_ = true; });
    // The collection is what most searches are for: the index is made when it is there.
    connect(&session_, &DeskSession::catalogueChanged, this, [this] {
        isStale_ = true;
        build();
    });
    connect(&session_, &DeskSession::deskChanged, this, [this] {
        token_.cancel();
        index_.reset();
        isBuilding_ = false;
        isStale_ = true;
    });
}

QString SearchViewModel::help() const {
    return tr(
        "Type a part of a position, an accession's number or name, a label, a person, a cross, "
        "a lot, or words of a note. Several words must all be there. Enter opens the line.");
}

void SearchViewModel::build() {
    if (isBuilding_ || !isStale_ || session_.desk() == nullptr) {
        return;
    }
    isBuilding_ = true;
    isStale_ = false;
    token_ = {};
    session_.read(
        this,
        office::Lane::Background,
        token_,
        [catalogue = session_.catalogue(), today = session_.today(), token = token_](
            store::Database& database) {
            return office::SearchIndex::build(database, *catalogue, today, token);
        },
        [this](office::SearchIndex index) {
            index_ = std::make_shared<office::SearchIndex>(std::move(index));
            isBuilding_ = false;
            if (!query_.isEmpty()) {
                search(query_);
            }
            build(); // where something was written meanwhile
        });
}

void SearchViewModel::search(const QString& query) {
    query_ = query;
    found_ = index_ == nullptr ? std::vector<office::Found>{}
                               : index_->find(toText(query.trimmed()), kMostFound);
    show();
}

void SearchViewModel::refresh() {
    build();
    show();
}

void SearchViewModel::show() {
    const auto kindWords = [](FoundKind kind) {
        switch (kind) {
        case FoundKind::Position:
            return tr("Position");
        case FoundKind::Accession:
            return tr("Accession");
        case FoundKind::Label:
            return tr("Label");
        case FoundKind::Person:
            return tr("Person");
        case FoundKind::Cross:
            return tr("Cross");
        case FoundKind::Lot:
            return tr("Lot");
        case FoundKind::Round:
            return tr("Round");
        case FoundKind::Note:
            return tr("Note");
        }
        return QString();
    };
    table_.setColumns(tr("What was found"),
                      {{tr("Kind"), 11},
                       {tr("Which"), 16},
                       {tr("Name, or words"), 40, false, true},
                       {tr("More"), 26}});
    std::vector<GridRow> rows;
    int number = 0;
    for (const office::Found& found : found_) {
        GridRow row;
        const bool isNote = found.kind == FoundKind::Note;
        row.cells << kindWords(found.kind) << fromText(found.id) << fromText(found.text)
                  << (isNote && readDate(found.detail) ? quick::dateWords(*readDate(found.detail))
                      : found.kind == FoundKind::Accession ? quick::tradeWord(found.detail)
                                                           : fromText(found.detail));
        row.key = QString::number(number++);
        rows.push_back(std::move(row));
    }
    table_.setRows(std::move(rows));
    const auto count = static_cast<int>(found_.size());
    say(tr("Search"),
        index_ == nullptr  ? tr("The station is being read …")
        : query_.isEmpty() ? tr("Type above what is sought.")
        : found_.size() == kMostFound
            ? tr("The first %n that fit; type more of it.", nullptr, count)
            : tr("%n found.", nullptr, count));
    actions_.set({{QStringLiteral("open"), tr("Open it"), QStringLiteral("Return"), count > 0}});
}

void SearchViewModel::open(int row) {
    if (row < 0 || row >= static_cast<int>(found_.size())) {
        return;
    }
    const office::Found& found = found_[static_cast<std::size_t>(row)];
    switch (found.kind) {
    case FoundKind::Position:
    case FoundKind::Label:
    case FoundKind::Note:
        emit session_.asked(QStringLiteral("vine"), fromText(found.id));
        break;
    case FoundKind::Accession:
        emit session_.asked(QStringLiteral("vine"),
                            QStringLiteral("accession:") + fromText(found.id));
        break;
    case FoundKind::Lot:
        emit session_.asked(QStringLiteral("vine"), QStringLiteral("lot:") + fromText(found.id));
        break;
    case FoundKind::Person:
    case FoundKind::Cross:
    case FoundKind::Round:
        emit session_.asked(QStringLiteral("collection"), fromText(found.id));
        break;
    }
}

void SearchViewModel::act(const QString& id) {
    if (id == QStringLiteral("open")) {
        open(table_.current());
    }
}

} // namespace bullace::desk
