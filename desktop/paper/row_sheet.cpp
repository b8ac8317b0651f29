#include "paper/row_sheet.hpp"

#include "paper/paper_words.hpp"
#include "paper/row_code.hpp"

#include "core/vineyard/position.hpp"
#include "quick/words.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::paper {

namespace {

constexpr double kEdgeMm = 12;
constexpr double kCodeMm = 30;  // the page's code
constexpr double kRowMm = 9;    // of one vine
constexpr double kBoxMm = 7;    // of one digit; wide enough for a pencil in a glove
constexpr double kMarkMm = 2.4; // room for the decimal mark
constexpr double kSampleGapMm = 3;
constexpr double kColumnGapMm = 3;
constexpr double kVineMm = 13;
constexpr double kWhyMm = 10;
constexpr double kTextMm = 62;      // a line for words
constexpr double kMostTitleMm = 26; // a longer word of a title is set smaller
constexpr double kBlockGapMm = 6;
constexpr double kSmallCapsMm = 1.9;
constexpr double kTextCapsMm = 2.3;
constexpr double kListColumnMm = 62;
constexpr std::size_t kLeastVines = 5; // on a page, or it is not worth one

PageItem itemOf(PageItem::Kind kind, const QRectF& box, double strokeMm = 0.25) {
    PageItem item;
    item.kind = kind;
    item.boxMm = box;
    item.strokeMm = strokeMm;
    return item;
}

PageItem wordsOf(const QRectF& box,
                 const QString& words,
                 double capsMm,
                 bool isBold = false,
                 Qt::Alignment alignment = Qt::AlignLeft | Qt::AlignVCenter) {
    PageItem item;
    item.boxMm = box;
    item.words = words;
    item.capsMm = capsMm;
    item.isBold = isBold;
    item.alignment = alignment;
    return item;
}

double numberMm(const RowSheetQuestion& question) {
    if (question.digits == 0) {
        return kTextMm;
    }
    const int boxes = question.digits + question.decimals + (question.hasSign ? 1 : 0);
    return boxes * kBoxMm + (question.decimals > 0 ? kMarkMm : 0);
}

double questionMm(const RowSheetQuestion& question) {
    const double samples = question.samples;
    const double boxes = samples * numberMm(question) + (samples - 1) * kSampleGapMm;
    double word = 0;
    const QString title = PaperWords::titled(question.title, question.unit);
    for (const QString& part : title.split(QLatin1Char(' '))) {
        word = std::max(word, wordsWidthMm(part, kSmallCapsMm, true));
    }
    return std::max(boxes, std::min(word, kMostTitleMm));
}

// Where everything goes, the same on each page.
class Sheet {
public:
    explicit Sheet(const RowSheet& sheet);
    [[nodiscard]] bool fits() const { return blocks_ > 0 && perBlock_ >= kLeastVines; }
    [[nodiscard]] std::vector<Page> pages();

private:
    void makeFoot();
    double addList(const RowSheetQuestion& question, double y);
    [[nodiscard]] int titleLines(const RowSheetQuestion& question) const;
    [[nodiscard]] double right() const { return size_.width() - kEdgeMm; }
    [[nodiscard]] double wide() const { return size_.width() - 2 * kEdgeMm; }
    void addHead(Page& page, std::size_t number, std::size_t pages) const;
    double addFields(Page& page, double y) const;
    [[nodiscard]] double headFoot() const;
    void addBlock(Page& page, double x, std::size_t first) const;
    void addColumnHeads(Page& page, double x) const;
    void addVine(Page& page, double x, double y, const RowSheetVine& vine) const;
    void addBoxes(Page& page, double x, double y, const RowSheetQuestion& question) const;

    const RowSheet& sheet_;
    QSizeF size_;
    QStringList cautions_;       // wrapped
    std::vector<PageItem> foot_; // from y 0
    double footMm_ = 0;
    double tableTop_ = 0;
    double titlesMm_ = 0;
    double blockMm_ = 0;
    std::size_t blocks_ = 0;
    std::size_t perBlock_ = 0;
};

Sheet::Sheet(const RowSheet& sheet) : sheet_(sheet), size_(sizeMm(sheet.paper)) {
    for (const QString& caution : sheet.cautions) {
        cautions_ << wrappedWords(caution, wide(), kTextCapsMm, true);
    }
    makeFoot();
    int lines = 1;
    blockMm_ = kVineMm + kWhyMm;
    for (const RowSheetQuestion& question : sheet.questions) {
        lines = std::max(lines, titleLines(question));
        blockMm_ += questionMm(question) + kColumnGapMm;
    }
    titlesMm_ = lines * lineMm(kSmallCapsMm) + 1;
    tableTop_ = headFoot();
    const double high = size_.height() - kEdgeMm - footMm_ - tableTop_ - titlesMm_;
    const double across = std::floor((wide() + kBlockGapMm) / (blockMm_ + kBlockGapMm));
    const double down = std::floor(high / kRowMm);
    blocks_ = across > 0 ? static_cast<std::size_t>(across) : 0;
    perBlock_ = down > 0 ? static_cast<std::size_t>(down) : 0;
}

int Sheet::titleLines(const RowSheetQuestion& question) const {
    const QString title = PaperWords::titled(question.title, question.unit);
    const auto lines = wrappedWords(title, questionMm(question), kSmallCapsMm, true);
    return static_cast<int>(lines.size());
}

// The codes of one question in columns, down first.
double Sheet::addList(const RowSheetQuestion& question, double y) {
    foot_.push_back(wordsOf({kEdgeMm, y, wide(), lineMm(kSmallCapsMm)},
                            PaperWords::listOf(question.title),
                            kSmallCapsMm,
                            true));
    y += lineMm(kSmallCapsMm);
    const int columns = static_cast<int>(wide() / kListColumnMm);
    const double column = wide() / columns;
    QStringList lines;
    for (const auto& [code, meaning] : question.codes) {
        const QString words = code == meaning ? code : PaperWords::codeMeans(code, meaning);
        const auto wrapped = wrappedWords(words, column - 3, kSmallCapsMm, false);
        for (qsizetype i = 0; i < wrapped.size(); ++i) {
            lines << (i == 0 ? wrapped[i] : QStringLiteral("     ") + wrapped[i]);
        }
    }
    const auto down = (lines.size() + columns - 1) / columns;
    for (qsizetype i = 0; i < lines.size(); ++i) {
        const double x = kEdgeMm + static_cast<double>(i / down) * column;
        const double top = y + static_cast<double>(i % down) * lineMm(kSmallCapsMm);
        foot_.push_back(wordsOf({x, top, column, lineMm(kSmallCapsMm)}, lines[i], kSmallCapsMm));
    }
    return y + static_cast<double>(down) * lineMm(kSmallCapsMm) + 1;
}

void Sheet::makeFoot() {
    double y = 2;
    foot_.push_back(itemOf(PageItem::Line, QRectF(kEdgeMm, y, wide(), 0)));
    y += 1.5;
    for (const RowSheetQuestion& question : sheet_.questions) {
        y = question.codes.empty() ? y : addList(question, y);
    }
    for (const QString& help :
         {PaperWords::whyHelp(), PaperWords::fillHelp(), PaperWords::paperSheet()}) {
        const QStringList lines = wrappedWords(help, wide(), kSmallCapsMm, false);
        for (const QString& line : lines) {
            foot_.push_back(
                wordsOf({kEdgeMm, y, wide(), lineMm(kSmallCapsMm)}, line, kSmallCapsMm));
            y += lineMm(kSmallCapsMm);
        }
    }
    footMm_ = y;
}

// Below the head: the code's foot, or that of cautions and fields.
double Sheet::headFoot() const {
    const double cautions = static_cast<double>(cautions_.size()) * lineMm(kTextCapsMm);
    return kEdgeMm + kCodeMm + 4 + 16 + cautions + 3;
}

void Sheet::addHead(Page& page, std::size_t number, std::size_t pages) const {
    const double words = wide() - kCodeMm - 4;
    const QString title = PaperWords::blockRow(quick::fromText(sheet_.block), sheet_.row);
    const double caps = fittingCapsMm(title, words, 3, 6.5, true);
    double y = kEdgeMm;
    const auto say = [&](const QString& text, double capsMm, bool isBold) {
        const double fitting = fittingCapsMm(text, words, 1.2, capsMm, isBold);
        page.items.push_back(wordsOf({kEdgeMm, y, words, lineMm(capsMm)}, text, fitting, isBold));
        y += lineMm(capsMm);
    };
    say(title, caps, true);
    if (!sheet_.roundTitle.isEmpty()) {
        say(sheet_.roundTitle, kTextCapsMm + 0.3, true);
    }
    say(PaperWords::walkedFrom(sheet_.vines.front().number, sheet_.vines.back().number),
        kTextCapsMm,
        false);
    say(PaperWords::pageOf(static_cast<int>(number), static_cast<int>(pages)), kTextCapsMm, false);

    RowCode code{
        sheet_.block, sheet_.row, sheet_.isFromLast, static_cast<unsigned>(number), sheet_.round};
    const QString text = quick::fromText(writeRowCode(code));
    PageItem picture = itemOf(PageItem::Code, {right() - kCodeMm, kEdgeMm, kCodeMm, kCodeMm});
    picture.words = text;
    page.items.push_back(picture);
    page.items.push_back(wordsOf({right() - kCodeMm - 30, kEdgeMm + kCodeMm, kCodeMm + 30, 3.2},
                                 text,
                                 fittingCapsMm(text, kCodeMm + 30, 0.8, kSmallCapsMm, false),
                                 false,
                                 Qt::AlignRight | Qt::AlignVCenter));
    y = addFields(page, kEdgeMm + kCodeMm + 4);
    for (const QString& line : cautions_) {
        page.items.push_back(
            wordsOf({kEdgeMm, y, wide(), lineMm(kTextCapsMm)}, line, kTextCapsMm, true));
        y += lineMm(kTextCapsMm);
    }
}

// Observer, date, and at which end the walk began.
double Sheet::addFields(Page& page, double y) const {
    const double boxTop = y + lineMm(kSmallCapsMm) + 0.5;
    double x = kEdgeMm;
    const auto boxes = [&](int count) {
        for (int i = 0; i < count; ++i, x += kBoxMm) {
            page.items.push_back(itemOf(PageItem::Frame, {x, boxTop, kBoxMm, 8}, 0.35));
        }
    };
    const auto title = [&](const QString& text, double roomMm) {
        const double caps = fittingCapsMm(text, roomMm, 1.2, kSmallCapsMm, false);
        page.items.push_back(wordsOf({x, y, roomMm, lineMm(kSmallCapsMm)}, text, caps));
    };
    title(PaperWords::observer(), 4 * kBoxMm + 2);
    boxes(4);
    x += 8;
    title(PaperWords::date(), 8 * kBoxMm + 8);
    boxes(4);
    for (int part = 0; part < 2; ++part) {
        x += 1;
        page.items.push_back(itemOf(PageItem::Line, {x, boxTop + 4, 2, 0}, 0.35));
        x += 3;
        boxes(2);
    }
    x += 8;
    const auto number = [](const RowSheetVine& vine) { return vine.number; };
    double tick = y + 1.5;
    for (const QString& vine : {number(sheet_.vines.front()), number(sheet_.vines.back())}) {
        page.items.push_back(itemOf(PageItem::Frame, {x, tick, 4.5, 4.5}, 0.35));
        const QString words = PaperWords::began(vine);
        const double room = right() - x - 7;
        page.items.push_back(wordsOf({x + 6.5, tick, room, 4.5},
                                     words,
                                     fittingCapsMm(words, room, 1.2, kTextCapsMm, false)));
        tick += 6.2;
    }
    return y + 16;
}

void Sheet::addColumnHeads(Page& page, double x) const {
    const double foot = tableTop_ + titlesMm_ - 0.7;
    const auto head = [&](const QString& words, double left, double roomMm, bool isBold) {
        const QStringList lines = wrappedWords(words, roomMm, kSmallCapsMm, isBold);
        double y = foot - static_cast<double>(lines.size()) * lineMm(kSmallCapsMm);
        for (const QString& line : lines) {
            const double caps = fittingCapsMm(line, roomMm, 1.1, kSmallCapsMm, isBold);
            page.items.push_back(
                wordsOf({left, y, roomMm, lineMm(kSmallCapsMm)}, line, caps, isBold));
            y += lineMm(kSmallCapsMm);
        }
    };
    head(PaperWords::vineHead(), x, kVineMm - 1, false);
    double left = x + kVineMm;
    for (const RowSheetQuestion& question : sheet_.questions) {
        const QString title = PaperWords::titled(question.title, question.unit);
        head(title, left, questionMm(question), true);
        left += questionMm(question) + kColumnGapMm;
    }
    const QString why = PaperWords::whyHead();
    page.items.push_back(wordsOf({left, foot - lineMm(kSmallCapsMm), kWhyMm, lineMm(kSmallCapsMm)},
                                 why,
                                 fittingCapsMm(why, kWhyMm, 1.1, kSmallCapsMm, false)));
}

void Sheet::addBoxes(Page& page, double x, double y, const RowSheetQuestion& question) const {
    if (question.digits == 0) {
        page.items.push_back(itemOf(PageItem::Line, {x, y + kBoxMm, kTextMm, 0}, 0.3));
        return;
    }
    const int whole = question.digits + (question.hasSign ? 1 : 0);
    for (int sample = 0; sample < question.samples; ++sample) {
        double left = x + sample * (numberMm(question) + kSampleGapMm);
        for (int i = 0; i < whole + question.decimals; ++i) {
            if (i == whole) {
                page.items.push_back(itemOf(
                    PageItem::Fill, {left + kMarkMm / 2 - 0.45, y + kBoxMm - 0.9, 0.9, 0.9}));
                left += kMarkMm;
            }
            page.items.push_back(itemOf(PageItem::Frame, {left, y, kBoxMm, kBoxMm}, 0.3));
            left += kBoxMm;
        }
    }
}

void Sheet::addVine(Page& page, double x, double y, const RowSheetVine& vine) const {
    const QRectF number(x, y, kVineMm - 2, kBoxMm);
    const double caps = fittingCapsMm(vine.number, number.width(), 1.5, 3.4, true);
    page.items.push_back(
        wordsOf(number, vine.number, caps, true, Qt::AlignRight | Qt::AlignVCenter));
    double left = x + kVineMm;
    if (!vine.gone.isEmpty()) {
        const double room = blockMm_ - kVineMm;
        const double fitting = fittingCapsMm(vine.gone, room, 1.2, kTextCapsMm, false);
        page.items.push_back(wordsOf({left, y, room, kBoxMm}, vine.gone, fitting));
        return;
    }
    for (const RowSheetQuestion& question : sheet_.questions) {
        addBoxes(page, left, y, question);
        left += questionMm(question) + kColumnGapMm;
    }
    PageItem why = itemOf(PageItem::Frame, {left + 1, y, kBoxMm, kBoxMm}, 0.3);
    why.isDashed = true;
    page.items.push_back(why);
}

void Sheet::addBlock(Page& page, double x, std::size_t first) const {
    addColumnHeads(page, x);
    const std::size_t behind = std::min(first + perBlock_, sheet_.vines.size());
    for (std::size_t i = first; i < behind; ++i) {
        const double y = tableTop_ + titlesMm_ + static_cast<double>(i - first) * kRowMm;
        addVine(page, x, y, sheet_.vines[i]);
        if ((i - first) % 5 == 4 && i + 1 < behind) { // the eye keeps its row
            page.items.push_back(
                itemOf(PageItem::Line, QRectF(x, y + kBoxMm + 1, blockMm_, 0), 0.15));
        }
    }
}

std::vector<Page> Sheet::pages() {
    const std::size_t perPage = blocks_ * perBlock_;
    const std::size_t count = (sheet_.vines.size() + perPage - 1) / perPage;
    std::vector<Page> pages;
    for (std::size_t number = 0; number < count; ++number) {
        Page page{sheet_.paper, {}};
        addHead(page, number + 1, count);
        for (std::size_t block = 0; block < blocks_; ++block) {
            const std::size_t first = number * perPage + block * perBlock_;
            if (first < sheet_.vines.size()) {
                addBlock(
                    page, kEdgeMm + static_cast<double>(block) * (blockMm_ + kBlockGapMm), first);
            }
        }
        for (PageItem item : foot_) {
            item.boxMm.translate(0, size_.height() - kEdgeMm - footMm_);
            page.items.push_back(item);
        }
        pages.push_back(std::move(page));
    }
    return pages;
}

Error refused(const QString& words) {
    return {ErrorCode::InvalidInput, quick::toText(words), {}};
}

} // namespace

Result<std::vector<Page>> rowSheetPages(const RowSheet& sheet) {
    if (!vineyard::readPosition(vineyard::writePosition({sheet.block, sheet.row, 1, 0}))) {
        return refused(PaperWords::noPosition(quick::fromText(sheet.block)));
    }
    if (sheet.vines.empty()) {
        return refused(PaperWords::noVines());
    }
    if (sheet.questions.empty()) {
        return refused(PaperWords::noQuestions());
    }
    Sheet made(sheet);
    if (!made.fits()) {
        return refused(PaperWords::tooManyBoxes());
    }
    return made.pages();
}

} // namespace bullace::paper
