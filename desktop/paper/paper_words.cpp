#include "paper/paper_words.hpp"

#include "quick/words.hpp"

namespace bullace::paper {

QString PaperWords::nothingToPrint() {
    return tr("There is nothing to print.");
}

QString PaperWords::cannotWrite(const QString& path) {
    return tr("The file %1 cannot be written. Look whether its folder is there and has room.")
        .arg(path);
}

QString PaperWords::asOf(const QString& when) {
    const QString version = QCoreApplication::applicationVersion();
    if (version.isEmpty()) {
        //: at a page's foot: the date and time at which its values were as shown
        return tr("As of %1.").arg(when);
    }
    //: the same, with the program's version
    return tr("As of %1. Bullace %2.").arg(when, version);
}

QString PaperWords::noLabelCode(const QString& text) {
    return tr("“%1” is no label code. A code has eight letters and digits, the first a letter.")
        .arg(text);
}

QString PaperWords::noPosition(const QString& text) {
    return tr("“%1” is no position. A position is written like B2-07-14.").arg(text);
}

QString PaperWords::codeTooSmall(const QString& code) {
    return tr("On labels of this size the code of %1 would be too small to be read.").arg(code);
}

QString PaperWords::codeTooWide(const QString& code, double capsMm) {
    return tr("On labels of this size %1 does not fit in letters of %2 mm.").arg(code).arg(capsMm);
}

QString PaperWords::sheetOverlaps() {
    return tr("The labels of this sheet lie over one another: from one to the next it must be at "
              "least the size of a label.");
}

QString PaperWords::sheetOffPaper() {
    return tr("Some labels of this sheet lie off the paper. Look at the margins, the number of "
              "labels and the printer's offset.");
}

QString PaperWords::sheetNoCells() {
    return tr("A sheet has at least one label, and a label has a size.");
}

QString PaperWords::startNotOnSheet(int cells) {
    return tr("The sheet has %n label(s); the first free one must be one of them.", nullptr, cells);
}

QString PaperWords::blockRow(const QString& block, unsigned row) {
    return tr("%1 · row %2").arg(block).arg(row);
}

QString PaperWords::postAtVine(unsigned vine) {
    //: on the label of the post at a row's end
    return tr("post at vine %1").arg(vine);
}

QString PaperWords::vine(const QString& vine) {
    return tr("vine %1").arg(vine);
}

QStringList PaperWords::testPageHelp() {
    return {tr("Test page for this sheet of labels"),
            tr("1. Print at 100 %, without fitting to the page, on plain paper."),
            tr("2. Measure both rulers: 0 to 150 must be 150 mm."),
            tr("3. Lay this page over a sheet of labels and hold both against the light."),
            tr("4. How far the frames lie too far right and down is this printer's offset.")};
}

QString PaperWords::walkedFrom(const QString& firstVine, const QString& lastVine) {
    return tr("walked from vine %1 to vine %2").arg(firstVine, lastVine);
}

QString PaperWords::pageOf(int page, int pages) {
    return tr("page %1 of %2").arg(page).arg(pages);
}

QString PaperWords::vineHead() {
    //: above the vines' numbers
    return tr("vine");
}

QString PaperWords::whyHead() {
    //: above the box for the reason why there is no value
    return tr("why not");
}

QString PaperWords::observer() {
    return tr("observer");
}

QString PaperWords::date() {
    return tr("date (year, month, day)");
}

QString PaperWords::began(const QString& vine) {
    //: a box to be ticked
    return tr("began at vine %1").arg(vine);
}

QString PaperWords::whyHelp() {
    return tr("Why there is no value: N not observed, V no vine, D dead, R out of reach, C no "
              "crop, P walked past.");
}

QString PaperWords::fillHelp() {
    return tr("One digit in a box, numbers to the right. No line stays empty.");
}

QString PaperWords::titled(const QString& title, const QString& unit) {
    //: what is noted, and its unit
    return unit.isEmpty() ? title : tr("%1, %2").arg(title, unit);
}

QString PaperWords::codeMeans(const QString& code, const QString& meaning) {
    //: a code of a list and what it stands for
    return tr("%1 %2").arg(code, meaning);
}

QString PaperWords::listOf(const QString& title) {
    //: above the list of codes that a descriptor has
    return tr("%1:").arg(title);
}

QString PaperWords::tooManyBoxes() {
    return tr("What is to be noted has more boxes than a page is wide. Print fewer descriptors or "
              "samples on one sheet.");
}

QString PaperWords::noVines() {
    return tr("This row has no vines.");
}

QString PaperWords::noQuestions() {
    return tr("Nothing that is noted on paper was chosen.");
}

QString PaperWords::noVine() {
    return tr("no vine");
}

QString PaperWords::paperSheet() {
    return tr("At the desk: the bench opens this page's grid by its code.");
}

namespace {

// One sentence for each, as they stand on the tablet before a walk.
class Cautions {
    Q_DECLARE_TR_FUNCTIONS(PaperWords)

public:
    static QString closed(const QString& block, const QString& until) {
        return tr("Block %1 is closed until %2: not walked. The product label and the "
                  "worker-protection rules decide.")
            .arg(block, until);
    }
    static QString noTasting(const QString& block, const QString& until) {
        return tr("Block %1: no tasting until %2. The product label and the worker-protection "
                  "rules decide.")
            .arg(block, until);
    }
    static QString footing() { return tr("Heat, storms, footing: stand still to write."); }
};

} // namespace

QStringList cautionsOf(const vineyard::Block& block, CivilDate day) {
    QStringList lines;
    const QString code = quick::fromText(block.code);
    if (block.isClosed(day)) {
        lines << Cautions::closed(code, quick::dateWords(*block.closedUntil));
    }
    if (block.noTastingUntil && day <= *block.noTastingUntil) {
        lines << Cautions::noTasting(code, quick::dateWords(*block.noTastingUntil));
    }
    return lines << Cautions::footing();
}

} // namespace bullace::paper
