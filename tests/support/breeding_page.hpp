// The page Breeding without a display, on the demo station or on a few lines of one.
#pragma once

#include "support/desk_glass.hpp"

#include <QFile>

#include <memory>
#include <string>

namespace bullace::test {

// Lines of an office, and of a second one that knew nothing of the first, and of a tablet.
class StationLines {
public:
    void office(const std::string& subject, const std::string& json) {
        add(kOffice, "catalog", ++officeSeq_, subject, json);
    }
    void apart(const std::string& subject, const std::string& json) {
        add(kOther, "catalog", ++otherSeq_, subject, json);
    }
    void noted(const std::string& subject, const std::string& json) {
        add(kTablet, "observe", ++tabletSeq_, subject, json);
    }
    // A sample of an observation.
    void sample(const std::string& subject, const std::string& json) {
        noted(subject + "/" + kTablet + "," + std::to_string(++samples_), json);
    }
    [[nodiscard]] const std::string& text() const { return text_; }

private:
    void add(const std::string& origin,
             const std::string& kind,
             int seq,
             const std::string& subject,
             const std::string& json) {
        text_ += lineOf({origin, seq, "im", kind, subject, json});
    }

    static constexpr const char* kOffice = "s0000000000000009.1";
    static constexpr const char* kOther = "s000000000000000a.1";
    static constexpr const char* kTablet = "t0000000000000001.1";
    std::string text_;
    int officeSeq_ = 0;
    int otherSeq_ = 0;
    int tabletSeq_ = 0;
    int samples_ = 0;
};

class BreedingPage {
public:
    TempFolder folder;
    std::string path = folder.file("station.db");
    FixedClock clock{1'760'000'000'000}; // 2025-10-09
    std::unique_ptr<DeskGlass> glass;

    BreedingPage() {
        makeDemoFile(path);
        open();
        glass->press(Qt::Key_Escape); // the notice that the file is a copy
    }
    explicit BreedingPage(const std::string& lines) {
        makeStationFile(path, lines);
        open();
    }

    desk::StudyViewModel& page() { return *glass->app().breeding(); }
    const desk::Study& study() { return page().study(); }
    void choose(const char* view, const desk::Chosen& chosen = {}) {
        page().choose(QLatin1String(view), chosen);
        glass->rest();
    }
    QByteArray written(const QString& name, bool isPicture) {
        const QString file = QString::fromStdString(folder.file(name.toStdString()));
        CHECK((isPicture ? page().writePicture(file) : page().writeTable(file)).isEmpty());
        QFile read(file);
        REQUIRE(read.open(QIODevice::ReadOnly));
        return read.readAll();
    }

private:
    void open() {
        glass = std::make_unique<DeskGlass>(path, clock);
        glass->sit("hl");
        glass->go(desk::DeskApp::Breeding);
    }
};

} // namespace bullace::test
