// What the tablet's pages cost at a million entries: from the start to the first page and the first
// entry, from the finger's lift to the value on the disk and on the glass, memory, and rest. One
// JSON line a figure, as bullace-bench prints them. The pages run in a process of their own.
#include "bench/floor.hpp"
#include "bench/measure.hpp"
#include "bench/station_past.hpp"
#include "tablet/tablet_window.hpp"

#include "core/journal/json_value.hpp"

#include <QGuiApplication>
#include <QProcess>
#include <QQuickItem>
#include <QTest>
#include <QTimer>

#include <cstring>
#include <fstream>
#include <string>

using namespace bullace;

namespace {

constexpr std::size_t kMillion = 1'000'000;
constexpr int kTaps = 3000;
constexpr int kPart = 500;
constexpr int kRestMs = 3000;
constexpr double kMs = 1000; // in a second

// A morning that does not end.
class BenchClock : public Clock {
public:
    [[nodiscard]] std::int64_t nowMs() const override {
        const auto day = std::chrono::sys_days(bench::pastToday()).time_since_epoch();
        return std::chrono::duration_cast<std::chrono::milliseconds>(day).count() + 13 * 3'600'000;
    }
    [[nodiscard]] std::int64_t minutesFromUtc(std::int64_t /*ms*/) const override { return -300; }
    [[nodiscard]] CivilDate dateAt(std::int64_t /*ms*/) const override {
        return bench::pastToday();
    }
};

// A journal of a million entries, and a walk along three thousand stops that is about to begin.
void layJournal(const std::string& folder, const Clock& clock) {
    auto book = field::FieldBook::open(folder + "/journal.db", "Etc/GMT+5", clock);
    bench::must(book.ok(), book ? "" : book.error().message);
    bench::fillWithPast((*book)->database(), kMillion);
    field::Settings settings = (*book)->settings();
    settings.isSetUp = true;
    bench::must((*book)->change(settings).ok(), "the settings are kept");
    bench::must((*book)->reload().ok(), "the catalogue is read");
    const walk::Round* round = (*book)->catalogue().round(bench::kPastRound);
    bench::must(round != nullptr, "the round is there");
    field::WalkWish wish;
    wish.author = "im";
    wish.firstRow = 0;
    auto plan =
        field::planWalk((*book)->database(), (*book)->catalogue(), *round, wish, (*book)->today());
    bench::must(plan.ok(), "the walk is planned");
    plan->asks.resize(1); // one tap a vine
    plan->stages = {53, 55, 57, 60, 61, 63, 65, 68, 69, 71};
    bench::must((*book)->beginWalk(std::move(*plan)).ok(), "the walk begins");
}

QQuickItem* find(QQuickItem* from, const QString& name) {
    if (!from->isVisible()) {
        return nullptr;
    }
    if (from->objectName() == name) {
        return from;
    }
    const auto children = from->childItems();
    for (QQuickItem* child : children) {
        if (QQuickItem* found = find(child, name)) {
            return found;
        }
    }
    return nullptr;
}

// Presses and lifts a finger; the event's times are those of a tap, not of the clock.
class Finger : public QObject {
public:
    explicit Finger(QQuickWindow& window) : window_(window) {
        qGuiApp->installEventFilter(this);
        device_ = QTest::createTouchDevice();
    }
    void down(QPoint at) {
        nowMs_ += 447;
        QTest::touchEvent(&window_, device_).press(1, at, &window_);
    }
    void up(QPoint at) {
        nowMs_ += 120;
        QTest::touchEvent(&window_, device_).release(1, at, &window_);
    }

protected:
    bool eventFilter(QObject* watched, QEvent* event) override {
        if (event->isPointerEvent()) {
            static_cast<QInputEvent*>(event)->setTimestamp(nowMs_);
        }
        return QObject::eventFilter(watched, event);
    }

private:
    QQuickWindow& window_;
    QPointingDevice* device_ = nullptr;
    quint64 nowMs_ = 1000;
};

long switchesNow() {
    std::ifstream status("/proc/self/status");
    long switches = 0;
    for (std::string word; status >> word;) {
        if (word == "voluntary_ctxt_switches:") {
            status >> switches;
        }
    }
    return switches;
}

// Lets the loop run without a finger; how often it was painted and woken.
void rest(QQuickWindow& window) {
    QCoreApplication::processEvents(); // what the first page still had to do
    window.grabWindow();
    QCoreApplication::processEvents();
    int frames = 0;
    QObject::connect(&window, &QQuickWindow::afterRendering, [&frames] { ++frames; });
    const long before = switchesNow();
    QTimer::singleShot(kRestMs, qGuiApp, &QCoreApplication::quit);
    QGuiApplication::exec();
    const double perSecond = static_cast<double>(switchesNow() - before) / (kRestMs / kMs);
    bench::tell("repaints while nothing is touched", frames, "in 3 s", "0", frames == 0);
    // The timer that ends the rest is one of them.
    bench::tell("wake-ups while nothing is touched", perSecond, "a second", "0", perSecond < 2);
}

void walkOn(tablet::TabletApp& app, QQuickWindow& window) {
    std::vector<double> seconds;
    Finger finger(window);
    double memoryEarly = 0;
    while (seconds.size() < kTaps && app.book()->walk() != nullptr) {
        if (app.page() == tablet::TabletApp::RowEnd) {
            app.sheet()->choose(0);
            continue;
        }
        const auto& here = app.book()->walk()->here();
        const std::int64_t stage = bench::stageOf(here.position, bench::pastToday());
        int key = 0;
        for (int i = 0; i < app.stop()->choices()->count(); ++i) {
            key = app.stop()->choices()->at(i).value.toLongLong() <= stage ? i : key;
        }
        QQuickItem* item = find(window.contentItem(), QStringLiteral("choice%1").arg(key));
        bench::must(item != nullptr, "the key is on the page");
        const QPoint at =
            item->mapToScene(QPointF(item->width() / 2, item->height() / 2)).toPoint();
        finger.down(at);
        seconds.push_back(bench::secondsOf([&] {
            finger.up(at);
            window.grabWindow(); // drawn, as the glass would be
        }));
        QCoreApplication::processEvents(); // what is looked at after the value is shown
        QCoreApplication::sendPostedEvents(nullptr,
                                           QEvent::DeferredDelete); // as a running loop does
        if (seconds.size() == kPart) {
            memoryEarly = bench::memoryMiB(bench::kThisProcess, "VmRSS");
        }
    }
    const std::vector<double> first(seconds.begin(), seconds.begin() + kPart);
    const std::vector<double> last(seconds.end() - kPart, seconds.end());
    const double p99 = bench::percentile(seconds, 0.99) * kMs;
    bench::tell("finger's lift to durable and drawn, p50",
                bench::percentile(seconds, 0.5) * kMs,
                "ms",
                "",
                true);
    bench::tell("finger's lift to durable and drawn, p99", p99, "ms", "below 50", p99 < 50);
    const double ratio = bench::percentile(last, 0.5) / bench::percentile(first, 0.5);
    bench::tell("3,000 stops: the last 500 against the first, p50", ratio, "", "flat", ratio < 1.5);
    const double late = bench::memoryMiB(bench::kThisProcess, "VmRSS");
    bench::tell("3,000 stops: memory after them less after 500",
                late - memoryEarly,
                "MiB",
                "flat, below 8",
                late - memoryEarly < 8);
    const double most = bench::memoryMiB(bench::kThisProcess, "VmHWM");
    bench::tell("memory of the process, the most", most, "MiB", "below 200", most < 200);
}

int runPages(int count, char** words, const std::string& folder) {
    const double begun = bench::secondsNow();
    QGuiApplication program(count, words);
    const BenchClock clock;
    tablet::TabletParts parts;
    parts.folder = QString::fromStdString(folder);
    parts.zone = "Etc/GMT+5";
    parts.clock = &clock;
    tablet::TabletApp app(std::move(parts));
    app.open();
    QQmlEngine engine;
    const tablet::TabletWindow made(engine, app, 4);
    bench::must(made.window() != nullptr, "the pages load");
    QQuickWindow& window = *made.window();
    window.resize(868, 544);
    window.show();
    QCoreApplication::processEvents();
    window.grabWindow();
    const double ready = bench::secondsNow() - begun;
    bench::tell(
        "start to the vine on the glass, 1,000,000 entries", ready, "s", "below 1.5", ready < 1.5);
    rest(window);
    walkOn(app, window);
    return 0;
}

} // namespace

int main(int count, char** words) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    qputenv("QT_QUICK_BACKEND", "software");
    if (count == 3 && std::strcmp(words[1], "--pages") == 0) {
        return runPages(count, words, words[2]);
    }
    const bench::Folder folder;
    const BenchClock clock;
    layJournal(folder.file("."), clock);
    QProcess pages;
    pages.setProcessChannelMode(QProcess::ForwardedChannels);
    pages.start(QString::fromLocal8Bit(words[0]),
                {QStringLiteral("--pages"), QString::fromStdString(folder.file("."))});
    pages.waitForFinished(-1);
    return pages.exitCode();
}
