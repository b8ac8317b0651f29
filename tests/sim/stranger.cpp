// Entries of a device that keeps to no rule; whoever has its stick brings them in.
#include "sim/writer.hpp"

#include "core/journal/json_value.hpp"

namespace bullace::test {

namespace {

constexpr std::uint64_t kFirstStranger = 0x5;
constexpr std::uint64_t kFarCount = std::uint64_t{1} << 50; // beyond what counts

} // namespace

journal::Entry Writer::strangerEntry(const journal::Origin& origin, std::uint64_t seq) {
    const std::vector<std::string> kinds{"observe",
                                         "observe",
                                         "observe",
                                         "retract",
                                         "undo",
                                         "catalog",
                                         "ruling",
                                         "remark",
                                         "rumour"};
    journal::Entry entry;
    entry.origin = origin;
    entry.seq = seq;
    entry.count = dice_.isOne(1, 20) ? kFarCount : dice_.below(40);
    entry.wall = wall();
    entry.author = dice_.isOne(1, 30) ? std::string(80, 'x') : "zz";
    entry.kind = dice_.pick(kinds);
    entry.subject =
        "obs/B2-01-01/2026-05-12/" + std::string(dice_.isOne(1, 2) ? "clusters" : "stage");
    if (dice_.isOne(1, 6)) {
        entry.subject = dice_.isOne(1, 2) ? "rulebook/1" : "obs/odd";
    }
    entry.value = dice_.isOne(1, 8) ? journal::nullValue()
                                    : valueFor(entry.subject == "obs/odd" ? "x" : entry.subject);
    if (entry.kind == "retract" || entry.kind == "undo") {
        entry.value = journal::nullValue();
    }
    // Its own neighbours, in both directions: cycles, and itself.
    for (std::uint64_t i = dice_.below(4); i > 0; --i) {
        const std::uint64_t near = seq + dice_.below(5);
        entry.over.push_back({origin, near > 2 ? near - 2 : 1});
    }
    if (dice_.isOne(1, 3) && !ledger_.all().empty()) {
        const LedgerEntry* any = dice_.pick(ledger_.all());
        entry.over.push_back({any->mark.origin, any->mark.seq});
    }
    if (dice_.isOne(1, 4)) {
        const std::uint64_t n = dice_.between(1, 3);
        entry.group = journal::Group{seq > 1 && dice_.isOne(1, 2) ? seq - 1 : seq, n};
    }
    if (dice_.isOne(1, 10)) {
        entry.extra = journal::MapValue().add("mood", journal::textValue("sunny")).bytes();
    }
    return entry;
}

std::vector<const LedgerEntry*> Writer::strangerEntries(Ledger& ledger) {
    const std::string letters = "ttsx";
    const journal::Origin origin{
        letters[dice_.below(letters.size())], kFirstStranger + dice_.below(2), 1};
    std::vector<const LedgerEntry*> before;
    for (const LedgerEntry* entry : ledger.all()) {
        if (entry->mark.origin == origin) {
            before.push_back(entry);
        }
    }
    // Mostly behind its last entry, now and then behind an earlier one: a fork.
    const LedgerEntry* at = before.empty()      ? nullptr
                            : dice_.isOne(1, 5) ? dice_.pick(before)
                                                : before.back();
    std::uint64_t groupLeft = 0;
    journal::Group group;
    for (std::uint64_t i = dice_.between(1, 4); i > 0; --i) {
        journal::Entry entry = strangerEntry(origin, at == nullptr ? 1 : at->mark.seq + 1);
        // Now and then a whole group as it should be.
        if (groupLeft == 0 && i > 1 && dice_.isOne(1, 3)) {
            group = {entry.seq, i};
            groupLeft = i;
        }
        if (groupLeft > 0) {
            entry.group = group;
            --groupLeft;
        }
        const Bytes bytes = entry.encode();
        at = &ledger.learn(bytes,
                           journal::chainDigest(at == nullptr ? Digest{} : at->mark.digest, bytes));
        before.push_back(at);
    }
    return before;
}

} // namespace bullace::test
