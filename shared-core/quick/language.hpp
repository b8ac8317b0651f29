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
    // The application must outlive this.
    explicit Language(QCoreApplication& application, QObject* parent = nullptr);
    ~Language() override;
    Language(const Language&) = delete;
    Language& operator=(const Language&) = delete;
    Language(Language&&) = delete;
    Language& operator=(Language&&) = delete;

    // "en", "es"; an empty code is the language of the machine, and what is not known here is
    // English. Texts asked for from now on are in it; numbers have its decimal mark, and never a
    // mark between thousands. True where something changed.
    bool choose(const QString& code);
    [[nodiscard]] QString code() const { return code_; }

private:
    QCoreApplication& application_;
    QTranslator translator_;
    QString code_;
};

} // namespace bullace::quick
