#include "store/sqlite.hpp"

#include <sqlite3.h>

#include <utility>

namespace bullace::store {

namespace {

Error errorFrom(int code, int extended, const std::string& path, std::string detail) {
    const std::string file = path.empty() ? "The database" : "\"" + path + "\"";
    // The file that readers share grows as well; where there is no room for it SQLite says it so.
    const bool isFull = extended == SQLITE_IOERR_SHMSIZE;
    switch (isFull ? SQLITE_FULL : code) {
    case SQLITE_FULL:
        return {ErrorCode::DiskFull,
                "There is no room left on the disk for " + file +
                    ". Nothing of this step was kept; make room and do it again.",
                std::move(detail)};
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
        return {ErrorCode::InUse,
                file + " is being written by another program. Close that one, or go through it.",
                std::move(detail)};
    case SQLITE_READONLY:
    case SQLITE_PERM:
        return {ErrorCode::ReadOnly,
                file + " cannot be written. Check the rights of the file and of its folder.",
                std::move(detail)};
    case SQLITE_NOTADB:
        return {ErrorCode::Damaged, file + " is no Bullace database.", std::move(detail)};
    case SQLITE_CORRUPT:
        return {ErrorCode::Damaged,
                file + " is damaged. Keep it as it is, and go on with a copy or the last backup.",
                std::move(detail)};
    case SQLITE_CANTOPEN:
        return {ErrorCode::NotFound,
                file + " cannot be opened. Check that it is there and that it may be read.",
                std::move(detail)};
    default:
        return {ErrorCode::Io,
                "The disk did not do what was asked for " + file +
                    ". What was not reported as saved is not saved.",
                std::move(detail) + " (" + std::to_string(extended) + ")"};
    }
}

Status applySettings(Connection& connection, Access access) {
    if (access == Access::Read) {
        return connection.run("PRAGMA query_only=1");
    }
    int keepWal = 1;
    sqlite3_file_control(connection.handle(), nullptr, SQLITE_FCNTL_PERSIST_WAL, &keepWal);
    return connection.run(
        "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; PRAGMA foreign_keys=ON;"
        "PRAGMA temp_store=FILE; PRAGMA trusted_schema=OFF; PRAGMA cell_size_check=ON");
}

} // namespace

Result<Connection>
Connection::open(const std::string& path, Access access, const std::string& vfs) {
    int flags = SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE;
    flags |= access == Access::Read ? SQLITE_OPEN_READONLY : SQLITE_OPEN_READWRITE;
    flags |= access == Access::Create ? SQLITE_OPEN_CREATE : 0;
    sqlite3* handle = nullptr;
    const int code =
        sqlite3_open_v2(path.c_str(), &handle, flags, vfs.empty() ? nullptr : vfs.c_str());
    Connection connection(handle, path);
    if (code != SQLITE_OK) {
        return connection.failure();
    }
    sqlite3_busy_timeout(handle, 2000);
    if (Status set = applySettings(connection, access); !set) {
        return set.error();
    }
    return connection;
}

Result<Connection> Connection::openScratch(const std::string& path, const std::string& vfs) {
    sqlite3* handle = nullptr;
    const int code =
        sqlite3_open_v2(path.c_str(),
                        &handle,
                        SQLITE_OPEN_READONLY | SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE,
                        vfs.empty() ? nullptr : vfs.c_str());
    Connection connection(handle, path);
    if (code != SQLITE_OK) {
        return connection.failure();
    }
    // A million subjects do not fit a tablet's memory: they spill to a file, but not to one of a
    // test's own file system.
    const char* settings = vfs.empty() ? "PRAGMA temp_store=FILE; PRAGMA temp.cache_size=-65536; "
                                         "PRAGMA temp.journal_mode=OFF; PRAGMA temp.synchronous=OFF"
                                       : "PRAGMA temp_store=MEMORY; PRAGMA temp.journal_mode=OFF";
    if (Status set = connection.run(settings); !set) {
        return set.error();
    }
    return connection;
}

Connection::Connection(Connection&& other) noexcept
    : handle_(std::exchange(other.handle_, nullptr)),
      path_(std::move(other.path_)),
      begin_(std::exchange(other.begin_, nullptr)),
      commit_(std::exchange(other.commit_, nullptr)) {}

Connection& Connection::operator=(Connection&& other) noexcept {
    std::swap(handle_, other.handle_);
    std::swap(path_, other.path_);
    std::swap(begin_, other.begin_);
    std::swap(commit_, other.commit_);
    return *this;
}

Connection::~Connection() {
    sqlite3_finalize(begin_);
    sqlite3_finalize(commit_);
    sqlite3_close_v2(handle_);
}

Status Connection::runKept(sqlite3_stmt*& statement, const char* sql) {
    if (statement == nullptr &&
        sqlite3_prepare_v3(handle_, sql, -1, SQLITE_PREPARE_PERSISTENT, &statement, nullptr) !=
            SQLITE_OK) {
        return failure();
    }
    const bool isDone = sqlite3_step(statement) == SQLITE_DONE;
    Status status = isDone ? Status{} : Status{failure()};
    sqlite3_reset(statement);
    return status;
}

Status Connection::run(const char* sql) {
    if (sqlite3_exec(handle_, sql, nullptr, nullptr, nullptr) != SQLITE_OK) {
        return failure();
    }
    return {};
}

Result<Statement> Connection::prepare(std::string_view sql) {
    sqlite3_stmt* handle = nullptr;
    if (sqlite3_prepare_v3(handle_,
                           sql.data(),
                           static_cast<int>(sql.size()),
                           SQLITE_PREPARE_PERSISTENT,
                           &handle,
                           nullptr) != SQLITE_OK) {
        return failure();
    }
    return Statement(handle, this);
}

Status Connection::prepareAll(std::initializer_list<std::pair<Statement*, std::string_view>> all) {
    for (const auto& [into, sql] : all) {
        Result<Statement> made = prepare(sql);
        if (!made) {
            return made.error();
        }
        *into = std::move(*made);
    }
    return {};
}

Result<std::int64_t> Connection::number(std::string_view sql) {
    Result<Statement> statement = prepare(sql);
    if (!statement) {
        return statement.error();
    }
    const Result<bool> row = statement->step();
    if (!row) {
        return row.error();
    }
    return *row ? statement->integer(0) : 0;
}

std::int64_t Connection::changes() const {
    return sqlite3_changes64(handle_);
}
std::int64_t Connection::lastRowId() const {
    return sqlite3_last_insert_rowid(handle_);
}
bool Connection::inTransaction() const {
    return sqlite3_get_autocommit(handle_) == 0;
}

Error Connection::failure() const {
    const int extended = handle_ == nullptr ? SQLITE_NOMEM : sqlite3_extended_errcode(handle_);
    const char* text = handle_ == nullptr ? "out of memory" : sqlite3_errmsg(handle_);
    return errorFrom(extended & 0xFF, extended, path_, text);
}

Statement::Statement(Statement&& other) noexcept
    : handle_(std::exchange(other.handle_, nullptr)),
      connection_(other.connection_) {}

Statement& Statement::operator=(Statement&& other) noexcept {
    std::swap(handle_, other.handle_);
    std::swap(connection_, other.connection_);
    return *this;
}

Statement::~Statement() {
    sqlite3_finalize(handle_);
}

Statement& Statement::bind(int index, std::int64_t value) {
    sqlite3_bind_int64(handle_, index, value);
    return *this;
}

Statement& Statement::bindText(int index, std::string_view value) {
    sqlite3_bind_text(handle_, index, value.data(), static_cast<int>(value.size()), SQLITE_STATIC);
    return *this;
}

Statement& Statement::bindBytes(int index, BytesView value) {
    sqlite3_bind_blob(handle_, index, value.data(), static_cast<int>(value.size()), SQLITE_STATIC);
    return *this;
}

Statement& Statement::bindNull(int index) {
    sqlite3_bind_null(handle_, index);
    return *this;
}

Result<bool> Statement::step() {
    const int code = sqlite3_step(handle_);
    if (code == SQLITE_ROW || code == SQLITE_DONE) {
        return code == SQLITE_ROW;
    }
    Error error = connection_->failure();
    reset();
    return error;
}

Status Statement::execute() {
    const Result<bool> row = step();
    if (!row) {
        return row.error();
    }
    reset();
    return {};
}

void Statement::reset() {
    sqlite3_reset(handle_);
}

std::int64_t Statement::integer(int column) const {
    return sqlite3_column_int64(handle_, column);
}

bool Statement::isSame(const Statement& other, int column) const {
    const int type = sqlite3_column_type(handle_, column);
    if (type != sqlite3_column_type(other.handle_, column)) {
        return false;
    }
    return type == SQLITE_INTEGER ? integer(column) == other.integer(column)
                                  : text(column) == other.text(column);
}

int Statement::columns() const {
    return sqlite3_column_count(handle_);
}

std::string_view Statement::text(int column) const {
    const auto* text = sqlite3_column_text(handle_, column);
    return {reinterpret_cast<const char*>(text),
            text == nullptr ? 0 : static_cast<std::size_t>(sqlite3_column_bytes(handle_, column))};
}

BytesView Statement::bytes(int column) const {
    const void* blob = sqlite3_column_blob(handle_, column);
    return {static_cast<const char*>(blob),
            blob == nullptr ? 0 : static_cast<std::size_t>(sqlite3_column_bytes(handle_, column))};
}

bool Statement::isNull(int column) const {
    return sqlite3_column_type(handle_, column) == SQLITE_NULL;
}

Result<Transaction> Transaction::begin(Connection& connection) {
    if (Status begun = connection.runKept(connection.begin_, "BEGIN IMMEDIATE"); !begun) {
        return begun.error();
    }
    return Transaction(connection);
}

Transaction::~Transaction() {
    if (connection_ != nullptr && connection_->inTransaction()) {
        // A failed rollback leaves nothing to do: SQLite rolls back by itself when the file is
        // opened next.
        const Status ignored = connection_->run("ROLLBACK");
        static_cast<void>(ignored);
    }
}

Status Transaction::commit() {
    if (Status done = connection_->runKept(connection_->commit_, "COMMIT"); !done) {
        return done;
    }
    connection_ = nullptr;
    return {};
}

} // namespace bullace::store
