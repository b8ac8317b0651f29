#include "quick/language.hpp"

#include <QCoreApplication>

namespace bullace::quick {

namespace {

QLocale::Language known(const QString& code, const QLocale& own) {
    const QLocale::Language asked = code.isEmpty() ? own.language() : QLocale(code).language();
    return asked == QLocale::Spanish ? asked : QLocale::English;
}

// Mexico writes a decimal point, Spain a comma: the language alone does not say.
QLocale numbersIn(QLocale::Language language, const QLocale& own) {
    QLocale locale(language,
                   own.language() == language     ? own.territory()
                   : language == QLocale::Spanish ? QLocale::Mexico
                                                  : QLocale::UnitedStates);
    locale.setNumberOptions(QLocale::OmitGroupSeparator | QLocale::RejectGroupSeparator);
    return locale;
}

} // namespace

Language::Language(QCoreApplication& application, const QLocale& own, QObject* parent)
    : QObject(parent),
      application_(application),
      own_(own) {}

Language::~Language() {
    application_.removeTranslator(&translator_);
}

bool Language::choose(const QString& code) {
    const QLocale::Language language = known(code, own_);
    const QString wanted = QLocale::languageToCode(language);
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
    QLocale::setDefault(numbersIn(language, own_));
    return true;
}

} // namespace bullace::quick
