#include "desk/collection_view_model.hpp"

#include "desk/card_words.hpp"
#include "desk/desk_words.hpp"

#include "quick/field_sign.hpp"
#include "quick/trade_words.hpp"

namespace bullace::desk {

using office::CardKind;
using office::FieldType;
using quick::FieldSign;
using quick::fromText;
using quick::toText;

namespace {

constexpr CardKind kKinds[] = {CardKind::Accession,
                               CardKind::Block,
                               CardKind::Round,
                               CardKind::Descriptor,
                               CardKind::Person,
                               CardKind::Lot,
                               CardKind::Cross};

} // namespace

CollectionViewModel::CollectionViewModel(DeskSession& session, QObject* parent)
    : DeskPage(session, parent) {
    connect(&table_, &GridModel::currentChanged, this, &CollectionViewModel::offer);
}

QString CollectionViewModel::help() const {
    return tr(
        "A digit chooses what is listed. Enter opens a card; Enter on one of its fields types it, "
        "an empty line takes it back. A run of vines is planted, taken out or renumbered in one "
        "act: what was noted before keeps its position. A sprayed block gets its closed-until: the "
        "product label and worker-protection rules decide the day. Exact wild sites are left out "
        "of "
        "tables unless you ask for them; permits, quarantine and access rules come first.");
}

QString CollectionViewModel::kindWords(CardKind kind) const {
    switch (kind) {
    case CardKind::Accession:
        return tr("Accessions");
    case CardKind::Block:
        return tr("Blocks");
    case CardKind::Person:
        return tr("People");
    case CardKind::Round:
        return tr("Rounds");
    case CardKind::Descriptor:
        return tr("Descriptors");
    case CardKind::Lot:
        return tr("Lots");
    case CardKind::Cross:
        return tr("Crosses");
    }
    return {};
}

void CollectionViewModel::begin(const QString& id) {
    for (const CardKind kind : kKinds) {
        for (const office::CardLine& line : office::linesOf(*session_.catalogue(), kind)) {
            if (fromText(line.id) == id) {
                kind_ = kind;
                readTheCard(kind, line.id);
                return;
            }
        }
    }
}

void CollectionViewModel::refresh() {
    if (card_) {
        readTheCard(card_->kind, card_->id);
    } else {
        showList();
    }
}

void CollectionViewModel::leave() {
    token_.cancel();
    card_.reset();
}

void CollectionViewModel::showList() {
    table_.setColumns(
        kindWords(kind_),
        {{tr("Number or code"), 20}, {tr("Name"), 34, false, true}, {tr("More"), 30}});
    std::vector<GridRow> rows;
    for (const office::CardLine& line : office::linesOf(*session_.catalogue(), kind_)) {
        GridRow row;
        row.key = fromText(line.id);
        row.sign = line.isFromField ? FieldSign::Open : -1;
        row.signWord =
            line.isFromField ? tr("opened on a tablet, without a number of the office") : QString();
        const bool isTrade = kind_ == CardKind::Accession || kind_ == CardKind::Descriptor;
        row.cells << fromText(line.id)
                  << (kind_ == CardKind::Descriptor ? quick::tradeWord(line.name)
                                                    : fromText(line.name))
                  << (kind_ == CardKind::Block
                          ? tr("%n row(s)", nullptr, fromText(line.more).toInt())
                      : isTrade ? quick::tradeWord(line.more)
                                : fromText(line.more));
        rows.push_back(std::move(row));
    }
    const auto count = static_cast<int>(rows.size());
    table_.setRows(std::move(rows));
    facts_.setRows({});
    say(tr("Collection"), tr("%1: %n in all.", nullptr, count).arg(kindWords(kind_)));
    offer();
}

void CollectionViewModel::showCard() {
    table_.setColumns(tr("Fields"),
                      {{tr("Field"), 22}, {tr("Value"), 40, false, true}, {tr("State"), 16}});
    std::vector<GridRow> rows;
    for (const office::CardField& field : card_->fields) {
        GridRow row;
        row.key = fromText(field.field);
        row.sign = field.isOpen ? FieldSign::Open : -1;
        row.signWord =
            field.isOpen ? tr("changed by two: settle it among the conflicts") : QString();
        if (field.isKnown && !field.isOpen) {
            row.editable = {1};
        }
        row.cells << fieldWords(field.field) << fromText(field.text)
                  << (field.isOpen    ? tr("open")
                      : field.isKnown ? QString()
                                      : tr("of a newer version"));
        rows.push_back(std::move(row));
    }
    table_.setRows(std::move(rows));
    say(tr("%1: %2").arg(kindWords(card_->kind), fromText(card_->id)),
        tr("Enter types a field; an empty line takes it back."));
    offer();
}

void CollectionViewModel::readTheCard(CardKind kind, const std::string& id) {
    token_.cancel();
    token_ = {};
    session_.read(
        this,
        office::Lane::Page,
        token_,
        [kind, id](store::Database& database) { return office::readCard(database, kind, id); },
        [this](office::Card card) {
            card_ = std::move(card);
            showCard();
        });
}

void CollectionViewModel::offer() {
    const bool mayWrite = !session_.isReadOnly();
    std::vector<Action> actions;
    if (card_) {
        actions.push_back({QStringLiteral("field"),
                           tr("Type this field"),
                           QStringLiteral("E"),
                           mayWrite && table_.current() >= 0});
        actions.push_back({QStringLiteral("list"), tr("Back to the list"), QStringLiteral("Esc")});
        if (card_->kind == CardKind::Accession) {
            actions.push_back(
                {QStringLiteral("vine"), tr("Everything noted of it"), QStringLiteral("V")});
        }
    } else {
        int number = 1;
        for (const CardKind kind : kKinds) {
            actions.push_back({QStringLiteral("kind ") + QString::number(number - 1),
                               kindWords(kind),
                               QString::number(number),
                               true,
                               kind == kind_});
            ++number;
        }
        actions.push_back({QStringLiteral("new"), tr("New"), QStringLiteral("N"), mayWrite});
        actions.push_back(
            {QStringLiteral("plant"), tr("Plant a run of vines"), QStringLiteral("P"), mayWrite});
        actions.push_back(
            {QStringLiteral("remove"), tr("Take vines out"), QStringLiteral("T"), mayWrite});
        actions.push_back(
            {QStringLiteral("renumber"), tr("Renumber a run"), QStringLiteral("R"), mayWrite});
        actions.push_back(
            {QStringLiteral("import"), tr("Take a table in"), QStringLiteral("I"), mayWrite});
        actions.push_back({QStringLiteral("export"), tr("Write tables"), QStringLiteral("W")});
        actions.push_back(
            {QStringLiteral("print"), tr("Labels and row sheets"), QStringLiteral("L")});
        actions.push_back(
            {QStringLiteral("observations"), tr("All observations"), QStringLiteral("O")});
    }
    actions_.set(std::move(actions));
}

QString CollectionViewModel::takeField(int row, const QString& text) {
    const office::CardField& field = card_->fields[static_cast<std::size_t>(row)];
    const Result<Bytes> value = office::fieldValue(field.form, toText(text));
    if (!value) {
        return quick::errorWords(value.error());
    }
    const Result<office::Act> act = office::setField(
        card_->kind, card_->id, field.field, *value, field.heads, session_.author(), {});
    if (!act) {
        return quick::errorWords(act.error());
    }
    session_.perform(this, *act, [this](Result<std::vector<journal::Place>> written) {
        if (!written) {
            session_.fail(written.error());
        }
        refresh();
    });
    return {};
}

void CollectionViewModel::askField(int row) {
    if (!card_ || row < 0 || row >= static_cast<int>(card_->fields.size()) || !isSomebodyThere()) {
        return;
    }
    const office::CardField& field = card_->fields[static_cast<std::size_t>(row)];
    if (field.isOpen || !field.isKnown) {
        emit session_.told(field.isOpen
                               ? tr("Two changed this apart. Settle it among the conflicts.")
                               : tr("This field is of a newer version."));
        return;
    }
    QStringList words;
    for (const std::string_view word : field.form.words) {
        words << fromText(word);
    }
    ask(words.isEmpty()
            ? fieldWords(field.field)
            : tr("%1: %2").arg(fieldWords(field.field), words.join(QStringLiteral(", "))),
        fromText(field.text),
        [this, row](const QString& text) { return takeField(row, text); });
}

void CollectionViewModel::type(int row, int column, const QString& text) {
    if (card_ && column == 1 && row >= 0 && row < static_cast<int>(card_->fields.size()) &&
        isSomebodyThere()) {
        const QString refusal = takeField(row, text);
        if (!refusal.isEmpty()) {
            emit session_.told(refusal);
            showCard();
        }
    }
}

void CollectionViewModel::open(int row) {
    table_.setCurrent(row);
    if (card_) {
        askField(row);
    } else if (!table_.currentKey().isEmpty()) {
        readTheCard(kind_, toText(table_.currentKey()));
    }
}

bool CollectionViewModel::back() {
    if (!card_) {
        return false;
    }
    const QString id = fromText(card_->id);
    card_.reset();
    showList();
    if (const int row = table_.rowOf(id); row >= 0) {
        table_.setCurrent(row);
    }
    return true;
}

void CollectionViewModel::act(const QString& id) {
    if (id.startsWith(QStringLiteral("kind "))) {
        kind_ = kKinds[id.mid(5).toInt()];
        showList();
    } else if (id == QStringLiteral("field")) {
        askField(table_.current());
    } else if (id == QStringLiteral("list")) {
        back();
    } else if (id == QStringLiteral("vine")) {
        emit session_.asked(QStringLiteral("vine"),
                            QStringLiteral("accession:") + fromText(card_->id));
    } else if (id == QStringLiteral("new")) {
        askNew();
    } else if (id == QStringLiteral("plant")) {
        askPlanting();
    } else if (id == QStringLiteral("remove")) {
        askRemoval();
    } else if (id == QStringLiteral("renumber")) {
        askRenumbering();
    } else if (id == QStringLiteral("import")) {
        emit session_.asked(QStringLiteral("import"), {});
    } else if (id == QStringLiteral("print")) {
        const bool isPlace = kind_ == CardKind::Block || kind_ == CardKind::Accession ||
                             kind_ == CardKind::Lot || kind_ == CardKind::Round;
        emit session_.asked(QStringLiteral("print"), isPlace ? table_.currentKey() : QString());
    } else if (id == QStringLiteral("observations")) {
        emit session_.asked(QStringLiteral("observations"), {});
    } else if (id == QStringLiteral("export")) {
        askExport();
    }
}

} // namespace bullace::desk
