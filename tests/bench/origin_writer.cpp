#include "bench/origin_writer.hpp"

#include "bench/measure.hpp"

#include <utility>

namespace bullace::bench {

namespace {

constexpr std::size_t kAtOnce = 10'000; // entries a batch
constexpr std::int64_t kWalkMs = 1'600'000'000'000;
constexpr std::int64_t kEntryMs = 2400; // from one entry to the next

} // namespace

void OriginWriter::write(const char* author, journal::Kind kind, std::string subject, Bytes value) {
    ++seq_;
    const journal::Entry entry{run_.origin,
                               seq_,
                               seq_,
                               journal::Wall{kWalkMs + std::int64_t(seq_) * kEntryMs, -300},
                               author,
                               std::string(journal::kindWord(kind)),
                               std::move(subject),
                               std::move(value),
                               {},
                               {},
                               {},
                               {},
                               {}};
    run_.entries.push_back(entry.encode());
    run_.lastDigest = journal::chainDigest(run_.lastDigest, run_.entries.back());
    if (run_.entries.size() == kAtOnce) {
        flush();
    }
}

void OriginWriter::flush() {
    if (!run_.entries.empty()) {
        must(database_.merge({run_}, {.isStation = true}).ok(), "merging entries");
    }
    run_.first = seq_ + 1;
    run_.entries.clear();
}

} // namespace bullace::bench
