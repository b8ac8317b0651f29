#include "paper/table_page.hpp"

#include "paper/paper_words.hpp"
#include "paper/pdf.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::paper {

namespace {

constexpr double kEdgeMm = 12;
constexpr double kGapMm = 2.5; // between columns
constexpr double kMostCapsMm = 2.2;
constexpr double kFootCapsMm = 1.7;

// How the table is laid out with letters of one size.
struct Layout {
    double capsMm = kMostCapsMm;
    std::vector<double> widths;
    double roomMm = 0; // below each other: for rows and notes on one page
    double lines = 0;  // of all rows, with the head
    QStringList notes; // broken into lines

    [[nodiscard]] double heightMm() const {
        return (lines + static_cast<double>(notes.size()) + 1) * lineMm(capsMm);
    }
    [[nodiscard]] double widthMm() const {
        double all = 0;
        for (const double width : widths) {
            all += width + kGapMm;
        }
        return all;
    }
};

Layout layoutOf(const TablePage& table, double capsMm, QSizeF room) {
    Layout layout;
    layout.capsMm = capsMm;
    layout.roomMm = room.height();
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        double widest = wordsWidthMm(table.columns[i].title, capsMm, true);
        for (const QStringList& row : table.rows) {
            widest =
                std::max(widest, wordsWidthMm(row.value(static_cast<qsizetype>(i)), capsMm, false));
        }
        layout.widths.push_back(widest);
    }
    const double wide = layout.widthMm();
    if (wide > room.width() && capsMm <= table.leastCapsMm) {
        for (double& width : layout.widths) {
            width *= (room.width() - kGapMm * static_cast<double>(layout.widths.size())) /
                     (wide - kGapMm * static_cast<double>(layout.widths.size()));
        }
    }
    layout.lines = static_cast<double>(table.rows.size()) + 1;
    for (const QString& note : table.notes) {
        layout.notes << wrappedWords(note, room.width(), capsMm, false);
    }
    return layout;
}

// The largest letters with which all stands on one page; the smallest where none do.
Layout fittingLayout(const TablePage& table, QSizeF room) {
    for (double caps = kMostCapsMm; caps > table.leastCapsMm; caps -= 0.1) {
        Layout layout = layoutOf(table, caps, room);
        if (layout.widthMm() <= room.width() && layout.heightMm() <= room.height()) {
            return layout;
        }
    }
    return layoutOf(table, table.leastCapsMm, room);
}

QString cutTo(const QString& words, double width, double capsMm, bool isBold) {
    QString cut = words;
    while (cut.size() > 1 && wordsWidthMm(cut, capsMm, isBold) > width + 0.01) {
        cut.chop(cut.endsWith(QChar(0x2026)) ? 2 : 1);
        cut += QChar(0x2026);
    }
    return cut;
}

// Fills pages from the top down.
class Filling {
public:
    Filling(const TablePage& table, PaperSize size)
        : table_(table),
          size_(size),
          paper_(sizeMm(size).transposed()) {
        beginPage();
    }

    std::vector<Page> fill() {
        const QSizeF room(paper_.width() - 2 * kEdgeMm, bottom() - y_);
        layout_ = fittingLayout(table_, room);
        addHead();
        for (const QStringList& row : table_.rows) {
            needLine(true);
            addRow(row, false);
        }
        y_ += lineMm(layout_.capsMm) / 2;
        for (const QString& note : layout_.notes) {
            needLine(false);
            addWords(note, kEdgeMm, paper_.width() - 2 * kEdgeMm, layout_.capsMm);
            y_ += lineMm(layout_.capsMm);
        }
        return std::move(pages_);
    }

private:
    [[nodiscard]] double bottom() const {
        return paper_.height() - kEdgeMm - 2 * lineMm(kFootCapsMm);
    }

    void beginPage() {
        pages_.push_back({size_, {}});
        y_ = kEdgeMm;
        const double room = paper_.width() - 2 * kEdgeMm;
        addWords(
            table_.title, kEdgeMm, room, fittingCapsMm(table_.title, room, 1.5, 3.2, true), true);
        y_ += lineMm(3.2);
        for (const QString& line : wrappedWords(table_.words, room, kMostCapsMm, false)) {
            addWords(line, kEdgeMm, room, kMostCapsMm);
            y_ += lineMm(kMostCapsMm);
        }
        y_ += 1.5;
    }

    void needLine(bool withHead) {
        if (y_ + lineMm(layout_.capsMm) <= bottom()) {
            return;
        }
        beginPage();
        if (withHead) {
            addHead();
        }
    }

    void addHead() {
        QStringList titles;
        for (const TableColumn& column : table_.columns) {
            titles << column.title;
        }
        addRow(titles, true);
        PageItem line;
        line.kind = PageItem::Line;
        line.boxMm =
            QRectF(kEdgeMm, y_, std::min(layout_.widthMm(), paper_.width() - 2 * kEdgeMm), 0);
        pages_.back().items.push_back(line);
        y_ += 0.4;
    }

    void addRow(const QStringList& cells, bool isHead) {
        double x = kEdgeMm;
        for (std::size_t i = 0; i < layout_.widths.size(); ++i) {
            const double width = layout_.widths[i];
            const QString words =
                cutTo(cells.value(static_cast<qsizetype>(i)), width, layout_.capsMm, isHead);
            addWords(words, x, width, layout_.capsMm, isHead, table_.columns[i].isNumber);
            x += width + kGapMm;
        }
        y_ += lineMm(layout_.capsMm);
    }

    void addWords(const QString& words,
                  double x,
                  double width,
                  double capsMm,
                  bool isBold = false,
                  bool isOnTheRight = false) {
        PageItem item;
        item.boxMm = QRectF(x, y_, width, lineMm(capsMm));
        item.words = words;
        item.capsMm = capsMm;
        item.isBold = isBold;
        item.alignment =
            (isOnTheRight ? Qt::AlignRight : Qt::AlignLeft) | Qt::Alignment(Qt::AlignVCenter);
        pages_.back().items.push_back(item);
    }

    const TablePage& table_;
    PaperSize size_;
    QSizeF paper_; // lying
    std::vector<Page> pages_;
    Layout layout_;
    double y_ = 0;
};

// As of when, and which page of how many.
void addFoot(const QString& asOf, std::size_t page, std::vector<Page>& pages) {
    const QSizeF paper = sizeMm(pages[page].size).transposed();
    PageItem words;
    words.boxMm = QRectF(kEdgeMm,
                         paper.height() - kEdgeMm - lineMm(kFootCapsMm),
                         paper.width() - 2 * kEdgeMm,
                         lineMm(kFootCapsMm));
    words.words = PaperWords::asOf(asOf);
    words.capsMm = kFootCapsMm;
    PageItem number = words;
    number.words = PaperWords::pageOf(static_cast<int>(page) + 1, static_cast<int>(pages.size()));
    number.alignment = Qt::AlignRight | Qt::AlignVCenter;
    pages[page].items.push_back(words);
    pages[page].items.push_back(number);
}

} // namespace

std::vector<Page> tablePages(std::span<const TablePage> tables, PaperSize size) {
    std::vector<Page> pages;
    for (const TablePage& table : tables) {
        std::vector<Page> more = Filling(table, size).fill();
        pages.insert(pages.end(),
                     std::make_move_iterator(more.begin()),
                     std::make_move_iterator(more.end()));
    }
    for (std::size_t i = 0; i < pages.size(); ++i) {
        addFoot(tables.front().asOf, i, pages);
    }
    return pages;
}

std::vector<Page> tablePages(const TablePage& table, PaperSize size) {
    return tablePages(std::span(&table, 1), size);
}

QByteArray tablesPdf(std::span<const TablePage> tables, PaperSize size) {
    const std::vector<Page> pages = tablePages(tables, size);
    return paintedPdf({size, true, tables.front().title},
                      static_cast<int>(pages.size()),
                      [&pages](QPainter& painter, int page) {
                          paintPage(painter, pages[static_cast<std::size_t>(page)], kPdfPxPerMm);
                      });
}

QByteArray tablePdf(const TablePage& table, PaperSize size) {
    return tablesPdf(std::span(&table, 1), size);
}

} // namespace bullace::paper
