#include "desk/arrivals_view_model.hpp"

#include "desk/desk_words.hpp"

#include "quick/field_sign.hpp"
#include "sync/protocol/pairing.hpp"

#include <cmath>

namespace bullace::desk {

using quick::FieldSign;
using quick::fromText;
using quick::toText;

namespace {

constexpr int kPairingMs = 5 * 60 * 1000;
constexpr std::int64_t kClockWorthSayingMs = 60'000;

GridRow
line(const QString& key, const QStringList& cells, int sign = -1, const QString& word = {}) {
    GridRow row;
    row.cells = cells;
    row.sign = sign;
    row.signWord = word;
    row.key = key;
    return row;
}

} // namespace

ArrivalsViewModel::ArrivalsViewModel(DeskSession& session, QObject* parent)
    : DeskPage(session, parent) {
    pairingTimer_.setSingleShot(true);
    pairingTimer_.setInterval(kPairingMs);
    connect(&pairingTimer_, &QTimer::timeout, this, &ArrivalsViewModel::endPairing);
    connect(&table_, &GridModel::currentChanged, this, &ArrivalsViewModel::offer);
    connect(&session_, &DeskSession::deskChanged, this, [this] {
        overview_.reset();
        isListening_ = false;
        endPairing();
    });
}

QString ArrivalsViewModel::help() const {
    return tr(
        "This page says what came from the tablets and what waits for a person. Press S to let "
        "tablets sync, P to pair a new tablet: it scans the picture or types the code. Enter on "
        "a line of what waits opens its page. A lost tablet is revoked with X: it is turned away "
        "from then on, and what it sent before counts.");
}

void ArrivalsViewModel::refresh() {
    token_.cancel();
    token_ = {};
    session_.read(
        this,
        office::Lane::Background,
        token_,
        [catalogue = session_.catalogue(), today = session_.today(), token = token_](
            store::Database& database) {
            return office::readOverview(database, *catalogue, today, token);
        },
        [this](office::Overview overview) { take(std::move(overview)); });
    offer();
}

void ArrivalsViewModel::leave() {
    token_.cancel();
}

void ArrivalsViewModel::take(office::Overview overview) {
    overview_ = std::move(overview);
    showTable();
}

void ArrivalsViewModel::addWaiting(std::vector<GridRow>& rows) const {
    const store::Counts& counts = overview_->counts;
    rows.push_back(headingRow(tr("Waits for a person"), tr("Waits for a person")));
    const auto add =
        [&rows](const QString& key, const QString& text, const QString& number, bool any) {
            rows.push_back(line(key,
                                {text, number},
                                any ? FieldSign::Open : FieldSign::Done,
                                any ? tr("waits") : tr("nothing waits")));
        };
    add(QStringLiteral("page conflicts"),
        tr("Conflicts"),
        QString::number(counts.open),
        counts.open > 0);
    add(QStringLiteral("page refused"),
        tr("Entries that do not count"),
        QString::number(counts.uncounted),
        counts.uncounted > 0);
    if (counts.waiting > 0) {
        add(QStringLiteral("waiting"),
            tr("Imported lines that wait for what comes before them"),
            QString::number(counts.waiting),
            true);
    }
    for (const store::ApartRow& row : overview_->apart) {
        const bool isResent = row.reason == "resent";
        rows.push_back(
            line(QStringLiteral("apart %1").arg(row.id),
                 {isResent ? tr("Office entries that came back after a restore")
                           : tr("Entries that do not follow from what is held"),
                  tr("%1 to %2 of %3").arg(row.first).arg(row.last).arg(fromText(row.origin)),
                  fromText(row.device)},
                 FieldSign::Waiting,
                 tr("waits")));
    }
}

void ArrivalsViewModel::addDevices(std::vector<GridRow>& rows) const {
    rows.push_back(headingRow(tr("Devices"), tr("Devices")));
    for (const store::DeviceRow& device : overview_->devices) {
        const QString id = fromText(journal::deviceText(device.letter, device.device));
        const std::int64_t off = device.clockAheadMs.value_or(0);
        const QString clock = std::abs(off) < kClockWorthSayingMs ? QString()
                              : off > 0 ? tr("its clock is %1 ahead").arg(ageWords(off))
                                        : tr("its clock is %1 behind").arg(ageWords(-off));
        const QString last =
            device.lastSyncMs
                ? tr("last whole sync %1").arg(whenWords(*device.lastSyncMs, session_.clock()))
                : tr("never synced");
        rows.push_back(
            line(QStringLiteral("device ") + id,
                 {fromText(device.name),
                  device.revokedAtMs
                      ? tr("revoked %1").arg(whenWords(*device.revokedAtMs, session_.clock()))
                      : last,
                  clock,
                  id},
                 device.revokedAtMs ? FieldSign::Withdrawn
                 : clock.isEmpty()  ? FieldSign::Done
                                    : FieldSign::Marked,
                 device.revokedAtMs ? tr("revoked")
                 : clock.isEmpty()  ? tr("paired")
                                    : tr("marked")));
    }
    if (overview_->devices.empty()) {
        rows.push_back(line(QStringLiteral("none"), {tr("No device is paired yet")}));
    }
}

void ArrivalsViewModel::addRounds(std::vector<GridRow>& rows) const {
    rows.push_back(headingRow(tr("Rounds that are open"), tr("Rounds that are open")));
    for (const office::RoundLine& round : overview_->rounds) {
        const bool isDone = round.stops > 0 && round.done >= round.stops;
        rows.push_back(line(QStringLiteral("round ") + fromText(round.id),
                            {fromText(round.title.empty() ? round.id : round.title),
                             tr("%1 of %2 vines").arg(round.done).arg(round.stops),
                             round.isLate && !isDone ? tr("late") : QString(),
                             fromText(round.id)},
                            isDone         ? FieldSign::Done
                            : round.isLate ? FieldSign::Marked
                                           : FieldSign::Open,
                            isDone         ? tr("done")
                            : round.isLate ? tr("late")
                                           : tr("open")));
    }
}

void ArrivalsViewModel::addArrivals(std::vector<GridRow>& rows) const {
    rows.push_back(headingRow(tr("Arrivals"), tr("Arrivals")));
    int number = 0;
    for (const server::Arrival& arrival : overview_->arrivals) {
        const QString came = tr("%n entry(s) came", nullptr, static_cast<int>(arrival.newHere));
        const QString photos = arrival.photos == 0
                                   ? QString()
                                   : tr("%n photo(s)", nullptr, static_cast<int>(arrival.photos));
        rows.push_back(line(QStringLiteral("arrival %1").arg(number++),
                            {fromText(arrival.name),
                             whenWords(arrival.atMs, session_.clock()),
                             photos.isEmpty() ? came : came + QStringLiteral(", ") + photos,
                             fromText(arrival.trouble)},
                            arrival.isComplete ? FieldSign::Done : FieldSign::Marked,
                            arrival.isComplete ? tr("whole") : tr("broke off")));
    }
    if (overview_->arrivals.empty()) {
        rows.push_back(line(QStringLiteral("no arrival"), {tr("Nothing came yet")}));
    }
}

void ArrivalsViewModel::showTable() {
    if (!overview_) {
        return;
    }
    table_.setColumns(
        tr("What came and what waits"),
        {{tr("What"), 34, false, true}, {tr("State"), 28}, {tr("More"), 26}, {tr("Which"), 24}});
    std::vector<GridRow> rows;
    addWaiting(rows);
    addDevices(rows);
    addRounds(rows);
    addArrivals(rows);
    table_.setRows(std::move(rows));
    offer();
}

void ArrivalsViewModel::offer() {
    const bool isStation = session_.desk() != nullptr && session_.desk()->isStation();
    const bool isOfficeDevice = !isStation && !session_.isReadOnly();
    const QString key = table_.currentKey();
    const bool isPairing = !pairingCode_.isEmpty();
    if (isOfficeDevice) {
        actions_.set({{QStringLiteral("sync"),
                       tr("Sync with the station"),
                       QStringLiteral("S"),
                       !isSyncing_}});
        say(tr("Arrivals"),
            isSyncing_ ? tr("Syncing with the station …")
                       : tr("This desk syncs with the station %1.")
                             .arg(fromText(session_.desk()->about().station)));
        return;
    }
    say(tr("Arrivals"),
        !isStation     ? tr("This desk is not the station's server.")
        : isListening_ ? tr("Tablets may sync, on port %1.").arg(port_)
                       : tr("Tablets are not let in now."));
    actions_.set({{QStringLiteral("listen"),
                   isListening_ ? tr("Let no tablet sync") : tr("Let tablets sync"),
                   QStringLiteral("S"),
                   isStation,
                   isListening_},
                  {QStringLiteral("pair"),
                   tr("Pair a tablet"),
                   QStringLiteral("P"),
                   isStation && isListening_ && !isPairing},
                  {QStringLiteral("pairOffice"),
                   tr("Pair an office device"),
                   QStringLiteral("O"),
                   isStation && isListening_ && !isPairing},
                  {QStringLiteral("endPairing"), tr("End pairing"), QStringLiteral("E"), isPairing},
                  {QStringLiteral("revoke"),
                   tr("Revoke this device"),
                   QStringLiteral("X"),
                   isStation && key.startsWith(QStringLiteral("device "))},
                  {QStringLiteral("takeIn"),
                   tr("Take these in"),
                   QStringLiteral("T"),
                   isStation && key.startsWith(QStringLiteral("apart "))}});
}

void ArrivalsViewModel::open(int row) {
    table_.setCurrent(row);
    const QString key = table_.currentKey();
    if (key.startsWith(QStringLiteral("page "))) {
        emit session_.asked(key.mid(5), {});
    }
}

void ArrivalsViewModel::act(const QString& id) {
    if (id == QStringLiteral("sync")) {
        syncWithStation();
    } else if (id == QStringLiteral("listen")) {
        setListening(!isListening_);
    } else if (id == QStringLiteral("pair")) {
        pair('t');
    } else if (id == QStringLiteral("pairOffice")) {
        pair('s');
    } else if (id == QStringLiteral("endPairing")) {
        endPairing();
    } else if (id == QStringLiteral("revoke")) {
        revoke();
    } else if (id == QStringLiteral("takeIn")) {
        takeIn();
    }
}

bool ArrivalsViewModel::back() {
    if (pairingCode_.isEmpty()) {
        return false;
    }
    endPairing();
    return true;
}

} // namespace bullace::desk
