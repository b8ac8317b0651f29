// The desk program.
#include "desk/desk_window.hpp"

#include "quick/page_picture.hpp"
#include "quick/system_clock.hpp"

#include <QApplication>
#include <QCommandLineParser>
#include <QDir>
#include <QQmlEngine>
#include <QTimer>

namespace {

using namespace bullace;

// Each page of the open station as a PNG in the folder. Not 0 where one cannot be made.
int writePictures(desk::DeskApp& app, QQuickWindow& window, const QString& folder) {
    using App = desk::DeskApp;
    const std::pair<App::Page, const char*> pages[] = {{App::Arrivals, "arrivals"},
                                                       {App::Conflicts, "conflicts"},
                                                       {App::Findings, "findings"},
                                                       {App::Rulebook, "rulebook"},
                                                       {App::Bench, "bench"},
                                                       {App::Map, "map"},
                                                       {App::Collection, "collection"},
                                                       {App::Settings, "this-desk"}};
    if (!QDir().mkpath(folder)) {
        return 1;
    }
    window.resize(1366, 768);
    window.show();
    for (const auto& [page, name] : pages) {
        app.go(page);
        const QString file =
            QDir(folder).filePath(QStringLiteral("desk-%1.png").arg(QLatin1String(name)));
        if (app.page() != page ||
            !quick::savePagePicture(window, file, [&app] { return app.session().isIdle(); })) {
            qWarning("The picture %s could not be made.", qPrintable(file));
            return 1;
        }
    }
    return 0;
}

} // namespace

int main(int count, char** words) {
    QApplication program(count, words); // plots are drawn with it
    QApplication::setApplicationName(QStringLiteral("bullace-desk"));
    QApplication::setApplicationVersion(QStringLiteral("1.0.0"));

    QCommandLineParser parser;
    parser.setApplicationDescription(QStringLiteral(
        "The station's office: lets tablets sync, settles conflicts, keeps the collection."));
    parser.addHelpOption();
    parser.addVersionOption();
    const QCommandLineOption address(
        QStringLiteral("address"),
        QStringLiteral("Where tablets may come from: a numeric address of this computer."),
        QStringLiteral("address"),
        QStringLiteral("::"));
    const QCommandLineOption port(QStringLiteral("port"),
                                  QStringLiteral("The port for tablets; 0 takes any that is free."),
                                  QStringLiteral("port"),
                                  QString::number(sync::kDefaultPort));
    const QCommandLineOption pictures(
        QStringLiteral("pictures"),
        QStringLiteral("Writes a picture of each page into the folder, and ends."),
        QStringLiteral("folder"));
    parser.addOptions({address, port, pictures});
    parser.addPositionalArgument(QStringLiteral("station"),
                                 QStringLiteral("The station's database."));
    parser.process(program);
    bool isPort = false;
    const auto portNumber = parser.value(port).toUShort(&isPort);
    if (parser.positionalArguments().size() != 1 || !isPort) {
        parser.showHelp(2);
    }

    const quick::SystemClock clock;
    desk::DeskParts parts;
    parts.clock = &clock;
    parts.address = parser.value(address).toStdString();
    parts.port = portNumber;
    desk::DeskApp app(std::move(parts));
    QQmlEngine engine;
    app.open(parser.positionalArguments().constFirst().toStdString());
    const desk::DeskWindow window(engine, app);
    if (window.window() == nullptr) {
        return 2;
    }
    if (parser.isSet(pictures)) {
        return writePictures(app, *window.window(), parser.value(pictures));
    }
    window.window()->show();
    return QApplication::exec();
}
