// A whole desk without a display: its window, keys and the mouse; it waits until what was asked for
// has been answered, and never for a time.
#pragma once

#include "desk/desk_window.hpp"

#include "quick/accessible_audit.hpp"
#include "support/desk_stations.hpp"
#include "support/fixed_clock.hpp"
#include "support/screen.hpp"

#include <QElapsedTimer>
#include <QThread>

#include <functional>
#include <memory>
#include <string>

namespace bullace::test {

struct DeskSize {
    const char* name;
    QSize px;
};
inline constexpr qreal kDeskPxPerMm = 3.78; // 96 dots an inch
inline const DeskSize kDeskLeast{"1366x768", {1366, 768}};
inline const DeskSize kDeskWide{"1920x1080", {1920, 1080}};

class DeskGlass : public support::Glass {
public:
    DeskGlass(const std::string& path, FixedClock& clock, DeskSize size = kDeskLeast)
        : path_(path) {
        desk::DeskParts parts;
        parts.clock = &clock;
        parts.address = "127.0.0.1";
        parts.port = 0;
        app_ = std::make_unique<desk::DeskApp>(std::move(parts));
        app_->open(path);
        window_ = std::make_unique<desk::DeskWindow>(engine(), *app_, kDeskPxPerMm);
        REQUIRE(window_->window() != nullptr);
        setGlass(window_->window());
        window().resize(size.px);
        window().show();
        window().requestActivate();
        rest();
    }
    ~DeskGlass() { window().close(); }
    DeskGlass(const DeskGlass&) = delete;
    DeskGlass& operator=(const DeskGlass&) = delete;

    desk::DeskApp& app() { return *app_; }
    desk::DeskPage& page() {
        REQUIRE(app_->current() != nullptr);
        return *app_->current();
    }

    // Until everything that was asked for has been answered, then until the picture rests.
    void rest() {
        do {
            app_->session().desk() != nullptr ? app_->session().desk()->finish() : void();
            QCoreApplication::processEvents();
        } while (!app_->session().isIdle());
        settle();
    }
    // Until it holds: for what another thread tells when it likes, such as that a tablet came. At
    // most half a minute.
    void until(const std::function<bool()>& holds) {
        constexpr qint64 kPatienceMs = 30'000;
        QElapsedTimer timer;
        timer.start();
        for (rest(); !holds(); rest()) {
            REQUIRE(timer.elapsed() < kPatienceMs);
            QThread::msleep(5);
        }
    }
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        takeUp();
        QTest::keyClick(&window(), key, modifiers);
        rest();
    }
    void press(const char* keys) {
        for (const char* key = keys; *key != 0; ++key) {
            takeUp();
            QTest::keyClick(&window(), *key);
            rest();
        }
    }
    void type(const QString& text) {
        takeUp();
        for (const QChar character : text) {
            QTest::keyClick(&window(), character.toLatin1());
        }
        rest();
    }
    void answer(const QString& text) {
        type(text);
        press(Qt::Key_Return);
    }
    void go(desk::DeskApp::Page page) {
        app_->go(page);
        rest();
    }
    // Who sits at the desk.
    void sit(const std::string& author) {
        desk::DeskSettings settings = app_->session().settings();
        settings.author = author;
        app_->session().change(settings);
        rest();
    }
    // "settled 12", as a reader of the file sees it now.
    std::string at(const std::string& subject) {
        rest();
        auto database = store::Database::open(path_, false, store::fileSurroundings());
        REQUIRE(database.ok());
        const auto row = (*database)->state(subject);
        REQUIRE(row.ok());
        return *row ? std::string(merge::stateWord((*row)->state)) +
                          ((*row)->valueJson.empty() ? "" : " " + (*row)->valueJson)
                    : std::string{};
    }
    QStringList faults() {
        rest();
        return quick::faultsOf(window(), {kDeskPxPerMm, 24 / kDeskPxPerMm, 0});
    }

    // Looks the page over, and keeps its picture.
    void look(const std::string& name) {
        INFO(name);
        for (const QString& fault : faults()) {
            FAIL_CHECK(fault.toStdString());
        }
        CHECK(picture().save(
            QStringLiteral(BULLACE_PICTURES "/desk-%1.png").arg(QString::fromStdString(name))));
    }

private:
    void takeUp() {
        if (!window().isActive()) {
            window().requestActivate();
            settle();
        }
    }

    std::string path_;
    std::unique_ptr<desk::DeskApp> app_;
    std::unique_ptr<desk::DeskWindow> window_;
};

} // namespace bullace::test
