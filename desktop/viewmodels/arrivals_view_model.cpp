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
    const QString key = table_.currentKey();
    const bool isPairing = !pairingCode_.isEmpty();
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
    if (id == QStringLiteral("listen")) {
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

void ArrivalsViewModel::setListening(bool isListening) {
    auto outcome = std::make_shared<Status>();
    auto port = std::make_shared<std::uint16_t>(0);
    session_.serve(
        [outcome, port, isListening](server::Station& station) {
            if (isListening) {
                *outcome = station.listen();
            } else {
                station.fallSilent();
            }
            *port = station.port();
        },
        [this, outcome, port] {
            if (!*outcome) {
                session_.fail(outcome->error());
            }
            port_ = *port;
            isListening_ = port_ != 0;
            if (!isListening_) {
                endPairing();
            }
            DeskSettings settings = session_.settings();
            settings.letsSync = isListening_;
            session_.change(std::move(settings));
            offer();
            emit pairingChanged();
        });
}

void ArrivalsViewModel::pair(char letter) {
    auto armed = std::make_shared<std::optional<Result<sync::net::Armed>>>();
    session_.serve(
        [armed, letter](server::Station& station) { armed->emplace(station.arm(letter)); },
        [this, armed] {
            if (!**armed) {
                session_.fail((**armed).error());
                return;
            }
            pairingCode_ = fromText((**armed)->typedCode);
            pairingPicture_ = fromText((**armed)->qrText);
            QStringList addresses;
            if (const auto offer = sync::readQrOffer((**armed)->qrText)) {
                for (const std::string& address : offer->addresses) {
                    addresses << fromText(address);
                }
            }
            pairingWords_ =
                tr("On the tablet: Sync, Pair. Scan the picture, or type the address and "
                   "the code. Open for five minutes.\n%1")
                    .arg(addresses.join(QLatin1Char('\n')));
            pairingTimer_.start();
            offer();
            emit pairingChanged();
        });
}

void ArrivalsViewModel::endPairing() {
    pairingTimer_.stop();
    if (pairingCode_.isEmpty()) {
        return;
    }
    pairingCode_.clear();
    pairingPicture_.clear();
    pairingWords_.clear();
    session_.serve([](server::Station& station) { station.disarm(); }, [] {});
    offer();
    emit pairingChanged();
}

void ArrivalsViewModel::revoke() {
    const std::string device = toText(table_.currentKey().mid(7));
    const QString name =
        table_.holds(table_.current()) ? table_.at(table_.current()).cells.value(0) : QString();
    ask(tr("Revoke %1? It is turned away from then on. Type its first letters and digits to "
           "confirm: %2")
            .arg(name, fromText(device).left(5)),
        {},
        [this, device](const QString& text) {
            if (text.compare(fromText(device).left(5), Qt::CaseInsensitive) != 0) {
                return tr("That is not this device.");
            }
            auto outcome = std::make_shared<Status>();
            session_.serve(
                [outcome, device](server::Station& station) { *outcome = station.revoke(device); },
                [this, outcome] {
                    if (!*outcome) {
                        session_.fail(outcome->error());
                    }
                    refresh();
                });
            return QString();
        });
}

void ArrivalsViewModel::takeIn() {
    const std::int64_t id = table_.currentKey().mid(6).toLongLong();
    session_.write(
        this,
        [id](store::Database& database) { return database.takeInApart(id); },
        [this](Result<std::uint64_t> taken) {
            if (!taken) {
                session_.fail(taken.error());
                return;
            }
            emit session_.told(tr("%n entry(s) taken in.", nullptr, static_cast<int>(*taken)));
        });
}

} // namespace bullace::desk
