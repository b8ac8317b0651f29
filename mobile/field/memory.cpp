#include "field/memory.hpp"

#include "core/descriptors/stages.hpp"
#include "core/journal/json_value.hpp"
#include "core/journal/subject.hpp"
#include "store/json_reader.hpp"

#include <algorithm>

namespace bullace::field {

namespace {

// A day's walk must not fill the memory with every vine's past.
constexpr std::size_t kMostVines = 128;

} // namespace

Result<const std::vector<Earlier>*> Memory::of(const std::string& position) {
    const auto found = vines_.find(position);
    if (found != vines_.end()) {
        return &found->second;
    }
    const vineyard::Planting* planting = catalogue_.plantings().at(position, today_);
    const std::string low =
        "obs/" + position + "/" + (planting == nullptr ? "" : writeDate(planting->from));
    std::vector<Earlier> earlier;
    const Status read = database_.eachStateBetween(
        low, "obs/" + position + "/" + writeDate(today_), [&](const store::StateRow& row) {
            const journal::Subject subject = journal::readSubject(row.subject);
            const auto date = readDate(subject.date);
            Result<Bytes> value = store::readJson(row.valueJson);
            if (date && !row.valueJson.empty() && value) {
                earlier.push_back({*date,
                                   std::string(subject.descriptor),
                                   !subject.sample.empty(),
                                   std::move(*value)});
            }
            return true;
        });
    if (!read) {
        return read.error();
    }
    if (vines_.size() >= kMostVines) {
        vines_.clear();
    }
    return &(vines_[position] = std::move(earlier));
}

Result<std::vector<walk::Noted>> Memory::numbers(const std::string& position,
                                                 const std::string& descriptor) {
    const Result<const std::vector<Earlier>*> past = of(position);
    if (!past) {
        return past.error();
    }
    const vineyard::Asked* asked = catalogue_.descriptor(descriptor);
    struct Day {
        double sum = 0;
        unsigned n = 0;
    };
    std::map<CivilDate, Day> days;
    for (const Earlier& earlier : **past) {
        const auto number = asked != nullptr && earlier.descriptor == descriptor
                                ? vineyard::comparableNumber(*asked, earlier.value)
                                : std::nullopt;
        if (number) {
            days[earlier.date].sum += *number;
            ++days[earlier.date].n;
        }
    }
    std::vector<walk::Noted> numbers;
    for (const auto& [date, day] : days) {
        numbers.push_back({date, day.sum / day.n});
    }
    return numbers;
}

Result<std::optional<double>> Memory::lastThisYear(const std::string& position,
                                                   const std::string& descriptor) {
    const Result<std::vector<walk::Noted>> all = numbers(position, descriptor);
    if (!all) {
        return all.error();
    }
    if (all->empty() || all->back().date.year() != today_.year()) {
        return std::optional<double>{};
    }
    return std::optional<double>(all->back().number);
}

} // namespace bullace::field
