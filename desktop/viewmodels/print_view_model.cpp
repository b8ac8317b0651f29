#include "desk/print_view_model.hpp"

#include "desk/desk_words.hpp"
#include "office/typed_value.hpp"
#include "paper/pdf.hpp"

#include "quick/field_sign.hpp"

#include <QLocale>

#include <algorithm>
#include <cmath>

namespace bullace::desk {

using paper::LabelKind;
using quick::FieldSign;
using quick::fromText;
using quick::toText;

namespace {

constexpr double kMostOffsetMm = 20;

const std::optional<LabelKind> kKinds[] = {LabelKind::Vine,
                                           LabelKind::RowEnd,
                                           LabelKind::WalkStrip,
                                           LabelKind::Bag,
                                           LabelKind::Vial,
                                           LabelKind::SeedLot,
                                           LabelKind::Pot,
                                           std::nullopt};

} // namespace

PrintViewModel::PrintViewModel(DeskSession& session, QObject* parent) : DeskPage(session, parent) {
    wish_.descriptors = {"stage", "clusters"};
}

QString PrintViewModel::help() const {
    return tr(
        "Choose what is printed and of what; P writes a PDF. Print it at 100 percent. T writes a "
        "test page first: laid over a sheet of labels it shows by how much this printer is off, "
        "which is typed here and taken off from then on. A vine without a label code gets one "
        "when the file is written; the code names the place, not the vine that stands there. Row "
        "sheets are for the day a tablet dies; they are typed in at the bench, twice.");
}

void PrintViewModel::begin(const QString& of) {
    if (!of.isEmpty()) {
        wish_.of = toText(of);
    }
}

QString PrintViewModel::kindWords(const std::optional<LabelKind>& kind) const {
    if (!kind) {
        return tr("Row sheets on paper");
    }
    switch (*kind) {
    case LabelKind::Vine:
        return tr("Labels for vines");
    case LabelKind::RowEnd:
        return tr("Labels for row ends");
    case LabelKind::WalkStrip:
        return tr("A strip to carry along a row");
    case LabelKind::Bag:
        return tr("Labels for bags");
    case LabelKind::Vial:
        return tr("Labels for vials");
    case LabelKind::SeedLot:
        return tr("Labels for seed lots");
    case LabelKind::Pot:
        return tr("Labels for pots");
    }
    return {};
}

void PrintViewModel::refresh() {
    wish_.size = session_.settings().isA4 ? paper::PaperSize::A4 : paper::PaperSize::Letter;
    showList();
    showFacts();
    offer();
}

void PrintViewModel::showList() {
    table_.setColumns(tr("What is printed"), {{tr("What"), 34}, {tr("Now"), 34, false, true}});
    std::vector<GridRow> rows;
    const auto add = [&rows](const QString& key, const QString& label, const QString& now) {
        GridRow row;
        row.key = key;
        row.cells << label << now;
        rows.push_back(std::move(row));
    };
    int number = 0;
    for (const auto& kind : kKinds) {
        GridRow row;
        row.key = QStringLiteral("kind %1").arg(number++);
        row.isStrong = kind == wish_.kind;
        row.sign = row.isStrong ? FieldSign::Done : -1;
        row.signWord = row.isStrong ? tr("chosen") : QString();
        row.cells << kindWords(kind) << QString();
        rows.push_back(std::move(row));
    }
    rows.push_back(headingRow(tr("Of what"), QStringLiteral("heading of")));
    add(QStringLiteral("of"), tr("Of"), wish_.of.empty() ? tr("nothing yet") : fromText(wish_.of));
    const bool hasOwnColumns = !wish_.kind && session_.catalogue()->round(wish_.of) == nullptr;
    if (hasOwnColumns) {
        QStringList columns;
        for (const std::string& code : wish_.descriptors) {
            columns << descriptorWords(*session_.catalogue(), code);
        }
        add(QStringLiteral("columns"), tr("Columns"), columns.join(QStringLiteral(", ")));
    }
    if (!wish_.kind) {
        add(QStringLiteral("end"),
            tr("Walked from"),
            wish_.isFromLast ? tr("the last vine") : tr("the first vine"));
    }
    rows.push_back(headingRow(tr("Paper"), QStringLiteral("heading paper")));
    add(QStringLiteral("paper"),
        tr("Size"),
        wish_.size == paper::PaperSize::A4 ? QStringLiteral("A4") : QStringLiteral("Letter"));
    if (wish_.kind) {
        add(QStringLiteral("first"),
            tr("First free label of the sheet"),
            QString::number(wish_.firstFree));
        add(QStringLiteral("offset"),
            tr("This printer is off by"),
            tr("%1 mm to the right, %2 mm down")
                .arg(QLocale().toString(wish_.printerOffset.x()),
                     QLocale().toString(wish_.printerOffset.y())));
    }
    table_.setRows(std::move(rows));
}

void PrintViewModel::showFacts() {
    const vineyard::Catalogue& catalogue = *session_.catalogue();
    facts_.setColumns(tr("What it makes"), {{{}, 16}, {{}, 22, false, true}});
    std::vector<GridRow> rows;
    QString words = tr("Choose of what it is printed: Enter on that line.");
    const auto add = [&rows](const QString& label, const QString& text) {
        GridRow row;
        row.cells << label << text;
        rows.push_back(std::move(row));
    };
    if (!wish_.of.empty()) {
        const auto places = placesFor(catalogue, wish_, session_.today());
        if (!places) {
            words = quick::errorWords(places.error());
        } else if (!wish_.kind || *wish_.kind == LabelKind::RowEnd) {
            words = tr("%n row(s).", nullptr, static_cast<int>(places->size()));
        } else {
            const auto labels = office::labelsOf(catalogue, *places);
            const auto without =
                std::count_if(labels.begin(), labels.end(), [](const office::Labelled& one) {
                    return one.code.empty();
                });
            words = tr("%n label(s).", nullptr, static_cast<int>(labels.size()));
            add(tr("Without a code"),
                without == 0 ? tr("none")
                             : tr("%n, which get one when the file is written",
                                  nullptr,
                                  static_cast<int>(without)));
        }
    }
    facts_.setRows(std::move(rows));
    say(tr("Labels and row sheets"), words);
}

void PrintViewModel::offer() {
    actions_.set({{QStringLiteral("of"), tr("Of what"), QStringLiteral("O")},
                  {QStringLiteral("pdf"),
                   tr("Write the PDF"),
                   QStringLiteral("P"),
                   placesFor(*session_.catalogue(), wish_, session_.today()).ok()},
                  {QStringLiteral("test"),
                   tr("Write a test page"),
                   QStringLiteral("T"),
                   wish_.kind.has_value()}});
}

void PrintViewModel::open(int row) {
    table_.setCurrent(row);
    change(table_.currentKey());
}

void PrintViewModel::change(const QString& key) {
    if (key.startsWith(QStringLiteral("kind "))) {
        wish_.kind = kKinds[key.mid(5).toInt()];
        wish_.firstFree = 1;
        refresh();
    } else if (key == QStringLiteral("of")) {
        askOf();
    } else if (key == QStringLiteral("columns")) {
        askColumns();
    } else if (key == QStringLiteral("end")) {
        wish_.isFromLast = !wish_.isFromLast;
        refresh();
    } else if (key == QStringLiteral("paper")) {
        DeskSettings settings = session_.settings();
        settings.isA4 = !settings.isA4;
        session_.change(std::move(settings));
        refresh();
    } else if (key == QStringLiteral("first")) {
        askFirstFree();
    } else if (key == QStringLiteral("offset")) {
        askOffset();
    }
}

void PrintViewModel::askOf() {
    ask(wish_.kind && *wish_.kind != LabelKind::RowEnd
            ? tr("A block, a row like B2-07, a run, an accession; of lots a lot, or a kind like "
                 "juice")
            : tr("A block, a row like B2-07, or a round"),
        fromText(wish_.of),
        [this](const QString& text) {
            PrintWish asked = wish_;
            asked.of = toText(text);
            const auto places = placesFor(*session_.catalogue(), asked, session_.today());
            if (!places) {
                return quick::errorWords(places.error());
            }
            wish_ = std::move(asked);
            refresh();
            return QString();
        });
}

void PrintViewModel::askColumns() {
    QStringList now;
    for (const std::string& code : wish_.descriptors) {
        now << fromText(code);
    }
    ask(tr("The codes of the descriptors, with commas between: stage, clusters"),
        now.join(QStringLiteral(", ")),
        [this](const QString& text) {
            std::vector<std::string> codes;
            for (const QString& part : text.split(QLatin1Char(','), Qt::SkipEmptyParts)) {
                codes.push_back(toText(part.trimmed()));
                if (session_.catalogue()->descriptor(codes.back()) == nullptr) {
                    return tr("Nobody here knows the descriptor %1.").arg(part.trimmed());
                }
            }
            if (codes.empty()) {
                return tr("At least one descriptor.");
            }
            wish_.descriptors = std::move(codes);
            refresh();
            return QString();
        });
}

void PrintViewModel::askFirstFree() {
    const paper::LabelSheet sheet = paper::usualSheet(*wish_.kind, wish_.size);
    const int cells = sheet.columns * sheet.rows;
    ask(tr("The first free label of the sheet, along its lines, from 1 to %1").arg(cells),
        QString::number(wish_.firstFree),
        [this, cells](const QString& text) {
            const int first = text.toInt();
            if (first < 1 || first > cells) {
                return tr("A whole number from 1 to %1.").arg(cells);
            }
            wish_.firstFree = first;
            refresh();
            return QString();
        });
}

void PrintViewModel::askOffset() {
    ask(tr("By how many mm this printer prints too far to the right and down: 1.5 0"),
        QStringLiteral("%1 %2").arg(wish_.printerOffset.x()).arg(wish_.printerOffset.y()),
        [this](const QString& text) {
            const QStringList parts = text.split(QLatin1Char(' '), Qt::SkipEmptyParts);
            const auto right = office::readTypedNumber(toText(parts.value(0)));
            const auto down = office::readTypedNumber(toText(parts.value(1)));
            if (parts.size() != 2 || !right || !down || std::abs(*right) > kMostOffsetMm ||
                std::abs(*down) > kMostOffsetMm) {
                return tr("Two numbers in mm, at most %1 each, like 1.5 0.").arg(kMostOffsetMm);
            }
            wish_.printerOffset = QPointF(*right, *down);
            refresh();
            return QString();
        });
}

void PrintViewModel::act(const QString& id) {
    if (id == QStringLiteral("of")) {
        askOf();
    } else if (id == QStringLiteral("pdf")) {
        askPdf();
    } else if (id == QStringLiteral("test")) {
        writeTest();
    }
}

void PrintViewModel::askPdf() {
    QString of = fromText(wish_.of);
    of.replace(QLatin1Char(' '), QLatin1Char('_'));
    const QString name =
        (wish_.kind ? QStringLiteral("labels-%1.pdf") : QStringLiteral("row-sheets-%1.pdf"))
            .arg(of);
    askPath(tr("The file"), name, [this](const QString& path) {
        write(path);
        return QString();
    });
}

void PrintViewModel::writeTest() {
    paper::LabelSheet sheet = paper::usualSheet(*wish_.kind, wish_.size);
    askPath(tr("The file"), QStringLiteral("test-page.pdf"), [this, sheet](const QString& path) {
        writePages(path, std::vector<paper::Page>{paper::testPage(sheet)});
        return QString();
    });
}

void PrintViewModel::writePages(const QString& path, Result<std::vector<paper::Page>> pages) {
    const Status written =
        pages ? paper::writePdf(path, *pages, kindWords(wish_.kind)) : Status(pages.error());
    if (!written) {
        session_.fail(written.error());
        return;
    }
    emit session_.told(
        tr("%n page(s) in %1. Print at 100 percent.", nullptr, static_cast<int>(pages->size()))
            .arg(path));
}

void PrintViewModel::write(const QString& path) {
    const vineyard::Catalogue& catalogue = *session_.catalogue();
    if (!wish_.kind || *wish_.kind == LabelKind::RowEnd) {
        writePages(path,
                   wish_.kind ? labelPagesFor(catalogue, wish_, {})
                              : sheetPagesFor(catalogue, wish_, session_.today()));
        return;
    }
    const auto places = placesFor(catalogue, wish_, session_.today());
    if (!places) {
        session_.fail(places.error());
        return;
    }
    office::NewLabels labels = office::giveLabels(catalogue,
                                                  office::labelsOf(catalogue, *places),
                                                  session_.desk()->about().own.device,
                                                  session_.author());
    if (labels.act.drafts.empty()) {
        writePages(path, labelPagesFor(catalogue, wish_, labels.all));
        return;
    }
    if (!isSomebodyThere()) {
        return;
    }
    // Printed only once the codes are kept: a label that nobody knows helps nobody.
    session_.perform(this,
                     labels.act,
                     [this, path, all = labels.all](Result<std::vector<journal::Place>> written) {
                         if (!written) {
                             session_.fail(written.error());
                             return;
                         }
                         writePages(path, labelPagesFor(*session_.catalogue(), wish_, all));
                     });
}

} // namespace bullace::desk
