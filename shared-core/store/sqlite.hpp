// The one way to SQLite: a connection, its statements and transactions, with failures told in
// words.
#pragma once

#include "core/base/bytes.hpp"
#include "core/base/result.hpp"

#include <cstdint>
#include <initializer_list>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

struct sqlite3;
struct sqlite3_stmt;

namespace bullace::store {

enum class Access { Read, Write, Create };

class Statement;

// One connection, used by one thread at a time. The file is in WAL mode with synchronous=FULL; the
// wal stays beside it when the connection closes, so that reading never has to create it.
class Connection {
public:
    // vfs  Name of the SQLite VFS, empty for the system's.
    // Errors: NotFound, ReadOnly, Damaged (no database), Io; the message names the file.
    [[nodiscard]] static Result<Connection>
    open(const std::string& path, Access access, const std::string& vfs = {});
    // A second, reading connection to a file, for making tables beside it: temporary tables hide
    // those of the same name.
    [[nodiscard]] static Result<Connection> openScratch(const std::string& path,
                                                        const std::string& vfs);

    Connection(Connection&& other) noexcept;
    Connection& operator=(Connection&& other) noexcept;
    Connection(const Connection&) = delete;
    Connection& operator=(const Connection&) = delete;
    ~Connection();

    [[nodiscard]] Status run(const char* sql); // one or more statements without parameters or rows
    [[nodiscard]] Result<Statement> prepare(std::string_view sql);
    // Prepares each statement in its place; the first that cannot be is the error.
    [[nodiscard]] Status
    prepareAll(std::initializer_list<std::pair<Statement*, std::string_view>> all);
    [[nodiscard]] Result<std::int64_t>
    number(std::string_view sql); // the first column of the first row, 0 where null

    [[nodiscard]] std::int64_t changes() const;
    [[nodiscard]] std::int64_t lastRowId() const;
    [[nodiscard]] bool inTransaction() const;
    // Why the last call failed; never ok.
    [[nodiscard]] Error failure() const;
    [[nodiscard]] sqlite3* handle() const { return handle_; }
    [[nodiscard]] const std::string& path() const { return path_; }

private:
    Connection(sqlite3* handle, std::string path) : handle_(handle), path_(std::move(path)) {}

    friend class Transaction;
    // BEGIN IMMEDIATE and COMMIT, prepared once: a tap on a tablet is one transaction.
    [[nodiscard]] Status runKept(sqlite3_stmt*& statement, const char* sql);

    sqlite3* handle_ = nullptr;
    std::string path_;
    sqlite3_stmt* begin_ = nullptr;
    sqlite3_stmt* commit_ = nullptr;
};

// A prepared statement. bind() counts parameters from 1, columns count from 0. A failed bind is
// told by the next step().
class Statement {
public:
    Statement(Statement&& other) noexcept;
    Statement& operator=(Statement&& other) noexcept;
    Statement(const Statement&) = delete;
    Statement& operator=(const Statement&) = delete;
    Statement() = default;
    ~Statement();

    Statement& bind(int index, std::int64_t value);
    Statement& bindText(int index, std::string_view value); // must stay alive until the next reset
    Statement& bindBytes(int index, BytesView value);       // likewise
    Statement& bindNull(int index);

    // True while there is a row. Errors: what SQLite says, with the file's name.
    [[nodiscard]] Result<bool> step();
    // For statements without rows: runs it and makes it ready for the next time.
    [[nodiscard]] Status execute();
    void reset();

    [[nodiscard]] std::int64_t integer(int column) const;
    [[nodiscard]] std::string_view text(int column) const; // valid until the next step or reset
    [[nodiscard]] BytesView bytes(int column) const;       // likewise
    [[nodiscard]] bool isNull(int column) const;
    [[nodiscard]] int columns() const;
    // Whether a column has the same type and value in another statement's row.
    [[nodiscard]] bool isSame(const Statement& other, int column) const;

private:
    friend class Connection;
    Statement(sqlite3_stmt* handle, Connection* connection)
        : handle_(handle),
          connection_(connection) {}

    sqlite3_stmt* handle_ = nullptr;
    Connection* connection_ = nullptr;
};

// Rolls back unless committed.
class Transaction {
public:
    [[nodiscard]] static Result<Transaction> begin(Connection& connection);
    Transaction(Transaction&& other) noexcept
        : connection_(std::exchange(other.connection_, nullptr)) {}
    Transaction& operator=(Transaction&&) = delete;
    Transaction(const Transaction&) = delete;
    Transaction& operator=(const Transaction&) = delete;
    ~Transaction();

    [[nodiscard]] Status commit();

private:
    explicit Transaction(Connection& connection) : connection_(&connection) {}
    Connection* connection_ = nullptr;
};

} // namespace bullace::store
