#include "screen.hpp"

#include "bench/measure.hpp"
#include "bench/station_past.hpp"

#include <QCoreApplication>
#include <QEventLoop>
#include <QQuickItem>
#include <QTest>

#include <chrono>

namespace bullace::desk_bench {

namespace {

constexpr qreal kPxPerMm = 3.78; // 96 dots an inch
constexpr QSize kSize(1366, 768);
constexpr std::int64_t kHourMs = 3'600'000;
constexpr double kLongestWait = 300; // seconds; then the benchmark is wrong

QQuickItem* found(QQuickItem* from, const QString& name) {
    if (!from->isVisible() || from->objectName() == name) {
        return from->isVisible() ? from : nullptr;
    }
    const auto children = from->childItems();
    for (QQuickItem* child : children) {
        if (QQuickItem* there = found(child, name)) {
            return there;
        }
    }
    return nullptr;
}

} // namespace

std::int64_t BenchClock::nowMs() const {
    const auto day = std::chrono::sys_days(bench::pastToday()) + std::chrono::days(days_);
    return std::chrono::duration_cast<std::chrono::milliseconds>(day.time_since_epoch()).count() +
           13 * kHourMs;
}

CivilDate BenchClock::dateAt(std::int64_t ms) const {
    return std::chrono::floor<std::chrono::days>(
        std::chrono::sys_time<std::chrono::milliseconds>(std::chrono::milliseconds(ms)));
}

DeskScreen::DeskScreen(const std::string& path, const Clock& clock) {
    desk::DeskParts parts;
    parts.clock = &clock;
    parts.address = "127.0.0.1";
    parts.port = 0;
    app_ = std::make_unique<desk::DeskApp>(std::move(parts));
    app_->open(path);
    window_ = std::make_unique<desk::DeskWindow>(engine_, *app_, kPxPerMm);
    bench::must(window_->window() != nullptr, "the pages load");
    window().resize(kSize);
    window().show();
    window().requestActivate();
}

DeskScreen::~DeskScreen() {
    window().close();
}

QQuickItem* DeskScreen::item(const QString& name) {
    return found(window().contentItem(), name);
}

void DeskScreen::press(Qt::Key key) {
    QTest::keyClick(&window(), key);
}

void DeskScreen::drawn(const std::function<bool()>& isThere) {
    const double end = bench::secondsNow() + kLongestWait;
    while (!isThere()) {
        QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
        bench::must(bench::secondsNow() < end, "what was asked for comes onto the screen");
    }
    window().grabWindow();
}

void DeskScreen::rest() {
    drawn([this] { return app_->session().isIdle(); });
    QCoreApplication::processEvents();
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
}

} // namespace bullace::desk_bench
