#include "office/observation_list.hpp"

#include "store/json_reader.hpp"

#include <map>

namespace bullace::office {

using journal::Subject;

namespace {

constexpr std::size_t kAsksEvery = 4096; // subjects between two looks at whether anybody waits

// Bytes between which all of the block's observations lie: '.' follows '-', and '0' follows '/'.
store::PathStretch stretchOf(const ObservationWish& wish) {
    return wish.block.empty()
               ? store::PathStretch{"obs/", "obs0"}
               : store::PathStretch{"obs/" + wish.block + "-", "obs/" + wish.block + "."};
}

bool isWished(const ObservationWish& wish, std::string_view subject) {
    return wish.descriptor.empty() || journal::readSubject(subject).descriptor == wish.descriptor;
}

} // namespace

Result<ObservationPages> readObservationPages(store::Database& database,
                                              const ObservationWish& wish,
                                              std::size_t perPage,
                                              const Token& token) {
    ObservationPages pages;
    pages.perPage = perPage;
    std::size_t looked = 0;
    bool isCancelled = false;
    const store::PathStretch stretch = stretchOf(wish);
    const Status read =
        database.eachSubjectBetween(stretch.low, stretch.high, [&](std::string_view subject) {
            isCancelled = ++looked % kAsksEvery == 0 && token.isCancelled();
            if (!isCancelled && isWished(wish, subject)) {
                if (pages.count++ % perPage == 0) {
                    pages.starts.emplace_back(subject);
                }
            }
            return !isCancelled;
        });
    if (isCancelled) {
        return Error{ErrorCode::Cancelled, "Nobody waits for this any more.", {}};
    }
    return read ? Result<ObservationPages>(std::move(pages))
                : Result<ObservationPages>(read.error());
}

Result<std::vector<VineValue>> readObservationPage(store::Database& database,
                                                   const ObservationWish& wish,
                                                   const std::string& from,
                                                   std::size_t most) {
    std::vector<VineValue> lines;
    Status read =
        database.eachSubjectBetween(from, stretchOf(wish).high, [&](std::string_view path) {
            if (isWished(wish, path)) {
                const Subject subject = journal::readSubject(path);
                VineValue line;
                line.subject = path;
                line.position = subject.id;
                line.date = subject.date;
                line.descriptor = subject.descriptor;
                line.sample = subject.sample;
                line.state = merge::State::Retracted;
                lines.push_back(std::move(line));
            }
            return lines.size() < most;
        });
    if (!read || lines.empty()) {
        return read ? Result<std::vector<VineValue>>(std::move(lines))
                    : Result<std::vector<VineValue>>(read.error());
    }
    std::map<std::string, std::size_t> at;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        at[lines[i].subject] = i;
    }
    // A zero byte ends no subject: the last one is read, too.
    read = database.eachStateBetween(
        from, lines.back().subject + '\0', [&](const store::StateRow& row) {
            if (const auto found = at.find(row.subject); found != at.end()) {
                VineValue& line = lines[found->second];
                line.state = row.state;
                Result<Bytes> value = store::readJson(row.valueJson);
                line.value = row.valueJson.empty() || !value ? Bytes{} : std::move(*value);
            }
            return true;
        });
    return read ? Result<std::vector<VineValue>>(std::move(lines))
                : Result<std::vector<VineValue>>(read.error());
}

} // namespace bullace::office
