#include "field/field_book.hpp"

#include "core/base/digest.hpp"
#include "core/journal/json_value.hpp"
#include "store/photos.hpp"
#include "store/read_catalogue.hpp"

#include <algorithm>
#include <array>
#include <fstream>

namespace bullace::field {

namespace {

constexpr std::size_t kRecentNotes = 12;
constexpr std::size_t kPhotoPiece = 65'536; // bytes
constexpr const char* kNobody = "-";

} // namespace

FieldBook::FieldBook(std::unique_ptr<store::Database> database, const Clock& clock)
    : database_(std::move(database)),
      pen_(*database_, clock) {}

Result<std::unique_ptr<FieldBook>>
FieldBook::open(const std::string& path, const std::string& zone, const Clock& clock) {
    auto surroundings = store::fileSurroundings();
    const bool isThere = surroundings->exists(path);
    Result<std::unique_ptr<store::Database>> database =
        isThere ? store::Database::open(path, true, std::move(surroundings))
                : store::Database::create(
                      path, {store::Role::Field, {}, zone, {}}, std::move(surroundings));
    if (!database) {
        return database.error();
    }
    std::unique_ptr<FieldBook> book(new FieldBook(std::move(*database), clock));
    Result<Settings> settings = readSettings(*book->database_);
    if (!settings) {
        return settings.error();
    }
    book->settings_ = std::move(*settings);
    book->pen_.setCorrection(book->settings_.clockCorrectionMs);
    if (Status loaded = book->reload(); !loaded) {
        return loaded.error();
    }
    return book;
}

Status FieldBook::reload() {
    Result<std::unique_ptr<vineyard::Catalogue>> catalogue = store::readCatalogue(*database_);
    if (!catalogue) {
        return catalogue.error();
    }
    for (const vineyard::Block& block : settings_.ownBlocks) {
        (*catalogue)->addOwnBlock(block);
    }
    walk_.reset();
    catalogue_ = std::move(*catalogue);
    Result<std::unique_ptr<Walk>> walk = Walk::resume(*database_, *catalogue_, pen_);
    if (!walk) {
        return walk.error();
    }
    walk_ = std::move(*walk);
    return {};
}

Status FieldBook::change(Settings settings) {
    if (Status kept = keepSettings(*database_, settings); !kept) {
        return kept;
    }
    settings_ = std::move(settings);
    pen_.setCorrection(settings_.clockCorrectionMs);
    return {};
}

Status FieldBook::beginWalk(WalkPlan plan) {
    Settings settings = settings_;
    settings.lastAuthor = plan.author;
    if (Status kept = change(std::move(settings)); !kept) {
        return kept;
    }
    Result<std::unique_ptr<Walk>> walk =
        Walk::begin(*database_, *catalogue_, pen_, std::move(plan));
    if (!walk) {
        return walk.error();
    }
    walk_ = std::move(*walk);
    return {};
}

Status FieldBook::endWalk() {
    if (walk_ == nullptr) {
        return {};
    }
    if (Status ended = walk_->end(); !ended) {
        return ended;
    }
    walk_.reset();
    return {};
}

Result<std::optional<TakenBack>> FieldBook::undo() {
    if (walk_ != nullptr) {
        return walk_->undo();
    }
    return takeBackLast(
        *database_, pen_, settings_.lastAuthor.empty() ? kNobody : settings_.lastAuthor);
}

Result<std::string> FieldBook::addOwnBlock(const std::string& name, unsigned rows, unsigned vines) {
    if (rows == 0 || vines == 0 || rows > 999 || vines > 999) {
        return Error{
            ErrorCode::InvalidInput, "A block has 1 to 999 rows with 1 to 999 vines each.", {}};
    }
    vineyard::Block block;
    unsigned number = 1;
    do {
        block.code = "F" + std::to_string(number++);
    } while (catalogue_->block(block.code) != nullptr);
    block.name = name;
    for (unsigned row = 1; row <= rows; ++row) {
        block.rows.push_back({row, vines});
    }
    Settings settings = settings_;
    settings.ownBlocks.push_back(block);
    if (Status kept = change(std::move(settings)); !kept) {
        return kept.error();
    }
    const std::string code = block.code;
    if (Status loaded = reload(); !loaded) {
        return loaded.error();
    }
    return code;
}

// A field device has no right to make blocks: it says what it typed, and the office makes them.
Status FieldBook::offerOwnBlocks() {
    std::vector<store::Draft> remarks;
    for (const vineyard::Block& block : settings_.ownBlocks) {
        const std::string subject = "block/" + block.code + "/rows";
        bool isSaid = false;
        const Status read = database_->eachSubjectBetween(
            subject, subject + "~", [&isSaid](std::string_view) { return !(isSaid = true); });
        if (!read) {
            return read;
        }
        if (isSaid) {
            continue;
        }
        std::vector<Bytes> rows;
        for (const vineyard::Row& row : block.rows) {
            rows.push_back(journal::listValue(
                {journal::integerValue(row.number), journal::integerValue(row.vines)}));
        }
        store::Draft remark;
        remark.author = settings_.lastAuthor.empty() ? kNobody : settings_.lastAuthor;
        remark.kind = journal::Kind::Remark;
        remark.subject = subject;
        remark.value = journal::listValue(rows);
        remark.why = "walked before there was a block: " + block.name;
        remarks.push_back(std::move(remark));
    }
    if (remarks.empty()) {
        return {};
    }
    const auto written = pen_.write(remarks);
    return written ? Status{} : Status{written.error()};
}

std::uint64_t FieldBook::ownEntries() const {
    std::uint64_t entries = 0;
    journal::Origin last{'t', 0, 0};
    for (const journal::BranchEnd& end : database_->vector()) {
        if (end.origin.device != database_->about().own.device || end.origin == last) {
            continue;
        }
        last = end.origin;
        for (const journal::Segment& segment : database_->segments(end.origin)) {
            entries += segment.last - segment.first + 1;
        }
    }
    return entries;
}

std::uint64_t FieldBook::waiting() const {
    const std::uint64_t own = ownEntries();
    return own - std::min(own, settings_.sentEntries);
}

Status FieldBook::noteSent(std::uint64_t entries) {
    Settings settings = settings_;
    settings.sentEntries = std::min(entries, ownEntries());
    return change(std::move(settings));
}

Status FieldBook::notePhoto(BytesView jpeg) {
    if (walk_ == nullptr || jpeg.empty()) {
        return Error{ErrorCode::InvalidInput, "There is no picture, or no vine to keep it at.", {}};
    }
    const Digest digest = sha256({jpeg});
    for (std::size_t at = 0; at < jpeg.size(); at += kPhotoPiece) {
        const Status kept =
            store::addPhotoPiece(*database_, digest, jpeg.size(), at, jpeg.substr(at, kPhotoPiece));
        if (!kept) {
            return kept;
        }
    }
    return walk_->noteBeside("photo", journal::textValue(digest.hex()));
}

Status FieldBook::noteText(const std::string& text) {
    if (walk_ == nullptr || text.empty()) {
        return Error{ErrorCode::InvalidInput, "Type a note first.", {}};
    }
    if (Status noted = walk_->noteBeside("note", journal::textValue(text)); !noted) {
        return noted;
    }
    Settings settings = settings_;
    std::erase(settings.recentNotes, text);
    settings.recentNotes.insert(settings.recentNotes.begin(), text);
    if (settings.recentNotes.size() > kRecentNotes) {
        settings.recentNotes.resize(kRecentNotes);
    }
    return change(std::move(settings));
}

Status FieldBook::writeFile(const std::string& path) {
    std::ofstream out(path, std::ios::binary | std::ios::trunc);
    if (!out) {
        return Error{
            ErrorCode::ReadOnly, "\"" + path + "\" cannot be written. Choose another place.", {}};
    }
    if (Status written = database_->exportLines(out, {}); !written) {
        return written;
    }
    out.flush();
    if (!out) {
        return Error{ErrorCode::DiskFull,
                     "\"" + path + "\" was not written whole: its disk took no more.",
                     {}};
    }
    return {};
}

Result<store::ImportReport> FieldBook::readFile(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    if (!in) {
        return Error{ErrorCode::NotFound, "\"" + path + "\" cannot be read.", {}};
    }
    Result<store::ImportReport> report = database_->importLines(in, path, {});
    if (!report) {
        return report;
    }
    if (Status loaded = reload(); !loaded) {
        return loaded.error();
    }
    return report;
}

} // namespace bullace::field
