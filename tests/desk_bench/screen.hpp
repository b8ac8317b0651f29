// The desk's window under measure: asked as a person asks, and waited for until what was asked is
// drawn. Waits run the event loop of the screen, as the program does.
#pragma once

#include "desk/desk_window.hpp"

#include "core/base/clock.hpp"

#include <QQmlEngine>

#include <functional>
#include <memory>
#include <string>

namespace bullace::desk_bench {

// A morning of the day on which the benchmark's station is open; a later day where it is told.
class BenchClock : public Clock {
public:
    [[nodiscard]] std::int64_t nowMs() const override;
    [[nodiscard]] std::int64_t minutesFromUtc(std::int64_t /*ms*/) const override { return -300; }
    [[nodiscard]] CivilDate dateAt(std::int64_t ms) const override;
    void nextDay() { ++days_; }

private:
    int days_ = 0;
};

class DeskScreen {
public:
    DeskScreen(const std::string& path, const Clock& clock);
    ~DeskScreen();
    DeskScreen(const DeskScreen&) = delete;
    DeskScreen& operator=(const DeskScreen&) = delete;
    DeskScreen(DeskScreen&&) = delete;
    DeskScreen& operator=(DeskScreen&&) = delete;

    desk::DeskApp& app() { return *app_; }
    desk::DeskPage& page() { return *app_->current(); }
    QQuickWindow& window() { return *window_->window(); }
    // Null where it is not on the screen.
    QQuickItem* item(const QString& name);

    void press(Qt::Key key);
    // Runs the loop until `isThere` says so, then draws the whole window.
    void drawn(const std::function<bool()>& isThere);
    // Until everything that was asked for has been answered.
    void rest();

private:
    std::unique_ptr<desk::DeskApp> app_;
    QQmlEngine engine_;
    std::unique_ptr<desk::DeskWindow> window_;
};

} // namespace bullace::desk_bench
