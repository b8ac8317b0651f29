// Everything behind a tablet's screen: its journal, what the office told it, the walk that goes on,
// and what people asked for. One object, on the thread of the screen.
#pragma once

#include "field/pen.hpp"
#include "field/rounds.hpp"
#include "field/settings.hpp"
#include "field/walk.hpp"

#include "core/base/clock.hpp"
#include "core/vineyard/catalogue.hpp"

#include <cstdint>
#include <istream>
#include <memory>
#include <ostream>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::field {

class FieldBook {
public:
    // Opens the journal, or makes one where there is none. `zone` is the tablet's own (IANA).
    // Errors: those of opening a file; then nothing was changed.
    [[nodiscard]] static Result<std::unique_ptr<FieldBook>>
    open(const std::string& path, const std::string& zone, const Clock& clock);

    [[nodiscard]] store::Database& database() { return *database_; }
    [[nodiscard]] const vineyard::Catalogue& catalogue() const { return *catalogue_; }
    [[nodiscard]] Pen& pen() { return pen_; }
    [[nodiscard]] const Settings& settings() const { return settings_; }
    [[nodiscard]] CivilDate today() const { return pen_.today(); }
    // Null where nobody walks.
    [[nodiscard]] Walk* walk() { return walk_.get(); }

    // Replaces the settings, kept at once. Errors: those of writing.
    [[nodiscard]] Status change(Settings settings);
    // Reads what the office told anew, and goes on with the walk: after a sync, an import, an
    // opening in the field.
    [[nodiscard]] Status reload();

    [[nodiscard]] Status beginWalk(WalkPlan plan);
    [[nodiscard]] Status endWalk();

    // Undo where nobody walks: takes back the last act of this tablet.
    [[nodiscard]] Result<std::optional<TakenBack>> undo();

    // A block typed as rows × vines: stops of this tablet until the office makes it a block. Its
    // code is the next of F1, F2, …
    [[nodiscard]] Result<std::string>
    addOwnBlock(const std::string& name, unsigned rows, unsigned vines);
    // Tells the office of the own blocks, as remarks; once for each.
    [[nodiscard]] Status offerOwnBlocks();

    // Entries of this device, and how many of them the station is not known to have.
    [[nodiscard]] std::uint64_t ownEntries() const;
    [[nodiscard]] std::uint64_t waiting() const;
    [[nodiscard]] Status noteSent(std::uint64_t entries);

    // A picture: kept by its SHA-256, and noted at the stop where one stands.
    [[nodiscard]] Status notePhoto(BytesView jpeg);
    [[nodiscard]] Status noteText(const std::string& text);

    // All entries to a file, and entries from one. Errors: those of files and of reading.
    [[nodiscard]] Status writeFile(const std::string& path);
    [[nodiscard]] Result<store::ImportReport> readFile(const std::string& path);

private:
    FieldBook(std::unique_ptr<store::Database> database, const Clock& clock);

    std::unique_ptr<store::Database> database_;
    Pen pen_;
    Settings settings_;
    std::unique_ptr<vineyard::Catalogue> catalogue_;
    std::unique_ptr<Walk> walk_;
};

} // namespace bullace::field
