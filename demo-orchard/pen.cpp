#include "demo/pen.hpp"

#include "core/journal/json_value.hpp"

#include <cassert>
#include <utility>

namespace bullace::demo {

namespace {

constexpr std::int64_t kOffsetMinutes = -300;

} // namespace

Pen::Pen(journal::Origin origin, std::int64_t clockErrorMs)
    : origin_(origin),
      clockErrorMs_(clockErrorMs) {}

void Pen::seen(std::uint64_t count) {
    count_ = std::max(count_, count);
}

void Pen::begin(const std::string& author, CivilDate date, int hour, int minute, int pace) {
    const std::int64_t days = std::chrono::sys_days(date).time_since_epoch().count();
    author_ = author;
    now_ = ((days * 24 + hour) * 60 + minute - kOffsetMinutes) * 60'000;
    paceMs_ = std::int64_t{pace} * 1000;
}

journal::Place Pen::write(journal::Kind kind, Note note) {
    journal::Entry& entry = entries_.emplace_back();
    entry.origin = origin_;
    entry.seq = entries_.size();
    entry.count = ++count_;
    // A pace that is not the same at every vine, from the entry's number alone.
    now_ += paceMs_ + static_cast<std::int64_t>(entry.seq * 7919 % 4801);
    entry.wall = journal::Wall{now_ + clockErrorMs_, kOffsetMinutes};
    entry.author = author_;
    entry.kind = journal::kindWord(kind);
    entry.subject = std::move(note.subject);
    entry.value = std::move(note.value);
    entry.over = std::move(note.over);
    entry.why = std::move(note.why);
    entry.as = std::move(note.as);
    return {origin_, entry.seq};
}

journal::Place Pen::observe(const std::string& subject, Bytes value) {
    return observe({subject, std::move(value), {}, {}, {}});
}

journal::Place Pen::catalog(const std::string& subject, Bytes value) {
    return write(journal::Kind::Catalog, {subject, std::move(value), {}, {}, {}});
}

journal::Place Pen::sample(const std::string& subject, Bytes value, std::optional<std::string> as) {
    const std::uint64_t number = ++samples_[subject];
    return observe({subject + "/" + origin_.text() + "," + std::to_string(number),
                    std::move(value),
                    {},
                    std::move(as),
                    {}});
}

void Pen::beginGroup() {
    groupStart_ = entries_.size();
}

void Pen::endGroup() {
    assert(entries_.size() > groupStart_);
    const journal::Group group{groupStart_ + 1, entries_.size() - groupStart_};
    for (std::size_t i = groupStart_; i < entries_.size(); ++i) {
        entries_[i].group = group;
    }
}

std::string observation(const std::string& place, CivilDate date, const std::string& descriptor) {
    return "obs/" + place + "/" + writeDate(date) + "/" + descriptor;
}

} // namespace bullace::demo
