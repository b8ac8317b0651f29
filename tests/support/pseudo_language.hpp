// A language that nobody speaks: accents, brackets at both ends and forty percent more letters, so
// that what is cut, or was never given to the translators, shows.
#pragma once

#include <QString>
#include <QTranslator>

#include <cmath>

namespace bullace::test {

[[nodiscard]] inline QString pseudoWords(const QString& words) {
    static const QString kPlain = QStringLiteral("aeiouAEIOUcnsyz");
    static const QString kMarked = QStringLiteral("áéíóúÁÉÍÓÚçñšýž");
    QString marked;
    for (qsizetype i = 0; i < words.size(); ++i) {
        const bool isPlaceholder = i > 0 && words[i - 1] == QLatin1Char('%');
        const qsizetype at = isPlaceholder ? -1 : kPlain.indexOf(words[i]);
        marked += at < 0 ? words[i] : kMarked[at];
    }
    // Longer by words, as languages are: a sentence gets more of them, a key's word a tail.
    const int more = static_cast<int>(std::ceil(0.4 * static_cast<double>(words.size()))) - 2;
    QString tail;
    while (tail.size() < more) {
        tail += words.size() > 10 && tail.size() % 6 == 0 ? QLatin1Char(' ') : QLatin1Char('x');
    }
    return QStringLiteral("[") + marked + tail + QStringLiteral("]");
}

// Put over the application's own language: what it translates is made longer once more.
class PseudoTranslator : public QTranslator {
public:
    using QTranslator::QTranslator;
    [[nodiscard]] bool isEmpty() const override { return false; }
    [[nodiscard]] QString translate(const char* /*context*/,
                                    const char* source,
                                    const char* /*note*/,
                                    int n) const override {
        const QString text = QString::fromUtf8(source);
        if (text == QStringLiteral("d MMM yyyy")) {
            return text; // a form of a date, and no words
        }
        return pseudoWords(n >= 0 ? QString(text).replace(QStringLiteral("%n"), QString::number(n))
                                  : text);
    }
};

} // namespace bullace::test
