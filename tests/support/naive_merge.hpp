// Merging by brute force, written from the design alone: the set of entries, what counts, the
// heads, the values. Slow, plain, and without a line of the program's own merge; tests compare the
// two.
//
// It shares with the program only the reading of an entry's bytes into its JSON line.
#pragma once

#include "core/base/bytes.hpp"
#include "core/base/digest.hpp"

#include <nlohmann/json.hpp>

#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace bullace::test {

using Json = nlohmann::json;

struct NaivePlace {
    std::string origin;
    std::uint64_t seq = 0;
    friend auto operator<=>(const NaivePlace&, const NaivePlace&) = default;
};

struct NaiveEntry {
    NaivePlace place;
    std::uint64_t count = 0;
    std::optional<std::int64_t> wallMs;
    std::string author;
    std::string kind;
    std::string subject;
    Json value;
    std::vector<NaivePlace> over;
    std::optional<std::pair<std::uint64_t, std::uint64_t>> group; // first, n
    std::string digest;                                           // hex
    std::string before; // hex digest of the entry that it follows; empty before seq 1
};

// One line of `bullace state`.
struct NaiveState {
    std::string subject;
    std::string status;
    std::optional<Json> value;
    std::string rule;
    std::vector<NaivePlace> heads;

    // As text, with numbers told apart by how they are written (7 and 7.0).
    [[nodiscard]] std::string line() const;
};

// Reads the bytes of an entry. `candidates` are the digests of the entries that it may follow.
[[nodiscard]] NaiveEntry
readNaively(BytesView bytes, const Digest& digest, const std::vector<Digest>& candidates);

class NaiveStation {
public:
    // Each (origin, seq, digest) once. The entry lives as long as this.
    void add(const NaiveEntry& entry) { entries_.push_back(&entry); }

    // All subjects with a head, ascending.
    [[nodiscard]] std::vector<NaiveState> states();
    // The digests of the entries that count for nothing.
    [[nodiscard]] std::set<std::string> uncounted();

private:
    struct Rule {
        std::string name = "ask";
        std::optional<double> within;
        bool isPercent = false;
    };
    struct BookRule {
        std::string where = "*";
        std::string from;
        std::string to;
        std::optional<std::vector<std::string>> descriptors;
        Rule rule;
    };
    using Heads = std::vector<const NaiveEntry*>;

    void judge();
    void judgeGroups();
    [[nodiscard]] Heads headsOf(const Heads& members) const;
    void readBook(const std::vector<NaiveState>& states);
    [[nodiscard]] NaiveState settle(const std::string& subject, const Heads& heads) const;
    [[nodiscard]] std::optional<Json>
    decide(const std::string& descriptor, const Heads& heads, const Rule& rule) const;
    [[nodiscard]] Rule ruleFor(const std::vector<std::string>& parts) const;
    [[nodiscard]] std::string kindOf(const std::string& descriptor) const;
    [[nodiscard]] std::optional<double> placeOnScale(const std::string& descriptor,
                                                     const Json& value) const;

    static std::optional<Rule> readRule(const Json& value);
    static std::optional<BookRule> readBookRule(const Json& value);

    std::vector<const NaiveEntry*> entries_;
    std::set<const NaiveEntry*> counting_;
    std::map<std::uint64_t, BookRule> book_;
    std::map<std::string, Rule> ownRules_;
    std::map<std::string, std::string> ownKinds_;
    std::map<std::string, std::vector<Json>> ownCodes_;
};

} // namespace bullace::test
