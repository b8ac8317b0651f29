#include "sync/server/summary_words.hpp"

#include <vector>

namespace bullace::server {

namespace {

std::string named(const std::vector<journal::Origin>& origins) {
    std::string names;
    for (const journal::Origin& origin : origins) {
        names += (names.empty() ? "" : ", ") + origin.text();
    }
    return names;
}

std::string entries(std::uint64_t count) {
    return counted(count, "entry", "entries");
}

} // namespace

std::string counted(std::uint64_t count, const char* one, const char* several) {
    return std::to_string(count) + " " + (count == 1 ? one : several);
}

std::string summaryWords(const sync::Summary& summary) {
    std::string words = summary.sentEntries + summary.receivedEntries == 0
                            ? "nothing new on either side"
                            : "sent " + entries(summary.sentEntries) + " (" +
                                  std::to_string(summary.newThere) + " new there), received " +
                                  entries(summary.receivedEntries) + " (" +
                                  std::to_string(summary.newHere) + " new here)";
    words += summary.isComplete ? "." : "; it broke off, and the next sync goes on from here.";
    if (!summary.forked.empty()) {
        words += " Went two ways, both kept: " + named(summary.forked) + ".";
    }
    for (const auto& list : {summary.unlinkedHere, summary.unlinkedThere}) {
        words += list.empty()
                     ? ""
                     : " Does not follow from what is held, laid apart: " + named(list) + ".";
    }
    for (const auto& list : {summary.apartHere, summary.apartThere}) {
        words += list.empty() ? "" : " Waits for someone at the office: " + named(list) + ".";
    }
    if (!summary.damaged.empty()) {
        words += " Could not be read here: " + named(summary.damaged) + ".";
    }
    return words;
}

} // namespace bullace::server
