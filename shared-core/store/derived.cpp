#include "store/derived.hpp"

#include "core/base/planted.hpp"
#include "core/journal/json_value.hpp"

#include <algorithm>

namespace bullace::store {

using journal::EntryView;
using journal::Kind;
using journal::Standing;
using merge::State;

namespace {

bool canBeHead(Kind kind) {
    return kind != Kind::Undo && kind != Kind::Remark && kind != Kind::Unknown;
}

} // namespace

bool Derived::shapesRulebook(std::string_view path) const {
    return (path.starts_with("rulebook/") || path.starts_with("descriptor/")) &&
           merge::shapesRulebook(journal::readSubject(path));
}

Status Derived::exclude(std::int64_t id, Standing reason) {
    return insertUncounted_.bind(1, id).bind(2, static_cast<std::int64_t>(reason)).execute();
}

Status Derived::note(const OriginRecord& record, const Branch& branch, const EntryView& entry) {
    const std::int64_t id = branch.entryId(entry.seq);
    Standing standing = journal::standing(entry);
    if (standing == Standing::Counts && entry.group && !planted(Bug::GroupHalfApplied)) {
        standing = Standing::GroupNotWhole;
        if (entry.seq == entry.group->first + entry.group->n - 1) {
            groupEnds_.push_back({&record, &branch, *entry.group});
        }
    }
    const bool counts = standing == Standing::Counts;
    if (!counts) {
        if (Status excluded = exclude(id, standing); !excluded) {
            return excluded;
        }
    }
    if (entry.kind == Kind::Observe && entry.subject.find("/photo") != std::string_view::npos) {
        if (Status named = notePhoto(entry); !named) {
            return named;
        }
    }
    const Result<bool> isNew = insertAlone(id, entry, counts);
    if (!isNew) {
        return isNew.error();
    }
    return *isNew ? Status{} : join(id, entry);
}

// Whether it counts or not: what an entry names has to come along with it.
Status Derived::notePhoto(const EntryView& entry) {
    const auto hex = journal::textOf(entry.value);
    const auto digest = hex && hex->size() == 64 ? fromHex(*hex) : std::nullopt;
    if (!digest || journal::readSubject(entry.subject).descriptor != "photo") {
        return {};
    }
    return insertPhoto_.bindBytes(1, *digest).execute();
}

// The common case at once: the first entry of a subject, which replaces nothing, is its head. False
// where the subject is there already.
Result<bool> Derived::insertAlone(std::int64_t id, const EntryView& entry, bool counts) {
    const bool isPlain = entry.overCount == 0;
    const bool isHead = counts && isPlain && canBeHead(entry.kind);
    const std::string json =
        isHead && !entry.isNull() ? journal::valueToJson(entry.value) : std::string{};
    insertSubject_.bindText(1, entry.subject).bind(2, id);
    if (isHead) {
        const State state = entry.isNull() ? State::Retracted : State::Settled;
        insertSubject_.bind(3, static_cast<std::int64_t>(state)).bind(4, id);
    } else {
        insertSubject_.bindNull(3).bindNull(4);
    }
    json.empty() ? insertSubject_.bindNull(5) : insertSubject_.bindText(5, json);
    if (Status done = insertSubject_.execute(); !done) {
        return done.error();
    }
    if (connection_->changes() == 0) {
        return false;
    }
    if (!isPlain) {
        dirty_.push_back(connection_->lastRowId());
    }
    isRulebookChanged_ = isRulebookChanged_ || (isHead && shapesRulebook(entry.subject));
    return true;
}

Status Derived::join(std::int64_t id, const EntryView& entry) {
    const Result<bool> row = countMember_.bindText(1, entry.subject).step();
    if (!row) {
        return row.error();
    }
    const std::int64_t subject = countMember_.integer(0);
    countMember_.reset();
    dirty_.push_back(subject);
    return insertMember_.bind(1, subject).bind(2, id).execute();
}

Status Derived::finish(const Chain& chain) {
    for (const GroupEnd& end : groupEnds_) {
        if (Status closed = closeGroup(chain, end); !closed) {
            return closed;
        }
    }
    groupEnds_.clear();
    std::sort(dirty_.begin(), dirty_.end());
    dirty_.erase(std::unique(dirty_.begin(), dirty_.end()), dirty_.end());
    for (const std::int64_t subject : dirty_) {
        if (Status worked = rework(subject); !worked) {
            return worked;
        }
    }
    dirty_.clear();
    if (!isRulebookChanged_) {
        return {};
    }
    isRulebookChanged_ = false;
    if (Status loaded = loadRulebook(); !loaded) {
        return loaded;
    }
    return settleAgain();
}

// A group counts once all its entries are on one branch, say the same of it, and may each count by
// themselves.
Status Derived::closeGroup(const Chain& chain, const GroupEnd& end) {
    const std::uint64_t last = end.group.first + end.group.n - 1;
    const std::vector<std::int64_t> ids =
        chain.path(*end.record, *end.branch, end.group.first, last);
    std::vector<std::string> paths;
    for (const std::int64_t id : ids) {
        const Result<bool> row = selectEntry_.bind(1, id).step();
        if (!row) {
            return row.error();
        }
        const Result<EntryView> entry =
            journal::readEntry(*row ? selectEntry_.bytes(0) : BytesView{});
        if (!entry) {
            return unreadable();
        }
        if (entry->group != end.group || journal::standing(*entry) != Standing::Counts) {
            selectEntry_.reset();
            return {};
        }
        paths.emplace_back(entry->subject);
        selectEntry_.reset();
    }
    for (std::size_t i = 0; i < ids.size(); ++i) {
        if (Status counted = deleteUncounted_.bind(1, ids[i]).execute(); !counted) {
            return counted;
        }
        const Result<std::int64_t> subject = subjectId(paths[i]);
        if (!subject) {
            return subject.error();
        }
        dirty_.push_back(*subject);
    }
    return {};
}

Result<std::int64_t> Derived::subjectId(std::string_view path) {
    const Result<bool> row = selectSubject_.bindText(1, path).step();
    if (!row) {
        return row.error();
    }
    const std::int64_t id = *row ? selectSubject_.integer(0) : 0;
    selectSubject_.reset();
    return id;
}

Result<Derived::Members> Derived::readMembers(Statement& select, std::int64_t subject) {
    Members read;
    select.bind(1, subject);
    std::vector<bool> counts;
    while (true) {
        const Result<bool> row = select.step();
        if (!row) {
            return row.error();
        }
        if (!*row) {
            break;
        }
        read.ids.push_back(select.integer(0));
        read.digests.push_back(Digest::fromBytes(select.bytes(1)).value_or(Digest{}));
        read.bytes.emplace_back(select.bytes(2));
        counts.push_back(select.integer(3) == 0);
    }
    select.reset();
    for (const Bytes& bytes : read.bytes) {
        const Result<EntryView> entry = journal::readEntry(bytes);
        if (!entry) {
            return unreadable();
        }
        read.entries.push_back(*entry);
    }
    for (std::size_t i = 0; i < read.entries.size(); ++i) {
        read.members.push_back({&read.entries[i], &read.digests[i], counts[i]});
    }
    read.path = read.entries.empty() ? std::string{} : std::string(read.entries[0].subject);
    return read;
}

Status Derived::rework(std::int64_t subject) {
    const Result<Members> members = readMembers(selectMembers_, subject);
    if (!members) {
        return members.error();
    }
    const merge::Worked worked = merge::workSubject(members->members);
    if (Status written = writeLooseEdges(*members, worked); !written) {
        return written;
    }
    if (Status written = writeHeads(subject, *members, worked.heads); !written) {
        return written;
    }
    isRulebookChanged_ = isRulebookChanged_ || shapesRulebook(members->path);
    return settleHeads(subject, *members, worked.heads);
}

Status Derived::writeLooseEdges(const Members& members, const merge::Worked& worked) {
    for (std::size_t i = 0; i < members.ids.size(); ++i) {
        if (members.entries[i].overCount == 0) {
            continue;
        }
        if (Status cleared = deleteLoose_.bind(1, members.ids[i]).execute(); !cleared) {
            return cleared;
        }
    }
    for (const merge::LooseEdge& edge : worked.loose) {
        const std::string origin = edge.names.origin.text();
        insertLoose_.bind(1, members.ids[edge.member]).bindText(2, origin);
        if (Status kept = insertLoose_.bind(3, static_cast<std::int64_t>(edge.names.seq)).execute();
            !kept) {
            return kept;
        }
    }
    return {};
}

Status Derived::writeHeads(std::int64_t subject,
                           const Members& members,
                           const std::vector<std::size_t>& heads) {
    if (Status cleared = deleteHeads_.bind(1, subject).execute(); !cleared) {
        return cleared;
    }
    if (heads.size() < 2) {
        return {};
    }
    for (const std::size_t head : heads) {
        if (Status kept = insertHead_.bind(1, subject).bind(2, members.ids[head]).execute();
            !kept) {
            return kept;
        }
    }
    return {};
}

Status Derived::settleHeads(std::int64_t subject,
                            const Members& members,
                            const std::vector<std::size_t>& heads) {
    updateState_.bind(1, subject).bindNull(2).bindNull(3).bindNull(4).bindNull(5);
    if (heads.empty()) {
        return updateState_.execute();
    }
    std::vector<merge::Member> standing;
    for (const std::size_t head : heads) {
        standing.push_back(members.members[head]);
    }
    const merge::Outcome outcome = merge::settle(members.path, standing, rulebook_);
    const std::string json =
        outcome.value.empty() ? std::string{} : journal::valueToJson(outcome.value);
    updateState_.bind(2, static_cast<std::int64_t>(outcome.state)).bind(3, members.ids[heads[0]]);
    if (!json.empty()) {
        updateState_.bindText(4, json);
    }
    if (outcome.rule) {
        updateState_.bind(5, static_cast<std::int64_t>(*outcome.rule));
    }
    return updateState_.execute();
}

// The rulebook has changed: only where several heads stand can it decide otherwise.
Status Derived::settleAgain() {
    Result<Statement> rows = connection_->prepare("SELECT DISTINCT subject FROM subject_heads");
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
        const std::int64_t subject = rows->integer(0);
        Result<Members> heads = readMembers(selectHeads_, subject);
        if (!heads) {
            return heads.error();
        }
        std::vector<std::size_t> order(heads->members.size());
        for (std::size_t i = 0; i < order.size(); ++i) {
            order[i] = i;
        }
        std::sort(order.begin(), order.end(), [&heads](std::size_t a, std::size_t b) {
            return merge::comesBefore(heads->members[a], heads->members[b]);
        });
        if (Status settled = settleHeads(subject, *heads, order); !settled) {
            return settled;
        }
    }
}

} // namespace bullace::store
