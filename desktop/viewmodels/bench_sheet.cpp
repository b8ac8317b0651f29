// A row sheet from paper, typed twice.
#include "desk/bench_view_model.hpp"
#include "desk/desk_words.hpp"
#include "desk/word_codes.hpp"
#include "paper/row_code.hpp"
#include "paper/row_sheet.hpp"

#include "quick/field_sign.hpp"

#include <algorithm>

namespace bullace::desk {

using office::PaperTyping;
using quick::FieldSign;
using quick::fromText;
using quick::toText;

void BenchViewModel::askSheet() {
    ask(tr("Scan or type the code at the sheet's head; a row like B2-07 will do"),
        {},
        [this](const QString& text) {
            PaperTyping typing;
            const QString refusal = sheetFor(text, typing);
            if (refusal.isEmpty()) {
                askObserver(std::move(typing));
            }
            return refusal;
        });
}

// The places and columns of the sheet: those of its round, else those that the grid has now.
QString BenchViewModel::sheetFor(const QString& code, PaperTyping& typing) const {
    const vineyard::Catalogue& catalogue = *session_.catalogue();
    const QString head = QStringLiteral("ROW/");
    const auto read =
        paper::readRowCode(toText(code.startsWith(head) ? code : QString(head + code)));
    const vineyard::Block* block = read ? catalogue.block(read->block) : nullptr;
    const vineyard::Row* row = nullptr;
    for (std::size_t i = 0; block != nullptr && i < block->rows.size(); ++i) {
        row = block->rows[i].number == read->row ? &block->rows[i] : row;
    }
    if (row == nullptr) {
        return tr("No row of this station has that code.");
    }
    typing.code = toText(code);
    for (const paper::RowSheetVine& vine :
         paper::vinesOf(catalogue, *block, *row, session_.today(), read->isFromLast)) {
        if (vine.gone.isEmpty()) {
            const std::string number = toText(vine.number);
            const bool isBetween = number.back() >= 'a' && number.back() <= 'z';
            typing.places.push_back(vineyard::writePosition(
                {block->code,
                 row->number,
                 vine.number.left(isBetween ? vine.number.size() - 1 : vine.number.size()).toUInt(),
                 isBetween ? number.back() : '\0'}));
        }
    }
    const walk::Round* round = catalogue.round(read->round);
    for (const std::string& descriptor :
         round != nullptr ? round->descriptors : plan_.descriptors) {
        const vineyard::Asked* one = catalogue.descriptor(descriptor);
        if (one == nullptr || one->known.kind == descriptors::DescriptorKind::Photo) {
            continue;
        }
        const auto wanted = round == nullptr ? std::map<std::string, unsigned>::const_iterator{}
                                             : round->samples.find(descriptor);
        const unsigned samples = round == nullptr                 ? plan_.samples
                                 : wanted == round->samples.end() ? 1
                                                                  : wanted->second;
        for (unsigned sample = 1; sample <= (one->known.isSampled ? samples : 1); ++sample) {
            typing.columns.push_back({descriptor, one->known.isSampled ? sample : 0});
        }
    }
    typing.clear();
    return typing.places.empty()    ? tr("Nothing stands in that row today.")
           : typing.columns.empty() ? tr("Choose the sheet's columns in the list first.")
                                    : QString();
}

void BenchViewModel::askObserver(PaperTyping typing) {
    QStringList codes;
    for (const vineyard::Person& person : session_.catalogue()->people()) {
        codes << fromText(person.code);
    }
    ask(tr("Whose notes are they? The station knows %1").arg(codes.join(QStringLiteral(", "))),
        {},
        [this, typing = std::move(typing)](const QString& text) mutable {
            const auto& people = session_.catalogue()->people();
            const bool isKnown =
                std::any_of(people.begin(), people.end(), [&text](const vineyard::Person& person) {
                    return fromText(person.code) == text;
                });
            if (!isKnown) {
                return tr("Nobody here has that code. People are entered in the collection.");
            }
            typing.observer = toText(text);
            askSheetDay(std::move(typing));
            return QString();
        });
}

void BenchViewModel::askSheetDay(PaperTyping typing) {
    ask(tr("The day on the sheet, like 2026-05-14"),
        fromText(writeDate(plan_.day)),
        [this, typing = std::move(typing)](const QString& text) mutable {
            const auto day = readDate(toText(text));
            if (!day || *day > session_.today()) {
                return tr("A day of the calendar that has come, like 2026-05-14.");
            }
            typing.day = *day;
            beginSheet(std::move(typing));
            return QString();
        });
}

void BenchViewModel::beginSheet(PaperTyping typing) {
    sheet_ = std::move(typing);
    view_ = View::Sheet;
    keepSheet();
    refresh();
}

void BenchViewModel::showSheet() {
    if (sheet_->pass < 2) {
        showPass();
    } else {
        showDifferences();
    }
    offerSheet();
}

void BenchViewModel::showPass() {
    table_.setColumns(tr("The sheet"), columnsFor(sheet_->columns));
    const auto& typed = sheet_->passes[sheet_->pass];
    std::vector<GridRow> rows;
    for (std::size_t i = 0; i < sheet_->places.size(); ++i) {
        GridRow row;
        row.key = fromText(sheet_->places[i]);
        row.cells << row.key << whatStands(sheet_->places[i], sheet_->day);
        for (std::size_t column = 0; column < typed[i].size(); ++column) {
            row.cells << fromText(typed[i][column]);
            row.editable.push_back(static_cast<int>(column) + kPlaceColumns);
        }
        rows.push_back(std::move(row));
    }
    table_.setRows(std::move(rows));
    say(sheet_->pass == 0 ? tr("Row sheet %1, typed once").arg(fromText(sheet_->code))
                          : tr("Row sheet %1, typed again").arg(fromText(sheet_->code)),
        sheet_->pass == 0
            ? tr("Notes of %1 on %2. Type what the paper says; an empty box stays empty.")
                  .arg(personWords(*session_.catalogue(), sheet_->observer),
                       quick::dateWords(sheet_->day))
            : tr("Type the sheet once more, best by somebody else. What was typed first is "
                 "hidden."));
}

void BenchViewModel::showDifferences() {
    differences_ = office::differencesOf(
        *session_.catalogue(), *sheet_, session_.settings().units, codeOfWord);
    table_.setColumns(tr("What differs"),
                      {{tr("Place"), 18},
                       {tr("What"), 26, false, true},
                       {tr("First"), 14},
                       {tr("Second"), 14},
                       {tr("On the paper"), 18}});
    std::vector<GridRow> rows;
    for (const office::PaperDifference& one : differences_) {
        const office::BenchColumn& column = sheet_->columns[one.column];
        QString what = descriptorWords(*session_.catalogue(), column.descriptor);
        if (column.sample > 0) {
            what += QStringLiteral(" ") + QString::number(column.sample);
        }
        GridRow row;
        row.key = QStringLiteral("%1 %2").arg(one.place).arg(one.column);
        row.sign = FieldSign::Open;
        row.signWord = tr("typed in two ways");
        row.cells << fromText(sheet_->places[one.place]) << what
                  << fromText(sheet_->passes[0][one.place][one.column])
                  << fromText(sheet_->passes[1][one.place][one.column]) << QString();
        row.editable = {4};
        rows.push_back(std::move(row));
    }
    const auto count = static_cast<int>(rows.size());
    table_.setRows(std::move(rows));
    say(tr("Row sheet %1, what differs").arg(fromText(sheet_->code)),
        count == 0
            ? tr("Both typings say the same. It can be written.")
            : tr("%n box(es) were typed in two ways. Look at the paper: 1 takes the first, 2 "
                 "the second, or type what it says.",
                 nullptr,
                 count));
}

void BenchViewModel::offerSheet() {
    const bool isComparing = sheet_->pass == 2;
    const bool hasOne = isComparing && table_.current() >= 0 && !differences_.empty();
    actions_.set({{QStringLiteral("next"),
                   sheet_->pass == 0 ? tr("All is typed: once more") : tr("All is typed: compare"),
                   QStringLiteral("N"),
                   !isComparing},
                  {QStringLiteral("first"), tr("The first"), QStringLiteral("1"), hasOne},
                  {QStringLiteral("second"), tr("The second"), QStringLiteral("2"), hasOne},
                  {QStringLiteral("write"),
                   tr("Write it"),
                   QStringLiteral("W"),
                   isComparing && differences_.empty() && !session_.isReadOnly()},
                  {QStringLiteral("drop"), tr("Throw the typing away"), QStringLiteral("X")}});
}

void BenchViewModel::typeSheet(int row, int column, const QString& text) {
    if (sheet_->pass == 2) {
        if (row >= 0 && row < static_cast<int>(differences_.size())) {
            const office::PaperDifference one = differences_[static_cast<std::size_t>(row)];
            for (auto& typed : sheet_->passes) {
                typed[one.place][one.column] = toText(text.trimmed());
            }
            keepSheet();
            showSheet();
        }
        return;
    }
    const auto place = static_cast<std::size_t>(row);
    const auto at = static_cast<std::size_t>(column - kPlaceColumns);
    if (row < 0 || place >= sheet_->places.size() || column < kPlaceColumns ||
        at >= sheet_->columns.size()) {
        return;
    }
    const vineyard::Asked* one = asked(at);
    if (!text.trimmed().isEmpty() && one != nullptr) {
        const auto typed =
            office::readPaper(*one, toText(text), session_.settings().units, codeOfWord);
        if (!typed) {
            session_.fail(typed.error());
            return;
        }
    }
    sheet_->passes[sheet_->pass][place][at] = toText(text.trimmed());
    keepSheet();
    showSheet();
}

void BenchViewModel::takeDifference(int which) {
    const int row = table_.current();
    if (row >= 0 && row < static_cast<int>(differences_.size())) {
        const office::PaperDifference& one = differences_[static_cast<std::size_t>(row)];
        typeSheet(row, 0, fromText(sheet_->passes[which][one.place][one.column]));
    }
}

void BenchViewModel::nextPass() {
    ++sheet_->pass;
    keepSheet();
    table_.setCurrent(-1);
    showSheet();
    table_.setCurrent(table_.next(-1, 1));
}

void BenchViewModel::keepSheet() {
    if (session_.isReadOnly()) {
        return;
    }
    session_.keep([typing = sheet_](store::Database& database) {
        return office::keepTyping(database, typing);
    });
}

void BenchViewModel::writeSheet() {
    session_.write(
        this,
        [catalogue = session_.catalogue(),
         typing = *sheet_,
         units = session_.settings().units,
         &clock =
             session_.clock()](store::Database& database) -> Result<std::vector<journal::Place>> {
            const auto act = office::sheetAct(database, *catalogue, typing, units, codeOfWord);
            auto written = act ? office::perform(database, *act, clock)
                               : Result<std::vector<journal::Place>>(act.error());
            if (written) {
                if (Status kept = office::keepTyping(database, std::nullopt); !kept) {
                    return kept.error();
                }
            }
            return written;
        },
        [this](Result<std::vector<journal::Place>> written) {
            if (!written) {
                session_.fail(written.error());
                return;
            }
            emit session_.told(tr("%n value(s) of the sheet are written, as one act.",
                                  nullptr,
                                  static_cast<int>(written->size())));
            sheet_.reset();
            view_ = View::Grid;
            refresh();
        },
        DeskSession::Touches::Observations);
}

void BenchViewModel::dropSheet() {
    ask(tr("Type \"away\" to throw away what was typed of this sheet"),
        {},
        [this](const QString& text) {
            if (text != tr("away")) {
                return tr("Esc keeps it.");
            }
            sheet_.reset();
            keepSheet();
            view_ = View::Grid;
            refresh();
            return QString();
        });
}

} // namespace bullace::desk
