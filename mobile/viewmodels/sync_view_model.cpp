// The sync as a page: what it says and what its keys do.
#include "tablet/sync_view_model.hpp"

#include "tablet/walk_words.hpp"

#include "store/peers.hpp"
#include "sync/server/device.hpp"

#include <QCoreApplication>
#include <QDateTime>
#include <QDir>
#include <QStandardPaths>
#include <QStorageInfo>

namespace bullace::tablet {

namespace {

constexpr std::int64_t kClockWorthSayingMs = 60'000;

// Mounted disks that can be written, and the person's own documents.
std::vector<SyncViewModel::Place> mountedPlaces() {
    std::vector<SyncViewModel::Place> places;
    for (const QStorageInfo& disk : QStorageInfo::mountedVolumes()) {
        const bool isStick = disk.rootPath().startsWith(QStringLiteral("/media/")) ||
                             disk.rootPath().startsWith(QStringLiteral("/run/media/"));
        if (isStick && disk.isReady() && !disk.isReadOnly()) {
            places.push_back({disk.displayName(), disk.rootPath()});
        }
    }
    const QString documents = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
    if (!documents.isEmpty()) {
        places.push_back({QCoreApplication::translate("Words", "Documents"), documents});
    }
    return places;
}

} // namespace

SyncViewModel::SyncViewModel(Session& session, QObject* parent)
    : SheetViewModel(session, parent),
      places_(mountedPlaces) {}

SyncViewModel::~SyncViewModel() {
    stop();
}

void SyncViewModel::stop() {
    if (thread_ == nullptr) {
        return;
    }
    isStopping_ = true;
    cancel_->cancel();
    // The thread may be waiting for a task of its own here.
    while (!thread_->wait(5)) {
        QCoreApplication::sendPostedEvents(this, QEvent::MetaCall);
    }
    thread_.reset();
    isStopping_ = false;
}

void SyncViewModel::run(std::function<void()> work, std::function<void()> whenDone) {
    cancel_ = std::make_unique<sync::net::Cancel>();
    elapsed_.start();
    toldAtMs_ = 0;
    thread_.reset(QThread::create(std::move(work)));
    connect(thread_.get(), &QThread::finished, this, [this, done = std::move(whenDone)] {
        if (thread_ != nullptr && !isStopping_) {
            thread_->wait();
            thread_.reset();
            done();
        }
    });
    thread_->start();
}

void SyncViewModel::open() {
    show(isBusy() ? step_ : Step::Overview);
}

void SyncViewModel::openPairing() {
    show(Step::Address);
}

void SyncViewModel::show(Step step) {
    step_ = step;
    clear();
    backText_ = tr("Back");
    switch (step) {
    case Step::Overview:
        showOverview();
        break;
    case Step::Address:
        title_ = tr("Pair with the office");
        words_ = tr("At the office, pairing is opened for five minutes. Type the address that it "
                    "shows, or scan its code.");
        ask(Letters, tr("Address"), QStringLiteral(".:-"));
        offer({{tr("Scan the code"), {}, {}, false, {}, QStringLiteral("scan")}});
        break;
    case Step::Code:
        title_ = tr("Pair with the office");
        words_ = tr("Type the 16 letters and digits that the office shows.");
        ask(Letters, tr("Code"));
        break;
    case Step::Scan:
        title_ = tr("Hold the office's code before the camera");
        picture_ = CameraView;
        break;
    case Step::ToFile:
        showToFile();
        break;
    case Step::FromFile:
        showFromFile();
        break;
    }
    emit cameraWanted(step == Step::Scan);
    emit changed();
}

void SyncViewModel::showOverview() {
    field::FieldBook& book = *session_.book();
    title_ = tr("Sync");
    if (isDemo_) {
        words_ = tr("The demo station's invented notes stay on this tablet. Leave the demo under "
                    "Tablet to pair with an office.");
        return;
    }
    const auto station = store::station(book.database());
    const bool isPaired = station && station->has_value();
    QStringList lines{
        tr("%n entry(s) wait for the office.", nullptr, static_cast<int>(book.waiting()))};
    if (isPaired) {
        lines << tr("Station: %1.").arg(fromText((*station)->name));
        if ((*station)->lastSyncMs) {
            const QDateTime at = QDateTime::fromMSecsSinceEpoch(*(*station)->lastSyncMs);
            lines << tr("Last whole sync: %1, %2.")
                         .arg(QLocale().toString(at.date(), tr("d MMM yyyy")),
                              at.time().toString(QStringLiteral("HH:mm")));
        }
    } else {
        lines << tr("Not paired with an office yet.");
    }
    if (isBusy()) {
        lines << (progress_.isEmpty() ? tr("Looking for the station …") : progress_);
    } else if (!last_.isEmpty()) {
        lines << last_;
    }
    std::vector<Choice> choices;
    if (isBusy()) {
        choices.push_back(
            {tr("Stop"), tr("goes on next time"), {}, false, {}, QStringLiteral("stop")});
    } else {
        if (isPaired) {
            choices.push_back({tr("Sync now"), {}, {}, false, {}, QStringLiteral("sync")});
        }
        choices.push_back({tr("Pair"), {}, {}, false, {}, QStringLiteral("pair")});
        choices.push_back({tr("To a file"), {}, {}, false, {}, QStringLiteral("to")});
        choices.push_back({tr("From a file"), {}, {}, false, {}, QStringLiteral("from")});
    }
    const std::int64_t off =
        clockMs_.value_or(book.settings().clockCorrectionMs) - book.settings().clockCorrectionMs;
    if (std::abs(off) >= kClockWorthSayingMs) {
        const int minutes = static_cast<int>(std::abs(off) / 60'000);
        lines << (off > 0 ? tr("The station's clock is %n minute(s) ahead of this tablet's.",
                               nullptr,
                               minutes)
                          : tr("The station's clock is %n minute(s) behind this tablet's.",
                               nullptr,
                               minutes));
        choices.push_back(
            {tr("Go by the station's clock"), {}, {}, false, {}, QStringLiteral("clock")});
    }
    words_ = lines.join(QStringLiteral("\n"));
    offer(std::move(choices));
}

void SyncViewModel::showToFile() {
    title_ = tr("Write all entries to a file");
    std::vector<Choice> choices;
    for (const Place& place : places_()) {
        choices.push_back({place.name, place.folder, {}, false, {}, place.folder});
    }
    if (choices.empty()) {
        words_ = tr("There is no disk to write to. Put a stick in.");
    }
    offer(std::move(choices));
}

void SyncViewModel::showFromFile() {
    title_ = tr("Take entries from a file");
    std::vector<Choice> choices;
    for (const Place& place : places_()) {
        const QDir folder(place.folder);
        for (const QFileInfo& file :
             folder.entryInfoList({QStringLiteral("*.jsonl")}, QDir::Files, QDir::Time)) {
            if (choices.size() < 12) {
                choices.push_back(
                    {file.fileName(), place.name, {}, false, {}, file.absoluteFilePath()});
            }
        }
    }
    if (choices.empty()) {
        words_ = tr("No file that ends in .jsonl was found on a stick or in the documents.");
    }
    offer(std::move(choices));
}

void SyncViewModel::choose(int index) {
    if (!choices_.holds(index)) {
        return;
    }
    const QString value = choices_.at(index).value;
    if (step_ == Step::ToFile) {
        writeFile(value);
    } else if (step_ == Step::FromFile) {
        readFile(value);
    } else if (value == QStringLiteral("sync")) {
        startSync();
    } else if (value == QStringLiteral("stop")) {
        cancel_->cancel();
    } else if (value == QStringLiteral("pair")) {
        show(Step::Address);
    } else if (value == QStringLiteral("scan")) {
        show(Step::Scan);
    } else if (value == QStringLiteral("to")) {
        show(Step::ToFile);
    } else if (value == QStringLiteral("from")) {
        show(Step::FromFile);
    } else if (value == QStringLiteral("clock")) {
        field::Settings settings = session_.book()->settings();
        settings.clockCorrectionMs = clockMs_.value_or(settings.clockCorrectionMs);
        session_.accept(session_.book()->change(std::move(settings)));
        show(Step::Overview);
    }
}

void SyncViewModel::commit() {
    const QString text = typed_.trimmed();
    if (text.isEmpty()) {
        return;
    }
    if (step_ == Step::Address) {
        address_ = text;
        show(Step::Code);
    } else if (step_ == Step::Code) {
        startPairing();
    }
}

void SyncViewModel::seen(const QString& code) {
    if (step_ == Step::Scan && !isBusy()) {
        address_.clear();
        typed_ = code;
        startPairing();
    }
}

void SyncViewModel::back() {
    if (step_ == Step::Overview) {
        emit closed();
    } else {
        show(step_ == Step::Address || step_ == Step::ToFile || step_ == Step::FromFile
                 ? Step::Overview
                 : Step::Address);
    }
}

void SyncViewModel::startPairing() {
    server::PairingWish wish;
    wish.at = toText(address_);
    wish.code = toText(typed_.trimmed());
    wish.name = QSysInfo::machineHostName().toStdString();
    wish.runThere = [this](const std::function<void()>& task) {
        QMetaObject::invokeMethod(this, task, Qt::BlockingQueuedConnection);
    };
    store::Database* journal = &session_.book()->database();
    run([this, journal, wish] { paired_ = server::pairDevice(*journal, wish, *cancel_); },
        [this] { onPaired(); });
    last_.clear();
    progress_ = tr("Pairing …");
    show(Step::Overview);
}

void SyncViewModel::onPaired() {
    progress_.clear();
    if (paired_ && *paired_) {
        last_ = tr("Paired with %1.").arg(fromText(**paired_));
        session_.accept(session_.book()->offerOwnBlocks());
    } else if (paired_) {
        last_ = errorWords(paired_->error());
    }
    show(Step::Overview);
    emit session_.walked();
}

void SyncViewModel::writeFile(const QString& folder) {
    field::FieldBook& book = *session_.book();
    const QString name =
        QStringLiteral("%1-%2.jsonl")
            .arg(fromText(book.database().about().own.text()), fromText(writeDate(book.today())));
    const QString path = QDir(folder).filePath(name);
    last_ = session_.accept(book.writeFile(toText(path)))
                ? tr("Everything is in %1. Take the stick out in good order.").arg(path)
                : QString();
    show(Step::Overview);
}

void SyncViewModel::readFile(const QString& path) {
    const auto report = session_.book()->readFile(toText(path));
    if (!report) {
        emit session_.failed(report.error());
        return;
    }
    last_ = tr("%1 entries taken, %2 were there, %3 refused, %4 wait.")
                .arg(report->taken)
                .arg(report->there)
                .arg(report->refusedCount)
                .arg(report->waitingCount);
    emit session_.walked();
    show(Step::Overview);
}

} // namespace bullace::tablet
