// Journal files on a real disk: who may open them, what is no journal, and what anyone's SQL sees.
#include "store/sqlite.hpp"
#include "support/entries.hpp"
#include "support/journals.hpp"
#include "support/temp_folder.hpp"

#include <doctest/doctest.h>
#include <sqlite3.h>

#include <sys/wait.h>
#include <unistd.h>
#include <vector>

using namespace bullace;
using namespace bullace::test;
using journal::integerValue;
using journal::noneValue;
using journal::textValue;
using store::Database;
using store::Role;

namespace {

using Owned = std::unique_ptr<Database>;

Owned create(const std::string& path, Role role = Role::Field) {
    auto made = Database::create(path, {role, "Invented", "UTC", 1}, store::fileSurroundings());
    REQUIRE_MESSAGE(made.ok(), (made ? "" : made.error().message));
    return std::move(*made);
}

Result<Owned> open(const std::string& path, bool forWriting) {
    return Database::open(path, forWriting, store::fileSurroundings());
}

void write(Database& database, const std::vector<store::Draft>& acts) {
    REQUIRE(database.append(acts, std::nullopt).ok());
}

void runSql(const std::string& path, const char* sql) {
    sqlite3* handle = nullptr;
    REQUIRE(sqlite3_open(path.c_str(), &handle) == SQLITE_OK);
    REQUIRE(sqlite3_exec(handle, sql, nullptr, nullptr, nullptr) == SQLITE_OK);
    REQUIRE(sqlite3_close(handle) == SQLITE_OK);
}

// The rows of a query as anyone's program would read them: columns by |, rows by line.
std::string rowsOf(const std::string& path, const char* sql) {
    sqlite3* handle = nullptr;
    REQUIRE(sqlite3_open_v2(("file:" + path + "?mode=ro").c_str(),
                            &handle,
                            SQLITE_OPEN_READONLY | SQLITE_OPEN_URI,
                            nullptr) == SQLITE_OK);
    std::string text;
    const auto addRow = [](void* into, int columns, char** values, char**) {
        auto& rows = *static_cast<std::string*>(into);
        for (int i = 0; i < columns; ++i) {
            rows += (i == 0 ? "" : "|") + std::string(values[i] == nullptr ? "null" : values[i]);
        }
        rows += "\n";
        return 0;
    };
    REQUIRE(sqlite3_exec(handle, sql, addRow, &text, nullptr) == SQLITE_OK);
    REQUIRE(sqlite3_close(handle) == SQLITE_OK);
    return text;
}

// Runs `part` in a process of its own that is nobody in particular; its status. Permissions mean
// nothing to the system's administrator, as whom tests may run.
template<typename Part>
int asNobody(Part part) {
    const pid_t child = ::fork();
    if (child == 0) {
        constexpr uid_t kNobody = 65534;
        const bool isSet = ::geteuid() != 0 || ::setuid(kNobody) == 0;
        ::_exit(isSet ? part() : 99);
    }
    int status = 0;
    REQUIRE(::waitpid(child, &status, 0) == child);
    REQUIRE(WIFEXITED(status));
    return WEXITSTATUS(status);
}

constexpr int kOpened = 0;
int codeOf(const Result<Owned>& opened) {
    return opened ? kOpened : 1 + static_cast<int>(opened.error().code);
}
constexpr int failedWith(ErrorCode code) {
    return 1 + static_cast<int>(code);
}

} // namespace

TEST_CASE("a second program that wants to write is refused and told who has the file") {
    TempFolder folder;
    const std::string path = folder.file("journal.db");
    Owned first = create(path);
    const auto second = open(path, true);
    REQUIRE_FALSE(second.ok());
    CHECK(second.error().code == ErrorCode::InUse);
    CHECK(second.error().message.find("process " + std::to_string(::getpid())) !=
          std::string::npos);
    CHECK(asNobody([&path] { return codeOf(open(path, true)); }) != kOpened);
    first.reset();
    CHECK(open(path, true).ok());
}

TEST_CASE("a reader sees the journal as it was when it opened it, while the writer goes on") {
    TempFolder folder;
    const std::string path = folder.file("journal.db");
    const Owned writer = create(path);
    write(*writer, {act(kSubject, integerValue(5))});
    const auto reader = open(path, false);
    REQUIRE(reader.ok());
    write(*writer, {act("obs/B2-07-15/2026-05-12/vigour", integerValue(6))});
    CHECK((*reader)->counts()->subjects == 1);
    CHECK((*reader)->vector().size() == 1);
    CHECK((*reader)->vector()[0].seq == 1);
    CHECK((*reader)->state("obs/B2-07-15/2026-05-12/vigour")->has_value() == false);
    const auto later = open(path, false);
    REQUIRE(later.ok());
    CHECK((*later)->counts()->subjects == 2);
    const store::Draft draft = act(kSubject, integerValue(7));
    CHECK_FALSE((*reader)->append({&draft, 1}, std::nullopt).ok());
    CHECK((*later)->verify({})->faults.empty());
}

TEST_CASE("in a folder that may not be written a journal can be read, and writing is refused") {
    TempFolder folder;
    const std::string path = folder.file("journal.db");
    write(*create(path), {act(kSubject, integerValue(5))});
    std::filesystem::permissions(folder.path(), std::filesystem::perms(0555));
    for (const auto& file : std::filesystem::directory_iterator(folder.path())) {
        std::filesystem::permissions(file.path(), std::filesystem::perms(0444));
    }
    CHECK(asNobody([&path] { return codeOf(open(path, true)); }) ==
          failedWith(ErrorCode::ReadOnly));
    CHECK(asNobody([&path] {
              const auto opened = open(path, false);
              const bool isRead = opened && (*opened)->state(kSubject)->has_value();
              return isRead ? kOpened : codeOf(opened) + 50;
          }) == kOpened);
    CHECK(asNobody([&folder] {
              const auto made = Database::create(
                  folder.file("other.db"), {Role::Field, {}, {}, {}}, store::fileSurroundings());
              return codeOf(made);
          }) == failedWith(ErrorCode::ReadOnly));
    std::filesystem::permissions(folder.path(), std::filesystem::perms(0755));
    CHECK_FALSE(std::filesystem::exists(folder.file("other.db")));
}

TEST_CASE("a file of a newer version is never written, and read as long as all that is known is "
          "there") {
    TempFolder folder;
    const std::string path = folder.file("journal.db");
    write(*create(path), {act(kSubject, integerValue(5))});
    runSql(path, "PRAGMA user_version=99");
    const std::string before = bytesOf(path);
    const auto writing = open(path, true);
    REQUIRE_FALSE(writing.ok());
    CHECK(writing.error().code == ErrorCode::NewerVersion);
    CHECK(writing.error().message.find("newer version of Bullace") != std::string::npos);
    {
        const auto reading = open(path, false);
        REQUIRE(reading.ok());
        const auto state = (*reading)->state(kSubject);
        REQUIRE((state.ok() && *state));
        CHECK((*state)->valueJson == "5");
    }
    CHECK(bytesOf(path) == before);
    // A newer version that took something away.
    runSql(path, "PRAGMA user_version=1");
    runSql(path, "ALTER TABLE about RENAME COLUMN value TO worth");
    runSql(path, "PRAGMA user_version=99");
    const auto reading = open(path, false);
    REQUIRE_FALSE(reading.ok());
    CHECK(reading.error().code == ErrorCode::NewerVersion);
}

TEST_CASE("what is no journal is refused as such, and not touched") {
    TempFolder folder;
    const std::string other = folder.file("other.db");
    runSql(other, "CREATE TABLE songs(title TEXT); INSERT INTO songs VALUES('x')");
    const std::string empty = folder.file("empty.db");
    setBytes(empty, "");
    const std::string text = folder.file("notes.txt");
    setBytes(text, std::string(5000, 'a'));
    for (const std::string& path : {other, empty, text}) {
        CAPTURE(path);
        const std::string before = bytesOf(path);
        for (const bool forWriting : {false, true}) {
            const auto opened = open(path, forWriting);
            REQUIRE_FALSE(opened.ok());
            CHECK(opened.error().code == ErrorCode::Damaged);
        }
        CHECK(bytesOf(path) == before);
        const auto made =
            Database::create(path, {Role::Field, {}, {}, {}}, store::fileSurroundings());
        REQUIRE_FALSE(made.ok());
        CHECK(made.error().code == ErrorCode::AlreadyThere);
        CHECK(bytesOf(path) == before);
    }
    const auto missing = open(folder.file("none.db"), true);
    REQUIRE_FALSE(missing.ok());
    CHECK(missing.error().code == ErrorCode::NotFound);
    CHECK_FALSE(std::filesystem::exists(folder.file("none.db")));
}

TEST_CASE("a journal cut short after any page is refused, or verify says so") {
    TempFolder folder;
    const std::string path = folder.file("journal.db");
    {
        const Owned database = create(path);
        for (int vine = 10; vine < 60; ++vine) {
            write(*database,
                  {act("obs/B2-07-" + std::to_string(vine) + "/2026-05-12/note",
                       textValue(std::string(200, 'a')))});
        }
    }
    runSql(path, "PRAGMA wal_checkpoint(TRUNCATE)");
    const std::string whole = bytesOf(path);
    const std::string cut = folder.file("cut.db");
    for (std::size_t length = 1024; length < whole.size(); length += 4096) {
        CAPTURE(length);
        for (const char* tail : {"-wal", "-shm"}) {
            std::filesystem::remove(cut + tail);
        }
        setBytes(cut, whole.substr(0, length));
        const auto opened = open(cut, false);
        const auto verdict =
            opened ? (*opened)->verify({}) : Result<store::Verdict>(opened.error());
        CHECK((!verdict || !verdict->faults.empty()));
        if (!verdict) {
            CHECK(verdict.error().code == ErrorCode::Damaged);
        }
    }
}

TEST_CASE("anyone's SQL reads states, observations and conflicts") {
    TempFolder folder;
    const std::string path = folder.file("station.db");
    const Owned station = create(path, Role::Station);
    write(*station,
          {act("obs/B2-07-14/2026-05-12/stage", integerValue(65)),
           act("obs/B2-07-15/2026-05-12/stage", noneValue("no-vine")),
           act("obs/B2-07-16/2026-05-12/note", textValue("split bark")),
           act("obs/lot:L1/2026-09-12/ph/s0000000000000001.1,1", journal::floatValue(3.2)),
           act("obs/B2-07-17/2026-05-12/vigour", integerValue(5)),
           act("obs/B2-07-17/2026-05-12/vigour", integerValue(6)),
           act("obs/B2-07-18/2026-05-12/vigour", integerValue(1)),
           act("obs/B2-07-18/2026-05-12/vigour", integerValue(9)),
           act("accession/W-17/title", textValue("x"))});
    CHECK(rowsOf(path, "SELECT * FROM observations ORDER BY place") ==
          "B2-07-14|2026-05-12|stage|null|65|65|null|settled\n"
          "B2-07-15|2026-05-12|stage|null|{\"none\":\"no-vine\"}|null|no-vine|settled\n"
          "B2-07-16|2026-05-12|note|null|\"split bark\"|null|null|settled\n"
          "B2-07-17|2026-05-12|vigour|null|5.5|5.5|null|ruled\n"
          "lot:L1|2026-09-12|ph|s0000000000000001.1,1|3.2|3.2|null|settled\n");
    CHECK(rowsOf(path, "SELECT * FROM conflicts") == "obs/B2-07-18/2026-05-12/vigour\n");
    CHECK(rowsOf(path, "SELECT subject, status, rule FROM state WHERE status <> 'settled'") ==
          "obs/B2-07-17/2026-05-12/vigour|ruled|mean\n"
          "obs/B2-07-18/2026-05-12/vigour|open|null\n");
}

TEST_CASE("listing what waits for a person does not look through the subjects that do not") {
    Journal office(Role::Station, 9);
    Journal tablet(Role::Field, 1);
    for (Journal* each : {&office, &tablet}) {
        std::vector<store::Draft> acts;
        for (int vine = 10; vine < 50; ++vine) {
            acts.push_back(act("obs/B2-07-" + std::to_string(vine) + "/2026-05-12/yield",
                               integerValue(each == &office ? vine : 17)));
        }
        each->write(acts);
    }
    office.takeAllOf(tablet);
    std::vector<std::string> asked;
    const auto keep = [](unsigned, void* into, void*, void* sql) {
        static_cast<std::vector<std::string>*>(into)->emplace_back(static_cast<const char*>(sql));
        return 0;
    };
    sqlite3* const handle = office->connection().handle();
    REQUIRE(sqlite3_trace_v2(handle, SQLITE_TRACE_STMT, keep, &asked) == SQLITE_OK);
    int rows = 0;
    const auto countRow = [&rows](const store::StateRow&) { return ++rows > 0; };
    REQUIRE(office->eachConflict("", countRow).ok());
    REQUIRE(office->eachConflict("obs/B2-07-20", countRow).ok());
    REQUIRE(office->counts().ok());
    REQUIRE(sqlite3_trace_v2(handle, 0, nullptr, nullptr) == SQLITE_OK);
    CHECK(rows == 40);
    int plans = 0;
    for (const std::string& sql : asked) {
        if (sql.find("state = 4") == std::string::npos) {
            continue;
        }
        CAPTURE(sql);
        auto plan = office->connection().prepare("EXPLAIN QUERY PLAN " + sql);
        REQUIRE(plan.ok());
        const auto row = plan->step();
        REQUIRE((row.ok() && *row));
        CHECK(plan->text(3).find("open_subjects") != std::string_view::npos);
        ++plans;
    }
    CHECK(plans == 3);
}
