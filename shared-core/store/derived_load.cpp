// Making the derived tables' statements ready, and reading the rulebook that stands in them.
#include "store/derived.hpp"

namespace bullace::store {

using journal::EntryView;
using merge::State;

namespace {

constexpr std::string_view kInsertSubject = "INSERT INTO subjects(path, entry, entry_count, state, "
                                            "head, value) VALUES(?1, ?2, 1, ?3, ?4, ?5) "
                                            "ON CONFLICT(path) DO NOTHING";
constexpr std::string_view kSelectMembers =
    "SELECT e.id, e.digest, e.bytes, EXISTS(SELECT 1 FROM uncounted u WHERE u.entry = e.id) FROM "
    "(SELECT entry FROM subjects WHERE id = ?1 UNION ALL SELECT entry FROM subject_entries WHERE "
    "subject = ?1) m "
    "JOIN entries e ON e.id = m.entry";
constexpr std::string_view kSelectHeads = "SELECT e.id, e.digest, e.bytes, 0 FROM subject_heads h "
                                          "JOIN entries e ON e.id = h.entry WHERE h.subject = ?1";

} // namespace

Result<Derived> Derived::load(Connection& connection) {
    Derived derived(connection);
    if (Status ready = derived.prepare(); !ready) {
        return ready.error();
    }
    if (Status read = derived.loadRulebook(); !read) {
        return read.error();
    }
    return derived;
}

Status Derived::prepare() {
    return connection_->prepareAll({
        {&insertSubject_, kInsertSubject},
        {&selectSubject_, "SELECT id FROM subjects WHERE path = ?1"},
        {&countMember_,
         "UPDATE subjects SET entry_count = entry_count + 1 WHERE path = ?1 RETURNING id"},
        {&insertMember_, "INSERT INTO subject_entries(subject, entry) VALUES(?1, ?2)"},
        {&insertUncounted_, "INSERT INTO uncounted(entry, reason) VALUES(?1, ?2)"},
        {&deleteUncounted_, "DELETE FROM uncounted WHERE entry = ?1"},
        {&selectMembers_, kSelectMembers},
        {&selectHeads_, kSelectHeads},
        {&updateState_,
         "UPDATE subjects SET state = ?2, head = ?3, value = ?4, rule = ?5 WHERE id = ?1"},
        {&deleteHeads_, "DELETE FROM subject_heads WHERE subject = ?1"},
        {&insertHead_, "INSERT INTO subject_heads(subject, entry) VALUES(?1, ?2)"},
        {&deleteLoose_, "DELETE FROM loose_edges WHERE entry = ?1"},
        {&insertLoose_, "INSERT OR IGNORE INTO loose_edges(entry, origin, seq) VALUES(?1, ?2, ?3)"},
        {&selectEntry_, "SELECT bytes FROM entries WHERE id = ?1"},
        {&insertPhoto_, "INSERT OR IGNORE INTO named_photos(digest) VALUES(?1)"},
    });
}

Status Derived::loadRulebook() {
    rulebook_ = {};
    Result<Statement> rows = connection_->prepare(
        "SELECT s.path, s.state, e.bytes FROM subjects s LEFT JOIN entries e ON e.id = s.head "
        "WHERE ((s.path >= 'rulebook/' AND s.path < 'rulebook0') OR "
        "(s.path >= 'descriptor/' AND s.path < 'descriptor0')) AND s.state IS NOT NULL");
    if (!rows) {
        return rows.error();
    }
    while (true) {
        const Result<bool> row = rows->step();
        if (!row) {
            return row.error();
        }
        if (!*row) {
            return {};
        }
        const auto state = static_cast<State>(rows->integer(1));
        const bool hasValue = state == State::Settled || state == State::Agreed;
        const Result<EntryView> head = journal::readEntry(rows->bytes(2));
        if (!head) {
            return unreadable();
        }
        rulebook_.apply(rows->text(0), hasValue ? head->value : BytesView{}, state == State::Open);
    }
}

Error Derived::unreadable() const {
    return {ErrorCode::Damaged,
            "An entry in \"" + connection_->path() +
                "\" cannot be read. Keep the file as it is, and run `bullace verify` on it.",
            {}};
}

} // namespace bullace::store
