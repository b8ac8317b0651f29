// What waits for the office, and how it gets there: over the network, or as a file on a stick. It
// is never in the way of entry: the sync runs on a thread of its own, and each of its steps is a
// short task here.
#pragma once

#include "tablet/sheet_view_model.hpp"

#include "sync/net/client.hpp"
#include "sync/protocol/summary.hpp"

#include <QElapsedTimer>
#include <QThread>

#include <functional>
#include <memory>
#include <optional>

namespace bullace::tablet {

class SyncViewModel : public SheetViewModel {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the app")
    Q_PROPERTY(bool isBusy READ isBusy NOTIFY changed)

public:
    // Names of places where files can be laid, with their folders.
    struct Place {
        QString name;
        QString folder;
    };

    explicit SyncViewModel(Session& session, QObject* parent = nullptr);
    ~SyncViewModel() override;
    SyncViewModel(const SyncViewModel&) = delete;
    SyncViewModel& operator=(const SyncViewModel&) = delete;
    SyncViewModel(SyncViewModel&&) = delete;
    SyncViewModel& operator=(SyncViewModel&&) = delete;

    void open() override;
    void openPairing();
    void choose(int index) override;
    void commit() override;
    void back() override;
    void seen(const QString& code); // of the camera: the office's QR code
    [[nodiscard]] bool isBusy() const { return thread_ != nullptr; }
    // Ends what is under way, and returns when it has ended.
    void stop();
    // The demo's invented notes go nowhere.
    void setDemo(bool isDemo) { isDemo_ = isDemo; }
    // Where files are laid and looked for; tests give folders of their own.
    void setPlaces(std::function<std::vector<Place>()> places) { places_ = std::move(places); }

signals:
    void closed();
    void cameraWanted(bool isOn);

private:
    enum class Step { Overview, Address, Code, Scan, ToFile, FromFile };

    void show(Step step);
    void showOverview();
    void showToFile();
    void showFromFile();
    void startSync();
    void startPairing();
    void run(std::function<void()> work, std::function<void()> whenDone);
    void onProgress(const sync::Summary& summary);
    void onSynced();
    void onPaired();
    [[nodiscard]] QString summaryWords(const sync::Summary& summary) const;
    void writeFile(const QString& folder);
    void readFile(const QString& path);

    Step step_ = Step::Overview;
    std::unique_ptr<QThread> thread_;
    std::unique_ptr<sync::net::Cancel> cancel_;
    std::function<std::vector<Place>()> places_;
    bool isStopping_ = false;
    bool isDemo_ = false;
    QElapsedTimer elapsed_;
    std::int64_t toldAtMs_ = 0; // of the progress last shown
    std::uint64_t ownAtStart_ = 0;
    std::uint64_t sentAtStart_ = 0;
    std::optional<sync::net::SyncOutcome> outcome_;
    std::optional<Result<std::string>> paired_;
    QString address_;
    QString progress_;
    QString last_;                        // what the last sync did
    std::optional<std::int64_t> clockMs_; // the station's clock less ours, at the last sync
};

} // namespace bullace::tablet
