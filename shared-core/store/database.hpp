// A journal file: the tablet's own journal, or the station database. One object, one thread.
//
// Every way in goes through one of three doors: append() for what is written on this device,
// merge() for what another replica sends, importLines() for files. All three store whole
// transactions or nothing, and keep what is derived up to date in the same transaction.
#pragma once

#include "core/journal/entry.hpp"
#include "core/journal/exchange.hpp"
#include "core/journal/standing.hpp"
#include "core/merge/settle.hpp"
#include "store/import_report.hpp"
#include "store/surroundings.hpp"

#include <cstdint>
#include <functional>
#include <iosfwd>
#include <map>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace bullace::store {

class Chain;
struct Link;
struct OriginRecord;
class Connection;
class Derived;
class Statement;

enum class Role { Field, Station };

// What a journal file is told when it is made.
struct Founding {
    Role role = Role::Field;
    std::string station;                 // its name; empty on a device that is not paired yet
    std::string zone;                    // IANA time zone of the station
    std::optional<std::uint64_t> device; // its digits where they are given; random otherwise
};

struct About {
    Role role = Role::Field;
    std::string station;
    std::string zone;
    journal::Origin own;       // under which this device writes now
    Bytes history;             // 16 random bytes: another whenever the station's past is in doubt
    bool tookNewEpoch = false; // when it was opened, because the file is a copy or an old one
};

// One act that is to be written.
struct Draft {
    std::string author;
    journal::Kind kind = journal::Kind::Observe;
    std::string subject;
    Bytes value;
    std::vector<journal::Place> over;
    std::optional<std::string> why;
    std::optional<std::string> as;
};

enum class Grouping { Single, OneAct };

// What a device keeps for itself, outside of the set of entries and never sent: where its walk
// stands, which hand taps. The name is its key; an empty value takes it away.
struct Bookmark {
    std::string name;
    Bytes value;
};

// From whom a batch comes.
struct Source {
    char letter = 't';
    std::uint64_t device = 0;
    bool isRelay =
        false; // it was asked for the journals of others too, after a restore of this station
    bool isStation =
        false; // it is the station that this device is paired with: all origins are welcome
};

struct HeadRow {
    journal::Place place;
    Digest digest;
    Bytes entry; // its bytes; see journal::readEntry
};

// One entry of a subject's history.
struct EntryRow {
    journal::Place place;
    Digest digest;
    Bytes entry;
    std::optional<journal::Standing> uncounted; // why it counts for nothing; nothing: it counts
};

struct StateRow {
    std::string subject;
    merge::State state = merge::State::Open;
    std::string valueJson; // empty where there is no value
    std::optional<descriptors::RuleName> rule;
    std::vector<journal::Place> heads; // ascending
};

// The subjects from `low` up to `high`, which is left out, as bytes.
struct PathStretch {
    std::string low;
    std::string high;
};

struct UncountedRow {
    journal::Place place;
    journal::Standing reason = journal::Standing::Counts;
    std::string subject;
};

enum class LooseReason { NotHere, OtherSubject, NotEarlier };
struct LooseRow {
    journal::Place entry;
    journal::Place names;
    LooseReason reason = LooseReason::NotHere;
};

struct ApartRow {
    std::int64_t id = 0;
    std::string origin;
    std::uint64_t first = 0;
    std::uint64_t last = 0;
    std::string device;
    std::string reason;
};

struct Counts {
    std::uint64_t entries = 0;
    std::uint64_t subjects = 0;
    std::uint64_t open = 0;
    std::uint64_t uncounted = 0;
    std::uint64_t waiting = 0;
    std::uint64_t apart = 0;
};

// Told now and then while something long goes on; false asks it to end, which leaves all finished
// steps in place.
using Progress = std::function<bool(std::uint64_t done, std::uint64_t total)>;

struct Verdict {
    std::uint64_t entries = 0;
    std::uint64_t subjects = 0;
    std::vector<std::string> faults; // empty where all is well; a plain sentence each, at most 100
};

class Database {
public:
    // Errors: AlreadyThere; those of opening a file.
    [[nodiscard]] static Result<std::unique_ptr<Database>>
    create(const std::string& path,
           const Founding& founding,
           std::unique_ptr<Surroundings> surroundings);
    // A reader sees the file as it was when opened. Opening for writing takes a new epoch (and a
    // station a new history) where the token says that the file is a copy. Errors: NotFound, InUse,
    // ReadOnly, Damaged, NewerVersion.
    [[nodiscard]] static Result<std::unique_ptr<Database>>
    open(const std::string& path, bool forWriting, std::unique_ptr<Surroundings> surroundings);
    ~Database();

    // For readers. Goes on to the file as it is now; true where something was written since.
    [[nodiscard]] Result<bool> refresh();
    // For readers. Lets go of the file as it was, so that the writer can tidy up behind itself.
    // refresh() comes before the next reading.
    void rest();

    Database(const Database&) = delete;
    Database& operator=(const Database&) = delete;
    Database(Database&&) = delete;
    Database& operator=(Database&&) = delete;

    [[nodiscard]] const About& about() const { return about_; }
    [[nodiscard]] const std::string& path() const { return path_; }
    [[nodiscard]] const merge::Rulebook& rulebook() const;
    // The device's letter and station as fixed at pairing.
    [[nodiscard]] Status adopt(char letter, const std::string& station, const std::string& zone);
    // Goes on in an epoch above the one it has and above all that are known of the device here and
    // elsewhere.
    [[nodiscard]] Status takeNewEpoch(std::uint32_t greatestElsewhere);
    // A new history id tells every device that this database may have lost what it had from it.
    [[nodiscard]] Status takeNewHistory();

    // Writes entries of this device in one transaction, on disk when it returns. OneAct makes them
    // one group. Errors: InvalidInput (an entry that would not count, a ruling without a reason),
    // BeyondLimit, DiskFull, Io; then nothing was written.
    [[nodiscard]] Result<std::vector<journal::Place>> append(std::span<const Draft> acts,
                                                             std::optional<journal::Wall> wall,
                                                             Grouping grouping = Grouping::Single,
                                                             std::span<const Bookmark> marks = {});
    // Bookmarks that go with an act stand or fall with it; here they are kept by themselves.
    [[nodiscard]] Status keep(std::span<const Bookmark> marks);
    // Empty where there is none of that name.
    [[nodiscard]] Result<Bytes> kept(const std::string& name);

    [[nodiscard]] journal::Vector vector() const;
    [[nodiscard]] Result<bool> holds(const journal::BranchEnd& end);
    // What somebody lacks who holds these ends of the origin and all before them.
    [[nodiscard]] Result<std::vector<journal::Part>>
    missing(const journal::Origin& origin, std::span<const journal::BranchEnd> held);
    [[nodiscard]] std::vector<journal::Segment> segments(const journal::Origin& origin) const;
    [[nodiscard]] std::uint32_t greatestEpoch(std::uint64_t device) const;
    // Entries of a segment from seq `from` on, as many as fit: at least one.
    [[nodiscard]] Result<journal::Run> readRun(const journal::Segment& segment,
                                               std::uint64_t from,
                                               std::size_t mostEntries,
                                               std::size_t mostBytes);
    // Takes a batch in one transaction; a report for each run, in order.
    [[nodiscard]] Result<std::vector<journal::RunReport>> merge(const journal::Batch& batch,
                                                                const Source& source);

    // Subjects in ascending order; `under` is a subject or the path above some, empty for all. The
    // callback returns false to stop.
    [[nodiscard]] Status eachState(const std::string& under,
                                   const std::function<bool(const StateRow&)>& row);
    [[nodiscard]] Status eachConflict(const std::string& under,
                                      const std::function<bool(const StateRow&)>& row);
    // Likewise for all subjects from `low` up to `high`, which is left out, as bytes.
    [[nodiscard]] Status eachStateBetween(const std::string& low,
                                          const std::string& high,
                                          const std::function<bool(const StateRow&)>& row);
    // Likewise for many stretches, one after the other: far quicker than one call for each.
    [[nodiscard]] Status eachStateIn(std::span<const PathStretch> stretches,
                                     const std::function<bool(const StateRow&)>& row);
    // Likewise, in no order and without the heads: a pass over the whole station takes a fraction
    // of the time. `valueJson` is empty where there is no value; both texts are valid during the
    // call.
    [[nodiscard]] Status eachStateUnordered(
        const std::string& low,
        const std::string& high,
        const std::function<
            bool(std::string_view subject, merge::State, std::string_view valueJson)>& row);
    // Subjects between the bounds about which more than one entry was taken in, with all of them,
    // in no order.
    [[nodiscard]] Status eachWithSeveralEntries(
        const std::string& low,
        const std::string& high,
        const std::function<bool(std::string_view subject, const std::vector<EntryRow>& entries)>&
            row);
    // Ever written about, also where nothing stands of it any more; ascending, bounds as above.
    [[nodiscard]] Status eachSubjectBetween(const std::string& low,
                                            const std::string& high,
                                            const std::function<bool(std::string_view)>& subject);
    // Subjects whose heads do not agree, open or settled by a rule, with their heads; ascending by
    // when the subject first came.
    [[nodiscard]] Status eachContested(
        const std::function<bool(
            std::string_view subject, merge::State state, const std::vector<HeadRow>& heads)>& row);
    [[nodiscard]] Result<std::vector<HeadRow>> heads(const std::string& subject);
    // All entries ever taken in about the subject, ascending by count and then by place.
    [[nodiscard]] Result<std::vector<EntryRow>> entries(const std::string& subject);
    [[nodiscard]] Result<std::optional<StateRow>> state(const std::string& subject);
    [[nodiscard]] Status eachUncounted(const std::function<bool(const UncountedRow&)>& row);
    [[nodiscard]] Status eachLooseEdge(const std::function<bool(const LooseRow&)>& row);
    [[nodiscard]] Status eachApart(const std::function<bool(const ApartRow&)>& row);
    // All entries ascending by (origin, seq, digest).
    [[nodiscard]] Status eachEntry(const std::function<bool(const Digest&, BytesView)>& entry);
    [[nodiscard]] Result<Counts> counts();

    // Someone at the office takes in what waits apart: the office entries that came back after a
    // restore.
    [[nodiscard]] Result<std::uint64_t> takeInApart(std::int64_t id);

    [[nodiscard]] Result<ImportReport>
    importLines(std::istream& in, const std::string& name, const Progress& progress);
    [[nodiscard]] Status exportLines(std::ostream& out, const Progress& progress);

    // Checks the chains, makes everything derived anew beside what is there, and compares.
    [[nodiscard]] Result<Verdict> verify(const Progress& progress);
    // Makes everything derived anew, in place, in one transaction.
    [[nodiscard]] Status rebuild(const Progress& progress);
    // Writes a copy as of now, checks it, and only then gives it its name. The copy has no token:
    // opened for writing, it takes a new epoch.
    [[nodiscard]] Status backUp(const std::string& target, const Progress& progress);

    // Whether the file can be read and written now. After the disk failed, calls try to open it
    // anew; vector() and segments() are empty as long as that fails.
    [[nodiscard]] Status ready() { return usable(); }

    // The connection, for the parts of the store that keep tables of their own in the same file
    // (devices, photos).
    [[nodiscard]] Connection& connection() { return *connection_; }
    [[nodiscard]] Surroundings& surroundings() { return *surroundings_; }

private:
    Database(std::string path, std::unique_ptr<Surroundings> surroundings);
    friend class Importer;

    [[nodiscard]] Status createFile(const Founding& founding);
    [[nodiscard]] Status openFile(bool forWriting);
    [[nodiscard]] Status load();
    [[nodiscard]] Status readAbout();
    [[nodiscard]] Status found(const Founding& founding);
    [[nodiscard]] Status checkToken();
    [[nodiscard]] Status renewToken();
    [[nodiscard]] Status setAbout(const char* key, BytesView text);
    // After anything failed inside a transaction: what memory holds may be ahead of the file.
    void recover(const Error& why);
    [[nodiscard]] Status usable();

    [[nodiscard]] Result<std::vector<journal::Place>>
    appendInside(std::span<const Draft> acts,
                 std::optional<journal::Wall> wall,
                 Grouping grouping,
                 std::span<const Bookmark> marks);
    [[nodiscard]] Status keepInside(std::span<const Bookmark> marks);
    [[nodiscard]] Result<std::vector<journal::RunReport>> mergeInside(const journal::Batch& batch,
                                                                      const Source& source);
    [[nodiscard]] Result<journal::RunReport> mergeRun(const journal::Run& run);
    // Stores one entry behind `link` and moves the link onto it.
    [[nodiscard]] Status takeEntry(OriginRecord& record,
                                   Link& link,
                                   const journal::EntryView& entry,
                                   const Digest& digest);
    // Lets imported lines in that waited for what now stands before them.
    [[nodiscard]] Status admitWaiting();
    [[nodiscard]] Status
    admitBehind(const journal::Origin& origin, std::uint64_t first, std::uint64_t last);
    [[nodiscard]] Result<LineFate> placeLine(const journal::EntryView& entry,
                                             const std::optional<Digest>& digest);
    // False where the line waits already.
    [[nodiscard]] Result<bool> keepWaiting(const journal::EntryView& entry,
                                           const std::optional<Digest>& digest,
                                           const std::string& place);
    // Why a line that waits can never enter; empty where it can.
    [[nodiscard]] Result<std::string> hopelessReason(const journal::EntryView& entry,
                                                     const std::optional<Digest>& digest);
    [[nodiscard]] Result<journal::RunReport> weighResent(const journal::Run& run);
    [[nodiscard]] Result<std::vector<Digest>> digestsBehind(const journal::Origin& origin,
                                                            std::uint64_t seq);
    [[nodiscard]] Status addDigestsWithin(const journal::Origin& origin,
                                          std::uint64_t seq,
                                          std::vector<Digest>& digests);
    enum class Laid { New, There, NoRoom };
    [[nodiscard]] Result<Laid>
    layApart(const journal::Run& run, const Source& source, const std::string& reason);
    [[nodiscard]] Status finishInside();
    [[nodiscard]] Result<journal::Vector> writeBackup(const std::string& partial,
                                                      const Progress& progress);
    [[nodiscard]] Status checkBackup(const std::string& partial,
                                     const journal::Vector& copied,
                                     const Progress& progress);
    [[nodiscard]] Result<StateRow> rowFrom(std::int64_t subject,
                                           std::string path,
                                           std::int64_t state,
                                           std::string valueJson,
                                           std::optional<std::int64_t> rule,
                                           std::int64_t head);
    [[nodiscard]] journal::Place placeOf(std::int64_t entryId) const;
    struct PathBounds { // of `under` and what is below it, see kRange
        std::string low;
        std::string below;
        std::string beyond;
    };
    [[nodiscard]] Result<StateRow> rowAt(const Statement& rows);
    // From four columns: ID, digest, bytes, and why it is not counted (null where it is).
    [[nodiscard]] EntryRow entryAt(const Statement& rows, int first) const;
    [[nodiscard]] Status eachRow(const std::string& sql,
                                 const PathBounds& bounds,
                                 const std::function<bool(const StateRow&)>& row);

    std::string path_;
    std::unique_ptr<Surroundings> surroundings_;
    std::unique_ptr<WriteLock> lock_;
    std::unique_ptr<Connection> connection_;
    std::unique_ptr<Chain> chain_;
    std::unique_ptr<Derived> derived_;
    About about_;
    bool isReader_ = false;
    std::int64_t seenVersion_ = 0; // of a reader: what SQLite called the file as it was last read
    std::uint64_t waitingCount_ = 0;
    struct Admitted { // lines that waited and entered, or turned out to be held
        std::uint64_t taken = 0;
        std::uint64_t there = 0;
    };
    Admitted admitted_;
    // First and last seq that came in during the open transaction; kept only while lines wait.
    std::map<journal::Origin, std::pair<std::uint64_t, std::uint64_t>> touched_;
    bool isBroken_ = false;        // could not be opened again after the disk failed
    std::uint64_t plantedSeq_ = 0; // only for Bug::SeqOutsideTransaction
};

} // namespace bullace::store
