// What is done on the page of arrivals: tablets are let in, paired, revoked; an office device
// syncs.
#include "desk/arrivals_view_model.hpp"
#include "desk/desk_words.hpp"

#include "sync/protocol/pairing.hpp"

namespace bullace::desk {

using quick::fromText;
using quick::toText;

void ArrivalsViewModel::syncWithStation() {
    isSyncing_ = true;
    offer();
    session_.syncWithStation(this, [this](const sync::net::SyncOutcome& outcome) {
        isSyncing_ = false;
        offer();
        if (!outcome.status) {
            session_.fail(outcome.status.error());
            return;
        }
        const auto count = [](std::uint64_t entries) { return static_cast<int>(entries); };
        const QString sent = tr("%n entry(s) sent", nullptr, count(outcome.summary.sentEntries));
        const QString came =
            tr("%n entry(s) received", nullptr, count(outcome.summary.receivedEntries));
        emit session_.told(sent + QStringLiteral(", ") + came + QStringLiteral("."));
    });
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
