// The desk program.
#include "desk/desk_window.hpp"

#include "quick/system_clock.hpp"

#include <QApplication>
#include <QCommandLineParser>
#include <QQmlEngine>
#include <QTimer>

int main(int count, char** words) {
    using namespace bullace;
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
    parser.addOptions({address, port});
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
    window.window()->show();
    return QApplication::exec();
}
