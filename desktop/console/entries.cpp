// Making databases, and entries in and out: create, import, export, backup.
#include "console/commands.hpp"

#include "core/journal/json_out.hpp"

#include <algorithm>
#include <fstream>
#include <sys/stat.h>

namespace bullace::console {

using journal::JsonObject;

namespace {

bool isDirectory(const std::string& path) {
    struct stat status {};
    return ::stat(path.c_str(), &status) == 0 && S_ISDIR(status.st_mode);
}

// Names like "Etc/UTC" or "America/Port-au-Prince"; where the system has its list of zones, only
// those of it.
Status checkZone(const std::string& zone) {
    const std::string letters =
        "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789_+-/";
    const bool isSpelt = !zone.empty() && zone.front() != '/' && zone.back() != '/' &&
                         zone.find_first_not_of(letters) == std::string::npos;
    struct stat status {};
    const bool isListed =
        !isDirectory("/usr/share/zoneinfo") ||
        (::stat(("/usr/share/zoneinfo/" + zone).c_str(), &status) == 0 && S_ISREG(status.st_mode));
    if (isSpelt && isListed) {
        return {};
    }
    return Error{ErrorCode::InvalidInput,
                 "\"" + zone +
                     "\" is no time zone of the IANA list. Write it like Area/City, or UTC.",
                 {}};
}

Status checkFile(const std::string& file) {
    std::ifstream in(file, std::ios::binary);
    std::string start(16, '\0');
    if (isDirectory(file) || !in || (in.read(start.data(), 16), in.bad())) {
        return Error{ErrorCode::NotFound,
                     "\"" + file + "\" cannot be read. Check its name and its rights.",
                     {}};
    }
    if (start.starts_with("SQLite format 3")) {
        return Error{
            ErrorCode::InvalidInput,
            "\"" + file +
                "\" is a database, not JSON Lines. Export it first (`bullace export`), or sync it.",
            {}};
    }
    return {};
}

} // namespace

int create(const CreateOptions& options, Terminal& terminal) {
    store::Founding founding{options.isField ? store::Role::Field : store::Role::Station,
                             options.station,
                             options.zone,
                             std::nullopt};
    if (!options.isField || !options.zone.empty()) {
        if (const Status zone = checkZone(options.zone); !zone) {
            return tellFailure(terminal.err, zone.error());
        }
    }
    if (!options.device.empty()) {
        const auto origin = journal::readOrigin("t" + options.device + ".1");
        if (!origin) {
            return tellFailure(
                terminal.err,
                {ErrorCode::InvalidInput, "A device's number is 16 hex digits in lower case.", {}});
        }
        founding.device = origin->device;
    }
    const auto made = store::Database::create(options.path, founding, store::fileSurroundings());
    if (!made) {
        return tellFailure(terminal.err, made.error());
    }
    const store::About& about = (*made)->about();
    if (terminal.wantsJson) {
        terminal.out << JsonObject()
                            .text("file", options.path)
                            .text("role", options.isField ? "field" : "station")
                            .text("station", about.station)
                            .text("zone", about.zone)
                            .text("origin", about.own.text())
                            .done()
                     << "\n";
    } else if (options.isField) {
        terminal.out << "\"" << options.path << "\" is the journal of a field device now, under "
                     << about.own.text() << ".\n";
    } else {
        terminal.out << "\"" << options.path << "\" is the database of " << about.station
                     << " now (time zone " << about.zone << "), under " << about.own.text()
                     << ".\n";
    }
    return 0;
}

int importFiles(const std::string& path,
                const std::vector<std::string>& files,
                Terminal& terminal) {
    int status = 0;
    for (const std::string& file : files) {
        const server::OfficeRequest request{
            "import", {{"name", file == "-" ? "standard input" : file}}, terminal.wantsJson};
        if (file == "-") {
            status = std::max(status, askOffice(path, request, terminal.in, terminal));
            continue;
        }
        if (const Status checked = checkFile(file); !checked) {
            status = tellFailure(terminal.err, checked.error());
            continue;
        }
        std::ifstream in(file, std::ios::binary);
        status = std::max(status, askOffice(path, request, in, terminal));
    }
    return status;
}

int exportEntries(const std::string& path, Terminal& terminal) {
    const auto database = openForReading(path);
    if (!database) {
        return tellFailure(terminal.err, database.error());
    }
    Ticker ticker(terminal, "Exporting");
    const Status done = (*database)->exportLines(terminal.out, ticker.progress());
    return done ? 0 : tellFailure(terminal.err, done.error());
}

int backUp(const std::string& path, const std::string& target, Terminal& terminal) {
    const auto database = openForReading(path);
    if (!database) {
        return tellFailure(terminal.err, database.error());
    }
    Ticker ticker(terminal, "Backing up");
    if (const Status done = (*database)->backUp(target, ticker.progress()); !done) {
        return tellFailure(terminal.err, done.error());
    }
    const auto counts = (*database)->counts();
    if (!counts) {
        return tellFailure(terminal.err, counts.error());
    }
    if (terminal.wantsJson) {
        terminal.out << JsonObject().text("file", target).count("entries", counts->entries).done()
                     << "\n";
    } else {
        terminal.out << "\"" << target << "\" holds all " << counts->entries
                     << " entries and was checked.\n";
    }
    return 0;
}

} // namespace bullace::console
