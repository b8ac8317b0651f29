// The language of the screens: texts, and how numbers are written. Both apps use it.
#pragma once

#include <QLocale>
#include <QObject>
#include <QString>
#include <QTranslator>

QT_BEGIN_NAMESPACE
class QCoreApplication;
QT_END_NAMESPACE

namespace bullace::quick {

class Language : public QObject {
    Q_OBJECT

public:
    // The application must outlive this. `own` is what the machine is set to: its language is taken
    // where none is chosen, its country says how that language writes numbers.
    explicit Language(QCoreApplication& application,
                      const QLocale& own = QLocale::system(),
                      QObject* parent = nullptr);
    ~Language() override;
    Language(const Language&) = delete;
    Language& operator=(const Language&) = delete;
    Language(Language&&) = delete;
    Language& operator=(Language&&) = delete;

    // "en", "es"; an empty code is the language of the machine, and what is not known here is
    // English. Texts asked for from now on are in it; numbers have the decimal mark of the
    // machine's country (of the United States or Mexico where another language is spoken there),
    // and never a mark between thousands. True where something changed: the caller then has its
    // pages read their texts anew (QQmlEngine::retranslate).
    bool choose(const QString& code);
    [[nodiscard]] QString code() const { return code_; }

private:
    QCoreApplication& application_;
    QLocale own_;
    QTranslator translator_;
    QString code_;
};

} // namespace bullace::quick
