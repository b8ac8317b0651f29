// How one label is laid out: the code above its letters or beside them, whichever leaves the code
// more room.
#include "paper/label_sheet.hpp"
#include "paper/paper_words.hpp"

#include "quick/qr_code.hpp"
#include "quick/words.hpp"

#include <QRegularExpression>

#include <algorithm>
#include <array>

namespace bullace::paper {

namespace {

constexpr double kPaddingMm = 1.2;
constexpr double kLeastModuleMm = 0.4;
constexpr double kGreatestCodeMm = 40; // a larger one is read no better from where a person stands
constexpr double kRoomShare = 1.06;    // grown letters leave some room beside them
constexpr double kGapShare = 1.4; // from one line of the code's letters to the next, in capitals

// What can be chosen, and what it gives.
struct Arrangement {
    bool isBeside = false;
    QStringList typed; // lines
    QStringList words; // lines
    double typedCapsMm = 0;
    double wordsCapsMm = 0;
    double codeMm = 0; // side of the code; 0 where it cannot be
    double textMm = 0; // height of all lines
};

struct Sizes {
    double typed; // least capitals
    double most;  // greatest ones
    double wordsLeast;
    double wordsMost;
};

Sizes sizesOf(LabelKind kind) {
    const double least = leastCodeCapsMm(kind);
    switch (kind) {
    case LabelKind::Vine:
    case LabelKind::RowEnd:
        return {least, 1.25 * least, 2.2, 3.4};
    case LabelKind::Vial:
        return {least, 2.6, 1.2, 1.7};
    case LabelKind::WalkStrip:
        return {least, 3.2, 1.8, 2.6};
    case LabelKind::Bag:
    case LabelKind::SeedLot:
    case LabelKind::Pot:
        break;
    }
    return {least, 5.5, 1.6, 2.4};
}

double widest(const QStringList& lines, double capsMm) {
    double width = 0;
    for (const QString& line : lines) {
        width = std::max(width, wordsWidthMm(line, capsMm, true));
    }
    return width;
}

// Words at the greatest size at which each of them needs one line, else wrapped at the least.
void setWords(Arrangement& made, const Label& label, const Sizes& sizes, double roomMm) {
    made.wordsCapsMm = sizes.wordsMost;
    for (const QString& line : label.words) {
        made.wordsCapsMm = std::min(
            made.wordsCapsMm, fittingCapsMm(line, roomMm, sizes.wordsLeast, sizes.wordsMost, true));
    }
    for (const QString& line : label.words) {
        made.words << wrappedWords(line, roomMm, made.wordsCapsMm, true);
    }
}

double typedHeight(const Arrangement& made) {
    return static_cast<double>(made.typed.size()) * kGapShare * made.typedCapsMm;
}

double textHeight(const Arrangement& made) {
    const auto words = static_cast<double>(made.words.size());
    return typedHeight(made) + words * lineMm(made.wordsCapsMm);
}

// Lines of words that do not fit are left out, from the last on: the code is what counts.
void dropWords(Arrangement& made, double heightMm) {
    while (!made.words.isEmpty() && textHeight(made) > heightMm) {
        made.words.removeLast();
    }
    made.textMm = textHeight(made);
}

Arrangement above(const Label& label, const Sizes& sizes, QStringList typed, QSizeF room) {
    Arrangement made;
    made.typed = std::move(typed);
    made.typedCapsMm = sizes.typed;
    if (widest(made.typed, sizes.typed) > room.width()) {
        return made;
    }
    setWords(made, label, sizes, room.width());
    dropWords(made, room.height() / 2 + typedHeight(made) / 2);
    made.codeMm = std::min({room.width(), room.height() - made.textMm, kGreatestCodeMm});
    return made;
}

Arrangement beside(const Label& label, const Sizes& sizes, QStringList typed, QSizeF room) {
    Arrangement made;
    made.isBeside = true;
    made.typed = std::move(typed);
    made.typedCapsMm = sizes.typed;
    const double text = widest(made.typed, sizes.typed);
    const double code = std::min({room.height(), room.width() - text - 0.5, kGreatestCodeMm});
    if (code <= 0 || typedHeight(made) > room.height()) {
        return made;
    }
    setWords(made, label, sizes, room.width() - code - 0.5);
    dropWords(made, room.height());
    made.codeMm = code;
    return made;
}

Arrangement bestOf(const Label& label, const Sizes& sizes, QSizeF room) {
    const QStringList typed = label.typable.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    const Arrangement one = above(label, sizes, typed, room);
    const Arrangement other = beside(label, sizes, typed, room);
    return one.codeMm >= other.codeMm ? one : other;
}

PageItem wordsItem(const QString& words, const QRectF& boxMm, double capsMm, bool isBeside) {
    PageItem item;
    item.boxMm = boxMm;
    item.words = words;
    item.capsMm = capsMm;
    item.isBold = true;
    item.alignment = (isBeside ? Qt::AlignLeft : Qt::AlignHCenter) | Qt::AlignVCenter;
    return item;
}

// Letters grow into the room that is left, by as much as the widest code's could.
void grow(Arrangement& made, const Label& label, const Sizes& sizes, const QRectF& room) {
    QStringList lines = made.typed;
    if (label.kind != LabelKind::RowEnd) {
        for (QString& line : lines) {
            line.replace(QRegularExpression(QStringLiteral("\\w")), QStringLiteral("W"));
        }
    }
    const double wide = widest(lines, 1) * kRoomShare;
    const double words = made.textMm - typedHeight(made);
    const double high = static_cast<double>(lines.size()) * kGapShare;
    const double most = std::min({sizes.most, room.width() / wide, (room.height() - words) / high});
    made.typedCapsMm = std::max(made.typedCapsMm, most);
    made.textMm = textHeight(made);
}

std::vector<PageItem>
itemsOf(Arrangement made, const Label& label, const Sizes& sizes, const QRectF& room) {
    const double code = made.codeMm;
    QRectF text = made.isBeside ? room.adjusted(code + 0.5, 0, 0, 0) : room.adjusted(0, code, 0, 0);
    grow(made, label, sizes, text);
    const double spare = std::max(0.0, room.height() - (made.isBeside ? 0 : code) - made.textMm);
    PageItem picture;
    picture.kind = PageItem::Code;
    picture.words = quick::fromText(label.code);
    picture.boxMm = made.isBeside
                        ? QRectF(room.left(), room.center().y() - code / 2, code, code)
                        : QRectF(room.center().x() - code / 2, room.top() + spare / 3, code, code);
    std::vector<PageItem> items{picture};
    double y = made.isBeside ? text.top() + spare / 2 : picture.boxMm.bottom() + spare / 3;
    const auto add = [&](const QString& words, double capsMm, double heightMm) {
        const QRectF box(text.left(), y, text.width(), heightMm);
        items.push_back(wordsItem(words, box, capsMm, made.isBeside));
        y += heightMm;
    };
    for (const QString& line : std::as_const(made.typed)) {
        add(line, made.typedCapsMm, kGapShare * made.typedCapsMm);
    }
    for (const QString& line : std::as_const(made.words)) {
        add(line, made.wordsCapsMm, lineMm(made.wordsCapsMm));
    }
    return items;
}

} // namespace

double leastCodeCapsMm(LabelKind kind) {
    constexpr std::array<double, kLabelKinds> kLeast{8, 10, 4, 2, 4, 4, 2.5};
    return kLeast[static_cast<std::size_t>(kind)];
}

Result<std::vector<PageItem>> labelItems(const Label& label, const QRectF& boxMm) {
    const Sizes sizes = sizesOf(label.kind);
    const QRectF room = boxMm.adjusted(kPaddingMm, kPaddingMm, -kPaddingMm, -kPaddingMm);
    const Arrangement best = bestOf(label, sizes, room.size());
    if (best.codeMm <= 0) {
        const QString words = PaperWords::codeTooWide(label.typable, sizes.typed);
        return Error{ErrorCode::InvalidInput, quick::toText(words), {}};
    }
    const int modules = quick::qrPicture(label.code, 1).width();
    if (modules == 0 || best.codeMm / modules < kLeastModuleMm) {
        const QString words = PaperWords::codeTooSmall(label.typable);
        return Error{ErrorCode::InvalidInput, quick::toText(words), {}};
    }
    return itemsOf(best, label, sizes, room);
}

} // namespace bullace::paper
