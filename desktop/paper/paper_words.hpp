// The words on labels and row sheets, in the language of the screen.
#pragma once

#include "core/base/civil_date.hpp"
#include "core/vineyard/block.hpp"

#include <QCoreApplication>
#include <QString>
#include <QStringList>

namespace bullace::paper {

class PaperWords {
    Q_DECLARE_TR_FUNCTIONS(PaperWords)

public:
    static QString nothingToPrint();
    static QString cannotWrite(const QString& path);
    static QString asOf(const QString& when);

    // Labels
    static QString noLabelCode(const QString& text);
    static QString noPosition(const QString& text);
    static QString codeTooSmall(const QString& code);
    static QString codeTooWide(const QString& code, double capsMm);
    static QString sheetOverlaps();
    static QString sheetOffPaper();
    static QString sheetNoCells();
    static QString startNotOnSheet(int cells);
    static QString blockRow(const QString& block, unsigned row);
    static QString postAtVine(unsigned vine);
    static QString vine(const QString& vine);
    // What to do with the test page, a line each.
    static QStringList testPageHelp();

    // Row sheets
    static QString walkedFrom(const QString& firstVine, const QString& lastVine);
    static QString pageOf(int page, int pages);
    static QString vineHead();
    static QString whyHead();
    static QString observer();
    static QString date();
    static QString began(const QString& vine);
    static QString whyHelp();
    static QString fillHelp();
    static QString titled(const QString& title, const QString& unit);
    static QString codeMeans(const QString& code, const QString& meaning);
    static QString listOf(const QString& title);
    static QString tooManyBoxes();
    static QString noVines();
    static QString noQuestions();
    static QString noVine();
    static QString paperSheet();
};

// What is to be known before the block is walked on that day: how long it is closed, how long none
// of its fruit is tasted, and the line about heat and footing that stands on every sheet.
[[nodiscard]] QStringList cautionsOf(const vineyard::Block& block, CivilDate day);

} // namespace bullace::paper
