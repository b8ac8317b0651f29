#include "sync/server/arrivals.hpp"

#include "core/journal/json_value.hpp"

namespace bullace::server {

using journal::integerValue;
using journal::textValue;

namespace {

constexpr const char* kName = "arrivals";

Bytes written(const Arrival& arrival) {
    const auto whole = [](std::uint64_t count) {
        return integerValue(static_cast<std::int64_t>(count));
    };
    return journal::MapValue()
        .add("at", integerValue(arrival.atMs))
        .add("device", textValue(arrival.device))
        .add("name", textValue(arrival.name))
        .add("new_here", whole(arrival.newHere))
        .add("new_there", whole(arrival.newThere))
        .add("photos", whole(arrival.photos))
        .add("apart", whole(arrival.apart))
        .add("forked", whole(arrival.forked))
        .add("clock_ms", integerValue(arrival.clockAheadMs))
        .add("complete", journal::booleanValue(arrival.isComplete))
        .add("trouble", textValue(arrival.trouble))
        .bytes();
}

Arrival readArrival(BytesView value) {
    const auto whole = [value](std::string_view key) {
        const auto member = journal::memberOf(value, key);
        return member ? journal::wholeNumberOf(*member).value_or(0) : 0;
    };
    const auto text = [value](std::string_view key) {
        const auto member = journal::memberOf(value, key);
        return member ? std::string(journal::textOf(*member).value_or("")) : std::string{};
    };
    const auto complete = journal::memberOf(value, "complete");
    Arrival arrival;
    arrival.atMs = whole("at");
    arrival.device = text("device");
    arrival.name = text("name");
    arrival.newHere = static_cast<std::uint64_t>(whole("new_here"));
    arrival.newThere = static_cast<std::uint64_t>(whole("new_there"));
    arrival.photos = static_cast<std::uint64_t>(whole("photos"));
    arrival.apart = static_cast<std::uint64_t>(whole("apart"));
    arrival.forked = static_cast<std::uint64_t>(whole("forked"));
    arrival.clockAheadMs = whole("clock_ms");
    arrival.isComplete = complete && *complete == journal::booleanValue(true);
    arrival.trouble = text("trouble");
    return arrival;
}

} // namespace

Arrival arrivalOf(const sync::net::KnownDevice& device,
                  const sync::Summary& summary,
                  const std::string& trouble,
                  std::int64_t nowMs) {
    Arrival arrival;
    arrival.atMs = nowMs;
    arrival.device = journal::deviceText(device.letter, device.device);
    arrival.name = device.name;
    arrival.newHere = summary.newHere;
    arrival.newThere = summary.newThere;
    arrival.photos = summary.photosReceived;
    arrival.apart = summary.apartHere.size() + summary.unlinkedHere.size();
    arrival.forked = summary.forked.size();
    arrival.clockAheadMs = summary.clockDifferenceMs;
    arrival.isComplete = summary.isComplete;
    arrival.trouble = trouble;
    return arrival;
}

Result<std::vector<Arrival>> arrivals(store::Database& database) {
    const Result<Bytes> kept = database.kept(kName);
    if (!kept) {
        return kept.error();
    }
    std::vector<Arrival> all;
    for (const BytesView item : journal::itemsOf(*kept).value_or(std::vector<BytesView>{})) {
        all.push_back(readArrival(item));
    }
    return all;
}

Status keepArrival(store::Database& database, const Arrival& arrival) {
    const Result<Bytes> kept = database.kept(kName);
    if (!kept) {
        return kept.error();
    }
    std::vector<Bytes> items{written(arrival)};
    for (const BytesView item : journal::itemsOf(*kept).value_or(std::vector<BytesView>{})) {
        if (items.size() < kMostArrivals) {
            items.emplace_back(item);
        }
    }
    const store::Bookmark mark{kName, journal::listValue(items)};
    return database.keep({&mark, 1});
}

} // namespace bullace::server
