// The first page: which devices came, when and with what; what waits for a person; how the rounds
// go; letting devices sync, pairing and revoking.
#pragma once

#include "desk/desk_page.hpp"
#include "office/overview.hpp"

#include <QString>
#include <QTimer>
#include <QtQml/qqmlregistration.h>

#include <optional>

namespace bullace::desk {

class ArrivalsViewModel : public bullace::desk::DeskPage {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the desk")

    Q_PROPERTY(QString pairingCode READ pairingCode NOTIFY pairingChanged)
    Q_PROPERTY(QString pairingPicture READ pairingPicture NOTIFY pairingChanged)
    Q_PROPERTY(QString pairingWords READ pairingWords NOTIFY pairingChanged)
    Q_PROPERTY(bool isListening READ isListening NOTIFY pairingChanged)

public:
    explicit ArrivalsViewModel(DeskSession& session, QObject* parent = nullptr);

    [[nodiscard]] QString help() const override;
    // While pairing is open: 16 letters and digits, the text of the QR code, where the station is.
    [[nodiscard]] QString pairingCode() const { return pairingCode_; }
    [[nodiscard]] QString pairingPicture() const { return pairingPicture_; }
    [[nodiscard]] QString pairingWords() const { return pairingWords_; }
    [[nodiscard]] bool isListening() const { return isListening_; }

    void refresh() override;
    void leave() override;
    void open(int row) override;

signals:
    void pairingChanged();

protected:
    void act(const QString& id) override;
    bool back() override;

private:
    void take(office::Overview overview);
    void showTable();
    void addWaiting(std::vector<GridRow>& rows) const;
    void addDevices(std::vector<GridRow>& rows) const;
    void addRounds(std::vector<GridRow>& rows) const;
    void addArrivals(std::vector<GridRow>& rows) const;
    void offer();
    void setListening(bool isListening);
    void pair(char letter);
    void endPairing();
    void revoke();
    void takeIn();
    void syncWithStation();

    std::optional<office::Overview> overview_;
    office::Token token_;
    QTimer pairingTimer_;
    QString pairingCode_;
    QString pairingPicture_;
    QString pairingWords_;
    bool isListening_ = false;
    bool isSyncing_ = false; // with the station of this office device
    std::uint16_t port_ = 0;
};

} // namespace bullace::desk
