#include "core/merge/heads.hpp"

#include "core/base/planted.hpp"

#include <algorithm>
#include <numeric>
#include <tuple>

namespace bullace::merge {

using journal::Kind;
using journal::Place;

namespace {

bool canBeHead(Kind kind) {
    return kind == Kind::Observe || (kind == Kind::Retract && !planted(Bug::RetractionDropped)) ||
           kind == Kind::Ruling || kind == Kind::Catalog;
}

class SubjectWork {
public:
    explicit SubjectWork(std::span<const Member> members)
        : members_(members),
          isUndone_(members.size()),
          isReplaced_(members.size()),
          byPlace_(members.size()) {
        std::iota(byPlace_.begin(), byPlace_.end(), std::size_t{0});
        std::sort(byPlace_.begin(), byPlace_.end(), [this](std::size_t a, std::size_t b) {
            return comesBefore(members_[a], members_[b]);
        });
    }

    Worked run() {
        std::vector<std::size_t> byCount = byPlace_;
        std::stable_sort(byCount.begin(), byCount.end(), [this](std::size_t a, std::size_t b) {
            return members_[a].entry->count > members_[b].entry->count;
        });
        for (const std::size_t i : byCount) {
            follow(i);
        }
        for (const std::size_t i : byPlace_) {
            if (members_[i].counts && !isUndone_[i] && !isReplaced_[i] &&
                canBeHead(members_[i].entry->kind)) {
                worked_.heads.push_back(i);
            }
        }
        return std::move(worked_);
    }

private:
    // Greater counts were followed before, so whether this entry is undone is final by now.
    void follow(std::size_t i) {
        const Member& member = members_[i];
        const bool isUndo = member.entry->kind == Kind::Undo;
        if (!member.counts || member.entry->overCount == 0) {
            return;
        }
        const bool isIdle = (isUndone_[i] && !(isUndo && planted(Bug::UndoIgnoresCounts))) ||
                            !(isUndo || canBeHead(member.entry->kind));
        for (const Place& place : member.entry->edges()) {
            bool isFollowed = false;
            for (auto at = firstAt(place); at != byPlace_.end() && isAt(*at, place); ++at) {
                if (members_[*at].entry->count >= member.entry->count &&
                    !planted(Bug::EdgeCycleTaken)) {
                    continue;
                }
                isFollowed = true;
                if (!isIdle) {
                    (isUndo ? isUndone_ : isReplaced_)[*at] = true;
                }
            }
            if (!isFollowed) {
                worked_.loose.push_back({i, place});
            }
        }
    }

    // A fork puts several entries at one place: an edge names it in every branch.
    std::vector<std::size_t>::const_iterator firstAt(const Place& place) const {
        return std::lower_bound(
            byPlace_.begin(), byPlace_.end(), place, [this](std::size_t i, const Place& p) {
                return members_[i].entry->place() < p;
            });
    }
    bool isAt(std::size_t i, const Place& place) const {
        return members_[i].entry->place() == place;
    }

    std::span<const Member> members_;
    std::vector<bool> isUndone_;
    std::vector<bool> isReplaced_;
    std::vector<std::size_t> byPlace_;
    Worked worked_;
};

} // namespace

bool comesBefore(const Member& a, const Member& b) {
    return std::tie(a.entry->origin, a.entry->seq, *a.digest) <
           std::tie(b.entry->origin, b.entry->seq, *b.digest);
}

Worked workSubject(std::span<const Member> members) {
    if (members.size() == 1 && members[0].entry->overCount == 0) {
        const bool isHead = members[0].counts && canBeHead(members[0].entry->kind);
        return {isHead ? std::vector<std::size_t>{0} : std::vector<std::size_t>{}, {}};
    }
    Worked worked = SubjectWork(members).run();
    if (planted(Bug::HeadsByClock) && worked.heads.size() > 1) {
        const auto latest = std::max_element(
            worked.heads.begin(), worked.heads.end(), [&](std::size_t a, std::size_t b) {
                const auto clock = [&](std::size_t i) {
                    return members[i].entry->wall ? members[i].entry->wall->ms : -1;
                };
                return clock(a) < clock(b);
            });
        worked.heads = {*latest};
    }
    return worked;
}

} // namespace bullace::merge
