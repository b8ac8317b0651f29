#include "support/naive_merge.hpp"

#include "core/journal/entry.hpp"
#include "core/journal/entry_line.hpp"

#include <algorithm>
#include <functional>

namespace bullace::test {

namespace {

constexpr std::uint64_t kGreatest = 281'474'976'710'656; // 2^48

std::vector<std::string> split(const std::string& path) {
    std::vector<std::string> parts;
    std::size_t from = 0;
    for (std::size_t slash = path.find('/'); slash != std::string::npos;
         slash = path.find('/', from)) {
        parts.push_back(path.substr(from, slash - from));
        from = slash + 1;
    }
    parts.push_back(path.substr(from));
    return parts;
}

bool isAmong(const std::string& word, std::initializer_list<const char*> words) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

// Letter and digits, without the epoch.
std::string deviceOf(const std::string& origin) {
    return origin.substr(0, 17);
}

bool isWithinLimits(const NaiveEntry& entry) {
    const bool isGroupRight =
        !entry.group || (entry.group->first > 0 && entry.group->second > 0 &&
                         entry.group->second <= 10'000 && entry.place.seq >= entry.group->first &&
                         entry.place.seq - entry.group->first < entry.group->second);
    return entry.place.seq <= kGreatest && entry.count <= kGreatest && entry.over.size() <= 1000 &&
           entry.subject.size() <= 512 && entry.author.size() <= 64 && isGroupRight;
}

bool hasOpened(const NaiveEntry& entry) {
    const std::vector<std::string> parts = split(entry.subject);
    const std::string prefix = entry.place.origin.substr(1, 6) + "-";
    return parts.size() == 3 && isAmong(parts[0], {"cross", "lot", "person", "accession"}) &&
           parts[1].rfind(prefix, 0) == 0 && !parts[2].empty();
}

bool hasRight(const NaiveEntry& entry) {
    const bool isObs = entry.subject.rfind("obs/", 0) == 0;
    if ((entry.kind == "observe" && entry.value.is_null()) ||
        (entry.kind == "retract" && !entry.value.is_null())) {
        return false;
    }
    if (entry.place.origin[0] == 's') {
        return isAmong(entry.kind, {"observe", "retract"}) ? isObs
                                                           : entry.kind != "catalog" || !isObs;
    }
    if (entry.place.origin[0] != 't') {
        return false;
    }
    if (entry.kind == "remark") {
        return true;
    }
    if (isAmong(entry.kind, {"observe", "retract"})) {
        return isObs;
    }
    if (entry.kind == "catalog") {
        return hasOpened(entry);
    }
    return entry.kind == "undo" && (isObs || hasOpened(entry)) &&
           std::all_of(entry.over.begin(), entry.over.end(), [&entry](const NaivePlace& place) {
               return deviceOf(place.origin) == deviceOf(entry.place.origin);
           });
}

bool mayCountAlone(const NaiveEntry& entry) {
    return isAmong(entry.kind, {"observe", "retract", "ruling", "catalog", "undo", "remark"}) &&
           isWithinLimits(entry) && hasRight(entry);
}

bool names(const NaiveEntry& entry, const NaiveEntry& other) {
    return entry.count > other.count &&
           std::find(entry.over.begin(), entry.over.end(), other.place) != entry.over.end();
}

bool isValued(const NaiveEntry& entry) {
    return isAmong(entry.kind, {"observe", "retract", "ruling", "catalog"});
}

} // namespace

std::string NaiveState::line() const {
    std::string text = subject + " " + status + " " + (value ? value->dump() : "-") + " " + rule;
    for (const NaivePlace& head : heads) {
        text += " " + head.origin + ":" + std::to_string(head.seq);
    }
    return text;
}

NaiveEntry
readNaively(BytesView bytes, const Digest& digest, const std::vector<Digest>& candidates) {
    std::string line;
    journal::appendEntryLine(line, *journal::readEntry(bytes), digest);
    const Json json = Json::parse(line);
    NaiveEntry entry;
    entry.place = {json["origin"], json["seq"]};
    entry.count = json["count"];
    if (json.contains("wall")) {
        entry.wallMs = json["wall"][0].get<std::int64_t>();
    }
    entry.author = json["author"];
    entry.kind = json["kind"];
    entry.subject = json["subject"];
    entry.value = json["value"];
    for (const Json& place : json["over"]) {
        entry.over.push_back({place[0], place[1]});
    }
    if (json.contains("group")) {
        entry.group.emplace(json["group"][0], json["group"][1]);
    }
    entry.digest = json["digest"];
    for (const Digest& before : candidates) {
        if (sha256({before.view(), bytes}) == digest) {
            entry.before = before.hex();
        }
    }
    return entry;
}

void NaiveStation::judgeGroups() {
    std::map<std::string, const NaiveEntry*> byDigest;
    for (const NaiveEntry* entry : entries_) {
        byDigest[entry->digest] = entry;
    }
    for (const NaiveEntry* last : entries_) {
        if (!last->group || last->place.seq != last->group->first + last->group->second - 1) {
            continue;
        }
        Heads all;
        for (const NaiveEntry* at = last;
             at != nullptr && at->group == last->group && mayCountAlone(*at);) {
            all.push_back(at);
            const auto before = byDigest.find(at->before);
            at = all.size() < last->group->second && before != byDigest.end() ? before->second
                                                                              : nullptr;
        }
        if (all.size() == last->group->second) {
            counting_.insert(all.begin(), all.end());
        }
    }
}

void NaiveStation::judge() {
    counting_.clear();
    for (const NaiveEntry* entry : entries_) {
        if (!entry->group && mayCountAlone(*entry)) {
            counting_.insert(entry);
        }
    }
    judgeGroups();
}

std::set<std::string> NaiveStation::uncounted() {
    judge();
    std::set<std::string> digests;
    for (const NaiveEntry* entry : entries_) {
        if (counting_.count(entry) == 0) {
            digests.insert(entry->digest);
        }
    }
    return digests;
}

// The definition as it stands: an entry is undone if a counting undo names it that is not undone
// itself.
NaiveStation::Heads NaiveStation::headsOf(const Heads& members) const {
    std::map<const NaiveEntry*, bool> known;
    const std::function<bool(const NaiveEntry&)> isUndone = [&](const NaiveEntry& entry) {
        if (const auto found = known.find(&entry); found != known.end()) {
            return found->second;
        }
        const bool undone =
            std::any_of(members.begin(), members.end(), [&](const NaiveEntry* other) {
                return other->kind == "undo" && counting_.count(other) != 0 &&
                       names(*other, entry) && !isUndone(*other);
            });
        known[&entry] = undone;
        return undone;
    };
    const auto stands = [&](const NaiveEntry& entry) {
        return isValued(entry) && counting_.count(&entry) != 0 && !isUndone(entry);
    };
    Heads heads;
    for (const NaiveEntry* entry : members) {
        const bool isReplaced =
            std::any_of(members.begin(), members.end(), [&](const NaiveEntry* other) {
                return names(*other, *entry) && stands(*other);
            });
        if (stands(*entry) && !isReplaced) {
            heads.push_back(entry);
        }
    }
    std::sort(heads.begin(), heads.end(), [](const NaiveEntry* a, const NaiveEntry* b) {
        return std::tie(a->place, a->digest) < std::tie(b->place, b->digest);
    });
    return heads;
}

std::vector<NaiveState> NaiveStation::states() {
    judge();
    std::map<std::string, Heads> bySubject;
    for (const NaiveEntry* entry : entries_) {
        bySubject[entry->subject].push_back(entry);
    }
    std::map<std::string, Heads> heads;
    std::vector<NaiveState> unruled;
    for (const auto& [subject, members] : bySubject) {
        if (Heads found = headsOf(members); !found.empty()) {
            if (subject.rfind("obs/", 0) != 0) {
                unruled.push_back(settle(subject, found));
            }
            heads[subject] = std::move(found);
        }
    }
    readBook(unruled);
    std::vector<NaiveState> states;
    for (const auto& [subject, found] : heads) {
        states.push_back(settle(subject, found));
    }
    return states;
}

} // namespace bullace::test
