// Deciding one conflict after the other, and moving among them while a tablet pushes.
#include "bench/floor.hpp"
#include "bench/measure.hpp"
#include "loop_probe.hpp"
#include "pages.hpp"
#include "station.hpp"
#include "table.hpp"

#include <QEventLoop>
#include <QProcess>
#include <QRegularExpression>

namespace bullace::desk_bench {

using bench::secondsOf;
using desk::DeskApp;

namespace {

constexpr double kMs = 1000;
constexpr int kDecisions = 40;
constexpr int kMoveEveryMs = 150;
constexpr int kDecideEvery = 10; // moves
constexpr int kQuietMs = 10'000;
constexpr double kMostStill = 50; // ms that the screen may stand still

std::string shown(DeskScreen& screen) {
    const auto& file = screen.app().conflicts()->file();
    return file ? file->subject : std::string{};
}

bool isCaseThere(DeskScreen& screen, const std::string& before) {
    const std::string now = shown(screen);
    return !now.empty() && now != before &&
           now == screen.page().table()->currentKey().toStdString();
}

void openConflicts(DeskScreen& screen) {
    desk::DeskSettings settings = screen.app().session().settings();
    settings.author = "ed";
    screen.app().session().change(settings);
    screen.app().go(DeskApp::Conflicts);
    screen.drawn([&] { return isCaseThere(screen, {}); });
    screen.rest();
}

// Somebody who goes down the list and decides now and then.
class Mover {
public:
    explicit Mover(DeskScreen& screen) : screen_(screen) {
        timer_.setInterval(kMoveEveryMs);
        QObject::connect(&timer_, &QTimer::timeout, [this] { move(); });
        timer_.start();
    }

private:
    void move() {
        const int turn = ++moves_ % kDecideEvery;
        screen_.press(turn == 0 ? Qt::Key_1 : turn == 1 ? Qt::Key_K : Qt::Key_Down);
    }
    DeskScreen& screen_;
    QTimer timer_;
    int moves_ = 1;
};

void tellStill(const std::string& what, const LoopProbe& probe) {
    constexpr double kLate = 0.999;
    const auto tell = [&what](const char* more, double ms, double target) {
        print({what + more, {ms}, "ms", target, {}, ""});
    };
    tell(": longest", bench::percentile(probe.gaps(), 1), kMostStill);
    tell(": p99.9", bench::percentile(probe.gaps(), kLate), 0);
    tell(": longest own work", bench::percentile(probe.work(), 1), kMostStill);
}

} // namespace

void measureConflicts(DeskScreen& screen, const std::string& scratch) {
    Figure open{"the list of 5,000 conflicts and the first of them", {}, "ms", 0, {}, ""};
    open.values.push_back(kMs * secondsOf([&] {
                              screen.app().go(DeskApp::Conflicts);
                              screen.drawn([&] { return isCaseThere(screen, {}); });
                          }));
    print(open);
    openConflicts(screen);
    bench::BareCommits bare(scratch);
    Figure next{"a decision by two keys until the next conflict is drawn", {}, "ms", 100, {}, ""};
    Figure list{"… until the list says so, too", {}, "ms", 0, {}, ""};
    next.floorWhat = "one bare commit";
    const LoopProbe probe;
    for (int turn = 0; turn < kDecisions; ++turn) {
        const std::string before = shown(screen);
        const double begun = bench::secondsNow();
        screen.press(Qt::Key_1);
        screen.press(Qt::Key_K);
        screen.drawn([&] { return isCaseThere(screen, before); });
        next.values.push_back(kMs * (bench::secondsNow() - begun));
        screen.rest();
        list.values.push_back(kMs * (bench::secondsNow() - begun));
        next.floor.push_back(kMs * secondsOf([&] { bare.commit("a decision, 160 bytes or so"); }));
    }
    print(next);
    print(list);
    tellStill("still while conflicts are decided", probe);
}

void measurePush(DeskScreen& screen, const std::string& tablet, const std::string& self) {
    screen.app().go(DeskApp::Arrivals);
    screen.rest();
    screen.press(Qt::Key_S);
    screen.rest();
    screen.press(Qt::Key_P);
    screen.rest();
    const auto port =
        QRegularExpression(QStringLiteral("[0-9]{2,5}")).match(screen.page().words()).captured();
    const QString code = screen.app().arrivals()->pairingCode();
    bench::must(!port.isEmpty() && !code.isEmpty(), "the desk lets a tablet in");
    openConflicts(screen);
    const Mover mover(screen);
    QEventLoop loop;
    {
        const LoopProbe probe;
        QTimer::singleShot(kQuietMs, &loop, &QEventLoop::quit);
        loop.exec();
        tellStill("still while somebody decides, no tablet", probe);
    }
    QProcess pushing;
    pushing.setProcessChannelMode(QProcess::ForwardedErrorChannel);
    QObject::connect(&pushing, &QProcess::finished, &loop, &QEventLoop::quit);
    pushing.start(QString::fromStdString(self),
                  {QStringLiteral("--tablet"),
                   QString::fromStdString(tablet),
                   QStringLiteral("127.0.0.1:") + port,
                   code});
    const LoopProbe probe;
    loop.exec();
    bench::must(pushing.exitCode() == 0, "the tablet syncs");
    const double seconds = pushing.readAllStandardOutput().trimmed().toDouble();
    // What the desk reads anew behind it, too.
    QTimer::singleShot(kQuietMs, &loop, &QEventLoop::quit);
    loop.exec();
    tellStill("still while a tablet pushes 200,000 entries", probe);
    print({"that push", {seconds}, "s", 0, {}, ""});
}

} // namespace bullace::desk_bench
