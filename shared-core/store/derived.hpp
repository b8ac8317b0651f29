// What follows from the entries: heads, settled values, conflicts, and what does not count. Kept up
// to date batch by batch, and the same as if it were made anew from all entries at once.
#pragma once

#include "core/journal/standing.hpp"
#include "core/merge/heads.hpp"
#include "core/merge/rulebook.hpp"
#include "core/merge/settle.hpp"
#include "store/chain.hpp"
#include "store/sqlite.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace bullace::store {

// Works on the derived tables of `connection`: the file's own, or temporary ones that hide them.
class Derived {
public:
    [[nodiscard]] static Result<Derived> load(Connection& connection);

    // Takes an entry in that was just stored. `record` and `branch` say where.
    [[nodiscard]] Status
    note(const OriginRecord& record, const Branch& branch, const journal::EntryView& entry);
    // Brings everything up to date with what was noted: to be called before the transaction
    // commits.
    [[nodiscard]] Status finish(const Chain& chain);

    [[nodiscard]] const merge::Rulebook& rulebook() const { return rulebook_; }

private:
    struct GroupEnd { // the last entry of a group has come: is the group whole?
        const OriginRecord* record = nullptr;
        const Branch* branch = nullptr;
        journal::Group group;
    };
    // The entries of one subject, held together with the bytes that their views point into.
    struct Members {
        std::vector<std::int64_t> ids;
        std::vector<Bytes> bytes;
        std::vector<journal::EntryView> entries;
        std::vector<Digest> digests;
        std::vector<merge::Member> members;
        std::string path;
    };

    explicit Derived(Connection& connection) : connection_(&connection) {}
    [[nodiscard]] Error unreadable() const;
    [[nodiscard]] Status prepare();
    [[nodiscard]] Status loadRulebook();
    [[nodiscard]] Status exclude(std::int64_t id, journal::Standing reason);
    [[nodiscard]] Result<bool>
    insertAlone(std::int64_t id, const journal::EntryView& entry, bool counts);
    [[nodiscard]] Status notePhoto(const journal::EntryView& entry);
    [[nodiscard]] Status join(std::int64_t id, const journal::EntryView& entry);
    [[nodiscard]] Status closeGroup(const Chain& chain, const GroupEnd& end);
    [[nodiscard]] Result<std::int64_t> subjectId(std::string_view path);
    [[nodiscard]] Result<Members> readMembers(Statement& select, std::int64_t subject);
    [[nodiscard]] Status rework(std::int64_t subject);
    [[nodiscard]] Status
    writeHeads(std::int64_t subject, const Members& members, const std::vector<std::size_t>& heads);
    [[nodiscard]] Status writeLooseEdges(const Members& members, const merge::Worked& worked);
    [[nodiscard]] Status settleHeads(std::int64_t subject,
                                     const Members& members,
                                     const std::vector<std::size_t>& heads);
    [[nodiscard]] Status settleAgain();
    [[nodiscard]] bool shapesRulebook(std::string_view path) const;

    Connection* connection_;
    merge::Rulebook rulebook_;
    std::vector<std::int64_t> dirty_; // subjects to be worked
    std::vector<GroupEnd> groupEnds_;
    bool isRulebookChanged_ = false;

    Statement insertSubject_;
    Statement selectSubject_;
    Statement countMember_;
    Statement insertMember_;
    Statement insertUncounted_;
    Statement deleteUncounted_;
    Statement selectMembers_;
    Statement selectHeads_;
    Statement updateState_;
    Statement deleteHeads_;
    Statement insertHead_;
    Statement deleteLoose_;
    Statement insertLoose_;
    Statement selectEntry_;
    Statement insertPhoto_;
};

} // namespace bullace::store
