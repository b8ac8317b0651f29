#include "quick/language.hpp"

#include <QCoreApplication>

namespace bullace::quick {

namespace {

QString known(const QString& code) {
    const QString asked = code.isEmpty() ? QLocale::system().name().left(2) : code;
    return asked == QStringLiteral("es") ? asked : QStringLiteral("en");
}

} // namespace

Language::Language(QCoreApplication& application, QObject* parent)
    : QObject(parent),
      application_(application) {}

Language::~Language() {
    application_.removeTranslator(&translator_);
}

bool Language::choose(const QString& code) {
    const QString wanted = known(code);
    if (wanted == code_) {
        return false;
    }
    application_.removeTranslator(&translator_);
    code_ = wanted;
    // English has a file of its own: for "1 entry" and "2 entries".
    if (!translator_.load(QStringLiteral(":/bullace/languages/bullace_%1.qm").arg(code_))) {
        qWarning("The texts in \"%s\" are missing.", qPrintable(code_));
    }
    application_.installTranslator(&translator_);
    QLocale locale(code_ == QStringLiteral("es")
                       ? QLocale(QLocale::Spanish, QLocale::Mexico)
                       : QLocale(QLocale::English, QLocale::UnitedStates));
    locale.setNumberOptions(QLocale::OmitGroupSeparator | QLocale::RejectGroupSeparator);
    QLocale::setDefault(locale);
    return true;
}

} // namespace bullace::quick
