// Opening a journal file: making it, its identity, its token and its epochs.
#include "store/database.hpp"

#include "core/base/planted.hpp"
#include "store/chain.hpp"
#include "store/derived.hpp"
#include "store/schema.hpp"
#include "store/sqlite.hpp"

#include <algorithm>
#include <sstream>

namespace bullace::store {

namespace {

// Of a backup: whoever opens it for writing must not go on as if it were the file itself.
constexpr std::string_view kRoleField = "field";
constexpr std::string_view kRoleStation = "station";

std::uint64_t deviceFrom(BytesView random) {
    std::uint64_t device = 0;
    for (const char c : random.substr(0, 8)) {
        device = device << 8U | static_cast<unsigned char>(c);
    }
    return device;
}

} // namespace

Database::Database(std::string path, std::unique_ptr<Surroundings> surroundings)
    : path_(std::move(path)),
      surroundings_(std::move(surroundings)) {}

Database::~Database() = default;

Result<std::unique_ptr<Database>> Database::create(const std::string& path,
                                                   const Founding& founding,
                                                   std::unique_ptr<Surroundings> surroundings) {
    if (surroundings->exists(path)) {
        return Error{ErrorCode::AlreadyThere,
                     "There is a file \"" + path +
                         "\" already. Choose another name; it was not touched.",
                     {}};
    }
    std::unique_ptr<Database> database(new Database(path, std::move(surroundings)));
    Result<std::unique_ptr<WriteLock>> lock = database->surroundings_->lock(path);
    if (!lock) {
        return lock.error();
    }
    database->lock_ = std::move(*lock);
    if (Status made = database->createFile(founding); !made) {
        // Half a journal is none: the next try starts from nothing.
        database->derived_.reset();
        database->chain_.reset();
        database->connection_.reset();
        database->surroundings_->remove(path);
        return made.error();
    }
    return database;
}

Status Database::createFile(const Founding& founding) {
    Result<Connection> connection = Connection::open(path_, Access::Create, surroundings_->vfs());
    if (!connection) {
        return connection.error();
    }
    connection_ = std::make_unique<Connection>(std::move(*connection));
    if (Status made = found(founding); !made) {
        return made;
    }
    if (Status loaded = load(); !loaded) {
        return loaded;
    }
    return renewToken();
}

Status Database::found(const Founding& founding) {
    Result<Transaction> transaction = Transaction::begin(*connection_);
    if (!transaction) {
        return transaction.error();
    }
    if (Status made = createSchema(*connection_); !made) {
        return made;
    }
    const bool isStation = founding.role == Role::Station;
    const journal::Origin own{isStation ? 's' : 't',
                              founding.device.value_or(deviceFrom(surroundings_->randomBytes(8))),
                              1};
    const Bytes history = surroundings_->randomBytes(16);
    const std::pair<const char*, std::string> all[] = {
        {"role", std::string(isStation ? kRoleStation : kRoleField)},
        {"station", founding.station},
        {"zone", founding.zone},
        {"own", own.text()},
        {"history", toHex(history)},
        {"token", ""},
    };
    for (const auto& [key, text] : all) {
        if (Status set = setAbout(key, text); !set) {
            return set;
        }
    }
    return transaction->commit();
}

Status Database::setAbout(const char* key, BytesView text) {
    Result<Statement> statement =
        connection_->prepare("INSERT INTO about(key, value) VALUES(?1, ?2) "
                             "ON CONFLICT(key) DO UPDATE SET value = excluded.value");
    if (!statement) {
        return statement.error();
    }
    return statement->bindText(1, key).bindText(2, text).execute();
}

Result<std::unique_ptr<Database>> Database::open(const std::string& path,
                                                 bool forWriting,
                                                 std::unique_ptr<Surroundings> surroundings) {
    if (!surroundings->exists(path)) {
        return Error{ErrorCode::NotFound, "There is no file \"" + path + "\". Check its name.", {}};
    }
    std::unique_ptr<Database> database(new Database(path, std::move(surroundings)));
    if (forWriting) {
        Result<std::unique_ptr<WriteLock>> lock = database->surroundings_->lock(path);
        if (!lock) {
            return lock.error();
        }
        database->lock_ = std::move(*lock);
    }
    if (Status opened = database->openFile(forWriting); !opened) {
        return opened.error();
    }
    if (forWriting) {
        if (Status checked = database->checkToken(); !checked) {
            return checked.error();
        }
    }
    return database;
}

Status Database::openFile(bool forWriting) {
    // Looked at first without a right to change anything: writing begins with turning on the WAL,
    // and what is no journal of ours must stay as it is.
    if (forWriting) {
        Result<Connection> look = Connection::open(path_, Access::Read, surroundings_->vfs());
        Status checked = look ? checkSchema(*look, Access::Write) : Status{look.error()};
        if (!checked) {
            return checked;
        }
    }
    const Access access = forWriting ? Access::Write : Access::Read;
    Result<Connection> connection = Connection::open(path_, access, surroundings_->vfs());
    if (!connection) {
        return connection.error();
    }
    // A reader sees the file as it is now for as long as it has it open, whatever a server writes
    // meanwhile.
    isReader_ = !forWriting;
    if (isReader_) {
        const Result<std::int64_t> version = connection->number("PRAGMA data_version");
        Status begun = version ? connection->run("BEGIN") : Status{version.error()};
        if (!begun) {
            return begun;
        }
        seenVersion_ = *version;
    }
    if (Status checked = checkSchema(*connection, access); !checked) {
        return checked;
    }
    derived_.reset();
    chain_.reset();
    connection_ = std::make_unique<Connection>(std::move(*connection));
    return load();
}

Status Database::readAbout() {
    Result<Statement> rows = connection_->prepare("SELECT key, value FROM about");
    if (!rows) {
        return rows.error();
    }
    bool hasOwn = false;
    while (true) {
        const Result<bool> row = rows->step();
        if (!row) {
            return row.error();
        }
        if (!*row) {
            break;
        }
        const std::string_view key = rows->text(0);
        const std::string value(rows->text(1));
        if (key == "role") {
            about_.role = value == kRoleStation ? Role::Station : Role::Field;
        } else if (key == "station") {
            about_.station = value;
        } else if (key == "zone") {
            about_.zone = value;
        } else if (key == "history") {
            about_.history = fromHex(value).value_or(Bytes{});
        } else if (key == "own") {
            const auto own = journal::readOrigin(value);
            hasOwn = own.has_value();
            about_.own = own.value_or(journal::Origin{});
        }
    }
    if (!hasOwn || about_.history.size() != 16) {
        return Error{ErrorCode::Damaged,
                     "\"" + path_ +
                         "\" does not say whose journal it is, so it is damaged. Go on with the "
                         "last backup.",
                     {}};
    }
    return {};
}

// The text beside the journal holds the tokens that the file may have (two while it is being
// changed) and the file's mark. A file that has none of them, or another mark, is a copy or an old
// state: its past is in doubt.
Status Database::checkToken() {
    std::string inFile;
    {
        Result<Statement> row = connection_->prepare("SELECT value FROM about WHERE key = 'token'");
        if (!row) {
            return row.error();
        }
        const Result<bool> found = row->step();
        if (!found) {
            return found.error();
        }
        inFile = *found ? std::string(row->text(0)) : std::string{};
    }
    std::istringstream beside(surroundings_->readToken(path_).value_or(std::string{}));
    std::string mark;
    std::getline(beside, mark);
    bool isKnown = false;
    for (std::string token; std::getline(beside, token);) {
        isKnown = isKnown || (!token.empty() && token == inFile);
    }
    if (!isKnown || mark != surroundings_->fileMark(path_) || chain_->hasDamagedEnd()) {
        if (Status taken = takeNewEpoch(0); !taken) {
            return taken;
        }
        if (Status taken = takeNewHistory(); !taken) {
            return taken;
        }
        about_.tookNewEpoch = true;
    }
    return renewToken();
}

Status Database::renewToken() {
    const std::string fresh = toHex(surroundings_->randomBytes(16));
    Result<Statement> row = connection_->prepare("SELECT value FROM about WHERE key = 'token'");
    if (!row) {
        return row.error();
    }
    const Result<bool> found = row->step();
    if (!found) {
        return found.error();
    }
    const std::string old = *found ? std::string(row->text(0)) : std::string{};
    row->reset();
    // First both beside the file, then the file, then the new one alone: wherever this is cut off,
    // the file's token is known.
    const std::string mark = surroundings_->fileMark(path_) + "\n";
    if (Status written = surroundings_->writeToken(path_, mark + old + "\n" + fresh + "\n");
        !written) {
        return written;
    }
    if (Status set = setAbout("token", fresh); !set) {
        return set;
    }
    return surroundings_->writeToken(path_, mark + fresh + "\n");
}

Status Database::takeNewEpoch(std::uint32_t greatestElsewhere) {
    if (planted(Bug::EpochNotTaken)) {
        return {};
    }
    if (Status ready = usable(); !ready) {
        return ready;
    }
    Result<Transaction> transaction = Transaction::begin(*connection_);
    if (!transaction) {
        return transaction.error();
    }
    journal::Origin own = about_.own;
    const std::uint32_t greatest =
        std::max({own.epoch, chain_->greatestEpoch(own.device), greatestElsewhere});
    if (greatest < journal::kGreatestEpoch) {
        own.epoch = greatest + 1;
    } else {
        // Somebody claims the last number there is. The journal must stay readable: it takes the
        // next that nothing here has; where another copy took that too, the fork will tell.
        do {
            own.epoch = own.epoch % journal::kGreatestEpoch + 1;
        } while (chain_->find(own) != nullptr);
    }
    if (Status set = setAbout("own", own.text()); !set) {
        return set;
    }
    if (Status done = transaction->commit(); !done) {
        return done;
    }
    about_.own = own;
    return {};
}

Status Database::takeNewHistory() {
    const Bytes history = surroundings_->randomBytes(16);
    if (Status set = setAbout("history", toHex(history)); !set) {
        return set;
    }
    about_.history = history;
    return {};
}

Status Database::adopt(char letter, const std::string& station, const std::string& zone) {
    Result<Transaction> transaction = Transaction::begin(*connection_);
    if (!transaction) {
        return transaction.error();
    }
    journal::Origin own = about_.own;
    own.letter = letter;
    const std::pair<const char*, std::string> all[] = {
        {"own", own.text()}, {"station", station}, {"zone", zone}};
    for (const auto& [key, text] : all) {
        if (Status set = setAbout(key, text); !set) {
            return set;
        }
    }
    if (Status done = transaction->commit(); !done) {
        return done;
    }
    about_.own = own;
    about_.station = station;
    about_.zone = zone;
    return {};
}

const merge::Rulebook& Database::rulebook() const {
    static const merge::Rulebook none;
    return derived_ == nullptr ? none : derived_->rulebook();
}

// After a failed write or sync the pages in memory may say more than the disk: only what a fresh
// look at the file shows is saved (Rebello et al. 2020, USENIX ATC).
void Database::recover(const Error& why) {
    derived_.reset();
    chain_.reset();
    isBroken_ = true;
    const Status again = why.code == ErrorCode::Io ? openFile(true) : load();
    isBroken_ = !again;
}

// Where the disk failed during recovery too, each further call tries again.
Status Database::usable() {
    if (isBroken_) {
        isBroken_ = !openFile(true);
    }
    if (!isBroken_) {
        return {};
    }
    return Error{ErrorCode::Io,
                 "The disk fails on \"" + path_ +
                     "\". What was reported as saved is safe; mend the disk or go on with "
                     "another, then try again.",
                 {}};
}

} // namespace bullace::store
