#include "desk/map_view_model.hpp"

#include "desk/desk_words.hpp"
#include "office/station_findings.hpp"
#include "paper/map_page.hpp"
#include "paper/pdf.hpp"

#include "quick/field_sign.hpp"

#include <QDateTime>
#include <QLocale>

#include <algorithm>

namespace bullace::desk {

using quick::FieldSign;
using quick::fromText;
using quick::toText;

namespace {

// What a line of the list chooses; its key says which: "what clusters".
const QString kBlock = QStringLiteral("block");
const QString kWhat = QStringLiteral("what");
const QString kSeason = QStringLiteral("season");
const QString kDay = QStringLiteral("day");
const QString kFindings = QStringLiteral("!findings"); // no descriptor is called so

} // namespace

MapViewModel::MapViewModel(DeskSession& session, QObject* parent) : DeskPage(session, parent) {
    connect(&session_, &DeskSession::deskChanged, this, [this] {
        hasBegun_ = false;
        isOnFindings_ = false;
        read_ = {};
    });
}

QString MapViewModel::help() const {
    return tr(
        "Rows and vines stand as they are planted. The list chooses the block, what is shown, the "
        "season and the day; Enter takes a line. D shows by how much each vine changed since it "
        "was noted before. Tab goes to the map: arrows move from vine to vine, Enter opens the "
        "vine, + and - change the size, 0 shows all. P writes the map as a page to print.");
}

// The first block, and what was noted there last.
void MapViewModel::begin() {
    hasBegun_ = true;
    wish_ = {};
    wish_.season = static_cast<int>(session_.today().year());
    const auto& blocks = session_.catalogue()->blocks();
    wish_.block = blocks.empty() ? std::string{} : blocks.front().code;
}

void MapViewModel::refresh() {
    if (!hasBegun_ && !session_.catalogue()->blocks().empty()) {
        begin();
    }
    token_.cancel();
    token_ = {};
    session_.read(
        this,
        office::Lane::Background,
        token_,
        [catalogue = session_.catalogue(),
         wish = wish_,
         withFindings = isOnFindings_,
         today = session_.today(),
         token = token_](store::Database& database) -> Result<Read> {
            Read read;
            auto values = office::readBlockValues(database, *catalogue, wish, today, token);
            if (!values) {
                return values.error();
            }
            read.values = std::move(*values);
            for (const vineyard::Block& block : catalogue->blocks()) {
                if (!withFindings || (!wish.block.empty() && wish.block != block.code)) {
                    continue;
                }
                auto found = office::blockFindings(database, *catalogue, block.code, today, token);
                if (!found) {
                    return found.error();
                }
                std::move(found->begin(), found->end(), std::back_inserter(read.findings));
            }
            return read;
        },
        [this](Read read) {
            read_ = std::move(read);
            show();
        });
    if (read_.values.rows.empty()) {
        say(tr("Map"), tr("The block is being read …"));
        offer();
    }
}

void MapViewModel::leave() {
    token_.cancel();
}

void MapViewModel::show() {
    const office::BlockValues& values = read_.values;
    // Nothing was chosen yet: what was noted most often in the block, in its last season.
    if (wish_.descriptor.empty() && !isOnFindings_ && !values.noted.empty()) {
        const auto most = std::max_element(values.noted.begin(),
                                           values.noted.end(),
                                           [](auto& a, auto& b) { return a.second < b.second; });
        wish_.descriptor = most->first;
        refresh();
        return;
    }
    // A season without a value of it shows nothing: the last one that has some.
    if (!isOnFindings_ && !values.seasons.empty() &&
        std::find(values.seasons.begin(), values.seasons.end(), wish_.season) ==
            values.seasons.end()) {
        wish_.season = values.seasons.front();
        wish_.visit.reset();
        refresh();
        return;
    }
    const vineyard::Asked* asked = session_.catalogue()->descriptor(wish_.descriptor);
    quick::BlockMapPicture picture =
        isOnFindings_ ? findingPicture(values, read_.findings, wish_)
                      : valuePicture(values, asked, wish_, session_.settings().units);
    const int vines = quick::countsOf(picture).cells;
    say(tr("Map"),
        values.rows.empty() ? tr("The station has no blocks yet: they are made in the collection.")
                            : tr("%1. %n place(s).", nullptr, vines).arg(picture.title));
    picture.title.clear(); // said above the map
    map_.setPicture(std::move(picture));
    showChoices();
    offer();
}

void MapViewModel::addChoice(std::vector<GridRow>& rows,
                             const QString& key,
                             const QString& text,
                             bool isChosen) const {
    GridRow row;
    row.key = key;
    row.sign = isChosen ? FieldSign::Done : -1;
    row.signWord = isChosen ? tr("chosen") : QString();
    row.isStrong = isChosen;
    row.cells << text;
    rows.push_back(std::move(row));
}

void MapViewModel::showChoices() {
    table_.setColumns(tr("What the map shows"), {{tr("Show"), 20, false, true}});
    std::vector<GridRow> rows;
    rows.push_back(headingRow(tr("Block"), kBlock));
    const auto add = [&](const QString& kind, const QString& what, const QString& text, bool is) {
        addChoice(rows, kind + QLatin1Char(' ') + what, text, is);
    };
    for (const vineyard::Block& block : session_.catalogue()->blocks()) {
        const QString code = fromText(block.code);
        add(kBlock,
            code,
            block.name.empty() ? code : tr("%1 %2").arg(code, fromText(block.name)),
            wish_.block == block.code);
    }
    add(kBlock, {}, tr("All blocks"), wish_.block.empty());
    rows.push_back(headingRow(tr("What"), kWhat));
    add(kWhat, kFindings, tr("What looks wrong"), isOnFindings_);
    for (const auto& [code, count] : read_.values.noted) {
        if (session_.catalogue()->descriptor(code) != nullptr) {
            add(kWhat,
                fromText(code),
                descriptorWords(*session_.catalogue(), code),
                !isOnFindings_ && wish_.descriptor == code);
        }
    }
    if (!isOnFindings_) {
        rows.push_back(headingRow(tr("Season"), kSeason));
        for (const int season : read_.values.seasons) {
            const QString year = QString::number(season);
            add(kSeason, year, year, season == wish_.season);
        }
        rows.push_back(headingRow(tr("Day"), kDay));
        add(kDay, {}, tr("The last of each vine"), !wish_.visit);
        for (const CivilDate visit : read_.values.visits) {
            add(kDay, fromText(writeDate(visit)), quick::dateWords(visit), wish_.visit == visit);
        }
    }
    table_.setRows(std::move(rows));
}

void MapViewModel::open(int row) {
    table_.setCurrent(row);
    const QString key = table_.currentKey();
    const qsizetype space = key.indexOf(QLatin1Char(' '));
    if (space > 0) {
        choose(key.left(space), key.mid(space + 1));
    }
}

void MapViewModel::choose(const QString& kind, const QString& what) {
    if (kind == kBlock) {
        wish_.block = toText(what);
        wish_.visit.reset();
    } else if (kind == kWhat) {
        isOnFindings_ = what == kFindings;
        wish_.descriptor = isOnFindings_ ? wish_.descriptor : toText(what);
        wish_.visit.reset();
    } else if (kind == kSeason) {
        wish_.season = what.toInt();
        wish_.visit.reset();
    } else if (kind == kDay) {
        wish_.visit = readDate(toText(what));
    }
    refresh();
}

void MapViewModel::choose(const QString& position) {
    emit session_.asked(QStringLiteral("vine"), position);
}

void MapViewModel::offer() {
    const vineyard::Asked* asked = session_.catalogue()->descriptor(wish_.descriptor);
    const bool hasNumbers = asked != nullptr && !isOnFindings_ &&
                            asked->known.kind != descriptors::DescriptorKind::Category;
    actions_.set({{QStringLiteral("difference"),
                   tr("Difference from before"),
                   QStringLiteral("D"),
                   hasNumbers,
                   wish_.isDifference},
                  {QStringLiteral("findings"),
                   tr("What looks wrong"),
                   QStringLiteral("W"),
                   true,
                   isOnFindings_},
                  {QStringLiteral("pdf"),
                   tr("Write a page to print"),
                   QStringLiteral("P"),
                   !read_.values.rows.empty()}});
}

void MapViewModel::act(const QString& id) {
    if (id == QStringLiteral("difference")) {
        wish_.isDifference = !wish_.isDifference;
        refresh();
    } else if (id == QStringLiteral("findings")) {
        isOnFindings_ = !isOnFindings_;
        refresh();
    } else if (id == QStringLiteral("pdf")) {
        askPdf();
    }
}

QString MapViewModel::writePdf(const QString& path) const {
    quick::BlockMapPicture picture = map_.picture();
    picture.title = words();
    const Status written =
        paper::writeFile(path,
                         paper::blockMapPdf(picture,
                                            session_.settings().isA4 ? paper::PaperSize::A4
                                                                     : paper::PaperSize::Letter,
                                            whenWords(session_.clock().nowMs(), session_.clock())));
    return written ? QString() : quick::errorWords(written.error());
}

void MapViewModel::askPdf() {
    const QString name = QStringLiteral("map-%1-%2.pdf")
                             .arg(wish_.block.empty() ? tr("all") : fromText(wish_.block),
                                  isOnFindings_ ? tr("findings") : fromText(wish_.descriptor));
    askFile(
        tr("The file for the page"), name, [this](const QString& path) { return writePdf(path); });
}

} // namespace bullace::desk
