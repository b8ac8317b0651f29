// The tablet program.
#include "camera/code_reader.hpp"
#include "camera/device_camera.hpp"
#include "camera/photo.hpp"
#include "demo/start.hpp"
#include "tablet/tablet_window.hpp"

#include "quick/page_picture.hpp"
#include "quick/system_clock.hpp"

#include <QCommandLineParser>
#include <QGuiApplication>
#include <QQmlEngine>
#include <QStandardPaths>
#include <QTimeZone>

int main(int count, char** words) {
    using namespace bullace;
    QGuiApplication program(count, words);
    QGuiApplication::setApplicationName(QStringLiteral("bullace-tablet"));
    QGuiApplication::setApplicationVersion(QStringLiteral("1.0.0"));

    QCommandLineParser parser;
    parser.setApplicationDescription(
        QStringLiteral("Notes vine by vine, without a network; syncs at the office."));
    parser.addHelpOption();
    parser.addVersionOption();
    const QCommandLineOption folder(
        QStringLiteral("journals"),
        QStringLiteral("The folder in which the journals lie."),
        QStringLiteral("folder"),
        QStandardPaths::writableLocation(QStandardPaths::AppDataLocation));
    const QCommandLineOption windowed(QStringLiteral("window"),
                                      QStringLiteral("In a window instead of the whole screen."));
    const QCommandLineOption demo(QStringLiteral("demo"),
                                  QStringLiteral("With the demo station at once."));
    const QCommandLineOption pictureFile(
        QStringLiteral("picture"),
        QStringLiteral("Writes a picture of the page that it opens with into the file, and ends."),
        QStringLiteral("file"));
    parser.addOptions({folder, windowed, demo, pictureFile});
    parser.process(program);

    const quick::SystemClock clock;
    const quick::ShiftedClock demoClock(clock, demo::startDate());
    camera::DeviceCamera codeCamera(camera::CameraUse::Codes);
    camera::DeviceCamera photoCamera(camera::CameraUse::Photos);
    tablet::TabletParts parts;
    parts.folder = parser.value(folder);
    parts.zone = QTimeZone::systemTimeZoneId().toStdString();
    parts.clock = &clock;
    parts.demoClock = &demoClock;
    parts.codeCamera = &codeCamera;
    parts.photoCamera = &photoCamera;
    parts.demoLines = demo::startLines;
    parts.readCode = [](const QImage& picture) {
        return QString::fromStdString(camera::readCode(picture).value_or(std::string{}));
    };
    parts.photoBytes = camera::photoBytes;

    tablet::TabletApp app(std::move(parts));
    QQmlEngine engine;
    app.open();
    if (parser.isSet(demo) && app.book() != nullptr && !app.isDemo()) {
        app.openDemo();
    }
    const tablet::TabletWindow window(engine, app);
    if (window.window() == nullptr) {
        return 2;
    }
    if (parser.isSet(pictureFile)) {
        window.window()->resize(1280, 800);
        window.window()->show();
        const auto isIdle = [] { return true; };
        return quick::savePagePicture(*window.window(), parser.value(pictureFile), isIdle) ? 0 : 1;
    }
    if (parser.isSet(windowed)) {
        window.window()->resize(1280, 800);
        window.window()->show();
    } else {
        window.window()->showFullScreen();
    }
    return QGuiApplication::exec();
}
