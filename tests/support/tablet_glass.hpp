// A whole tablet without a display: its journal in a folder of its own, a glass of true size, and
// fingers. What is asserted of it is read from the journal, or from the page.
#pragma once

#include "camera/code_reader.hpp"
#include "camera/photo.hpp"
#include "camera/picture_camera.hpp"
#include "demo/start.hpp"
#include "tablet/tablet_window.hpp"

#include "quick/accessible_audit.hpp"
#include "quick/system_clock.hpp"
#include "support/field_books.hpp"
#include "support/screen.hpp"

#include <memory>
#include <string>

namespace bullace::test {

// Glasses that are tried: outer sizes of the picture in mm, and pixels a mm.
struct GlassSize {
    const char* name;
    QSizeF mm;
    qreal pxPerMm;
};
inline constexpr qreal kPx10 = 4;
inline constexpr qreal kPx8 = 4;
inline const GlassSize k10Wide{"10-wide", {217, 136}, kPx10};
inline const GlassSize k10Upright{"10-upright", {136, 217}, kPx10};
inline const GlassSize k12Wide{"12-wide", {259, 162}, kPx10};
inline const GlassSize k8Wide{"8-wide", {172, 108}, kPx8};
inline const GlassSize k8Upright{"8-upright", {108, 172}, kPx8};

class TabletGlass : public support::Glass {
public:
    // `folder` must outlive this; a tablet that is made on it again goes on with its journal.
    TabletGlass(const std::string& folder, FixedClock& clock, GlassSize size = k10Wide)
        : demoClock_(clock, demo::startDate()),
          size_(size) {
        tablet::TabletParts parts;
        parts.folder = QString::fromStdString(folder);
        parts.zone = "Etc/GMT+5";
        parts.clock = &clock;
        parts.demoClock = &demoClock_;
        parts.codeCamera = &camera_;
        parts.photoCamera = &camera_;
        parts.demoLines = demo::startLines;
        parts.readCode = [](const QImage& picture) {
            return QString::fromStdString(camera::readCode(picture).value_or(std::string{}));
        };
        parts.photoBytes = camera::photoBytes;
        app_ = std::make_unique<tablet::TabletApp>(std::move(parts));
        app_->open();
        window_ = std::make_unique<tablet::TabletWindow>(engine(), *app_, size.pxPerMm);
        REQUIRE(window_->window() != nullptr);
        setGlass(window_->window());
        window().resize((size.mm * size.pxPerMm).toSize());
        window().show();
        window().requestActivate();
        settle();
    }
    ~TabletGlass() { window().close(); }
    TabletGlass(const TabletGlass&) = delete;
    TabletGlass& operator=(const TabletGlass&) = delete;

    tablet::TabletApp& app() { return *app_; }
    field::FieldBook& book() {
        REQUIRE(app_->book() != nullptr);
        return *app_->book();
    }
    camera::PictureCamera& camera() { return camera_; }

    // Taps the key that says this, wherever it stands; counts it.
    void tapText(const QString& text) {
        QQuickItem* key = keySaying(window().contentItem(), text);
        INFO(text.toStdString());
        REQUIRE(key != nullptr);
        touch(middleOf(*key));
    }
    void tapKey(const char* objectName) {
        QQuickItem& key = item(objectName);
        INFO(objectName);
        REQUIRE(key.isVisible()); // a finger touches what it sees
        touch(middleOf(key));
    }
    // A choice, turning to the keys behind "More" where it is among them; only the last tap counts.
    void tapChoice(int index) {
        const std::string name = "choice" + std::to_string(index);
        for (int turns = 0; turns < 20 && !item(name.c_str()).isVisible(); ++turns) {
            tap(middleOf(item("moreChoices")));
            settle();
        }
        tapKey(name.c_str());
    }
    void touch(QPoint at) {
        tap(at);
        ++taps;
        settle();
    }
    [[nodiscard]] bool says(const QString& text) {
        return keySaying(window().contentItem(), text) != nullptr;
    }
    void type(const QString& text) {
        takeUp();
        for (const QChar character : text) {
            QTest::keyClick(&window(), character.toLatin1());
            settle();
        }
    }
    void press(Qt::Key key) {
        takeUp();
        support::Glass::key(key);
        settle();
    }
    // Through the questions of the first start, with an own block.
    void setUp(const QString& block = QStringLiteral("3x12")) {
        tapText(QStringLiteral("The right hand"));
        tapText(QStringLiteral("It is 50 mm"));
        tapText(QStringLiteral("A block of my own"));
        type(block);
        press(Qt::Key_Return);
    }
    [[nodiscard]] QStringList faults(qreal leastMm = 9) {
        settle();
        return quick::faultsOf(window(), {size_.pxPerMm, leastMm, 2.9});
    }
    // A walk was begun behind the pages' back: they look anew.
    void reopenWalk() {
        app_->open();
        settle();
    }
    // What is settled of the subject, in words as in `Book::says`.
    [[nodiscard]] std::string at(const std::string& subject) {
        const auto row = book().database().state(subject);
        REQUIRE(row.ok());
        return *row ? std::string(merge::stateWord((*row)->state)) +
                          ((*row)->valueJson.empty() ? "" : " " + (*row)->valueJson)
                    : std::string{};
    }

    int taps = 0;

private:
    // Of two tablets in one test, the one whose keyboard is used.
    void takeUp() {
        if (!window().isActive()) {
            window().requestActivate();
            settle();
        }
    }
    static QQuickItem* keySaying(QQuickItem* from, const QString& text) {
        if (!from->isVisible()) {
            return nullptr;
        }
        const bool isKey = from->metaObject()->indexOfProperty("keyHint") >= 0;
        if (isKey && from->property("text").toString() == text) {
            return from;
        }
        for (QQuickItem* child : from->childItems()) {
            if (QQuickItem* found = keySaying(child, text)) {
                return found;
            }
        }
        return nullptr;
    }

    camera::PictureCamera camera_;
    quick::ShiftedClock demoClock_;
    GlassSize size_;
    std::unique_ptr<tablet::TabletApp> app_;
    std::unique_ptr<tablet::TabletWindow> window_;
};

} // namespace bullace::test
