// Writes one device's journal, entry by entry, as the device would have.
#pragma once

#include "core/base/civil_date.hpp"
#include "core/journal/entry.hpp"

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace bullace::demo {

// One entry to be; what is not said is absent.
struct Note {
    std::string subject;
    Bytes value;
    std::vector<journal::Place> over;
    std::optional<std::string> as;
    std::optional<std::string> why;
};

class Pen {
public:
    // `clockErrorMs` is added to every reading of the device's clock.
    explicit Pen(journal::Origin origin, std::int64_t clockErrorMs = 0);

    // The device has seen entries up to this count.
    void seen(std::uint64_t count);
    // The person and the time from which the next entries are made, local; each takes `pace`
    // seconds.
    void begin(const std::string& author, CivilDate date, int hour, int minute, int pace);

    journal::Place write(journal::Kind kind, Note note);
    journal::Place observe(const std::string& subject, Bytes value);
    journal::Place observe(Note note) { return write(journal::Kind::Observe, std::move(note)); }
    journal::Place catalog(const std::string& subject, Bytes value);
    // The next sample of an observation: obs/PLACE/DATE/DESCRIPTOR/origin,n.
    journal::Place
    sample(const std::string& subject, Bytes value, std::optional<std::string> as = {});

    // The entries written between the two become one group.
    void beginGroup();
    void endGroup();

    [[nodiscard]] const std::vector<journal::Entry>& entries() const { return entries_; }
    [[nodiscard]] std::uint64_t count() const { return count_; }
    [[nodiscard]] journal::Origin origin() const { return origin_; }

private:
    journal::Origin origin_;
    std::int64_t clockErrorMs_;
    std::string author_;
    std::int64_t now_ = 0; // UTC milliseconds, true
    std::int64_t paceMs_ = 0;
    std::uint64_t count_ = 0;
    std::vector<journal::Entry> entries_;
    std::map<std::string, std::uint64_t> samples_; // how many of each observation
    std::size_t groupStart_ = 0;
};

// obs/POSITION/DATE/DESCRIPTOR
[[nodiscard]] std::string
observation(const std::string& place, CivilDate date, const std::string& descriptor);

} // namespace bullace::demo
