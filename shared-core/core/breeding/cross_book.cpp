// Events are added up cross by cross; rates, due work and names are looked up from that.
#include "core/breeding/cross_book.hpp"

#include "core/statistics/distributions.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace bullace::breeding {

namespace {

Error wrong(std::string message) {
    return {ErrorCode::InvalidInput, std::move(message), ""};
}

void add(const BookEvent& event, BookEntry& entry) {
    StepRecord& step = entry.steps[static_cast<std::size_t>(event.step)];
    ++step.events;
    if (event.count) {
        step.count = step.count.value_or(0) + *event.count;
    }
    step.first = step.first ? std::min(*step.first, event.date) : event.date;
    step.last = step.last ? std::max(*step.last, event.date) : event.date;
    if (event.sex) {
        std::int64_t& of = *event.sex == FlowerSex::Male      ? entry.male
                           : *event.sex == FlowerSex::Perfect ? entry.perfect
                                                              : entry.female;
        of += event.count.value_or(1);
    }
}

// Steps that are parts of the step before them, so that counts can only fall.
constexpr std::array<std::pair<BookStep, BookStep>, 7> kFalling{{
    {BookStep::Pollinated, BookStep::Set},
    {BookStep::Set, BookStep::Harvested},
    {BookStep::Seeds, BookStep::Sinkers},
    {BookStep::Seeds, BookStep::Stratified},
    {BookStep::Stratified, BookStep::Germinated},
    {BookStep::Germinated, BookStep::Planted},
    {BookStep::Planted, BookStep::Selected},
}};

void comment(BookEntry& entry) {
    for (const auto& [before, after] : kFalling) {
        const StepRecord& one = entry.at(before);
        const StepRecord& other = entry.at(after);
        if (one.count && other.count && *other.count > *one.count) {
            entry.remarks.push_back(
                {BULLACE_SENTENCE("Remark",
                                  "%1: a count of %2 follows one of %3, which it cannot be a part "
                                  "of."),
                 {entry.head.cross, *other.count, *one.count}});
        }
        if (one.first && other.first && *other.first < *one.first) {
            entry.remarks.push_back(
                {BULLACE_SENTENCE("Remark",
                                  "%1: a step of %2 is dated before the step of %3 that it "
                                  "follows."),
                 {entry.head.cross, *other.first, *one.first}});
        }
    }
}

std::string groupOf(const CrossHead& head, BookGroup by) {
    switch (by) {
    case BookGroup::Mother:
        return head.mother;
    case BookGroup::Father:
        return head.father;
    case BookGroup::Year:
        return std::to_string(head.year);
    case BookGroup::All:
        break;
    }
    return "all";
}

struct Counts {
    double before;
    double after;
};

// Wilson's limits of a proportion from so many trials, which need not be whole.
statistics::Interval wilson(double p, double n, double quantile) {
    const double z = quantile * quantile / n;
    const double middle = (p + z / 2) / (1 + z);
    const double half =
        quantile / (1 + z) * std::sqrt(p * (1 - p) / n + quantile * quantile / (4 * n * n));
    return {std::max(middle - half, 0.0), std::min(middle + half, 1.0)};
}

statistics::Interval exactLimits(double after, double before) {
    return {after == 0 ? 0 : statistics::betaQuantile(0.025, after, before - after + 1),
            after == before ? 1 : statistics::betaQuantile(0.975, after + 1, before - after)};
}

void estimate(const std::vector<Counts>& crosses, SuccessRate& rate) {
    const auto before = static_cast<double>(rate.before);
    if (rate.before == 0) {
        return;
    }
    const double p = static_cast<double>(rate.after) / before;
    if (crosses.size() == 1) {
        rate.rate = statistics::Estimate{
            p, std::sqrt(p * (1 - p) / before), exactLimits(crosses[0].after, before)};
        return;
    }
    double chiSquared = 0;
    for (const Counts& cross : crosses) {
        const double off = cross.after - cross.before * p;
        chiSquared += p > 0 && p < 1 ? off * off / (cross.before * p * (1 - p)) : 0;
    }
    const auto degrees = static_cast<double>(crosses.size() - 1);
    rate.heterogeneity = chiSquared / degrees;
    const double n = before / std::max(*rate.heterogeneity, 1.0);
    rate.rate = statistics::Estimate{
        p, std::sqrt(p * (1 - p) / n), wilson(p, n, statistics::studentTQuantile(0.975, degrees))};
}

std::optional<DueWork> nextOf(const BookEntry& entry, const BookCalendar& calendar) {
    const auto after = [&entry](BookStep step, int days, DueAct act, Remark reason) {
        return DueWork{
            entry.head.cross, act, addDays(*entry.at(step).last, days), std::move(reason)};
    };
    const auto isDone = [&entry](BookStep step) { return entry.at(step).events > 0; };
    if (isDone(BookStep::Germinated) || isDone(BookStep::Planted)) {
        return {};
    }
    if (isDone(BookStep::Stratified)) {
        return after(BookStep::Stratified,
                     calendar.stratifiedFor,
                     DueAct::TakeOut,
                     {BULLACE_SENTENCE("Remark",
                                       "%1: the seed has then been cold for %2 days and can be "
                                       "sown."),
                      {entry.head.cross, std::int64_t{calendar.stratifiedFor}}});
    }
    for (const BookStep seed : {BookStep::Sinkers, BookStep::Seeds, BookStep::Harvested}) {
        if (isDone(seed)) {
            return after(seed,
                         calendar.stratifyAfter,
                         DueAct::Stratify,
                         {BULLACE_SENTENCE("Remark",
                                           "%1: the seed has to be cold and damp for %2 days "
                                           "before it is sown."),
                          {entry.head.cross, std::int64_t{calendar.stratifiedFor}}});
        }
    }
    if (isDone(BookStep::Set) && isDone(BookStep::Pollinated)) {
        return after(BookStep::Pollinated,
                     calendar.harvestAfter,
                     DueAct::Harvest,
                     {BULLACE_SENTENCE("Remark", "%1: the fruit may be ripe %2 days after bloom."),
                      {entry.head.cross, std::int64_t{calendar.harvestAfter}}});
    }
    if (isDone(BookStep::Pollinated)) {
        return after(BookStep::Pollinated,
                     calendar.bagsOffAfter,
                     DueAct::BagsOff,
                     {BULLACE_SENTENCE("Remark",
                                       "%1: fruit has set or not; count it and take the bags off."),
                      {entry.head.cross}});
    }
    return {};
}

} // namespace

Result<std::vector<BookEntry>> crossBook(std::span<const CrossHead> heads,
                                         std::span<const BookEvent> events) {
    std::vector<BookEntry> book;
    std::map<std::string, std::size_t, std::less<>> place;
    for (const CrossHead& head : heads) {
        if (head.cross.empty() || !place.emplace(head.cross, book.size()).second) {
            return wrong(head.cross.empty() ? "A cross has no number."
                                            : "The cross " + head.cross + " is given twice.");
        }
        book.emplace_back();
        book.back().head = head;
    }
    for (const BookEvent& event : events) {
        const auto at = place.find(event.cross);
        if (at == place.end()) {
            return wrong("There is no cross " + event.cross + " in the book.");
        }
        if (!event.date.ok() || event.count.value_or(0) < 0) {
            return wrong("A step of the cross " + event.cross +
                         " has a count below 0 or no day of the calendar.");
        }
        add(event, book[at->second]);
    }
    std::ranges::for_each(book, comment);
    return book;
}

std::vector<SuccessRate>
successRates(std::span<const BookEntry> book, BookStep from, BookStep to, BookGroup by) {
    std::map<std::string, std::pair<SuccessRate, std::vector<Counts>>> groups;
    for (const BookEntry& entry : book) {
        auto& [rate, crosses] = groups[groupOf(entry.head, by)];
        const auto before = entry.at(from).count;
        const auto after = entry.at(to).count;
        if (!before || !after || *after > *before || *before == 0) {
            ++rate.leftOut;
            continue;
        }
        ++rate.crosses;
        rate.before += *before;
        rate.after += *after;
        crosses.push_back({static_cast<double>(*before), static_cast<double>(*after)});
    }
    std::vector<SuccessRate> rates;
    for (auto& [name, group] : groups) {
        group.first.group = name;
        estimate(group.second, group.first);
        rates.push_back(std::move(group.first));
    }
    return rates;
}

std::vector<DueWork>
dueWork(std::span<const BookEntry> book, CivilDate today, int days, const BookCalendar& calendar) {
    std::vector<DueWork> due;
    for (const BookEntry& entry : book) {
        auto next = nextOf(entry, calendar);
        if (next && daysBetween(today, next->from) <= days) {
            due.push_back(std::move(*next));
        }
    }
    std::ranges::stable_sort(due, {}, &DueWork::from);
    return due;
}

Result<std::vector<std::string>> nameChain(std::span<const NameLink> links,
                                           const std::string& name) {
    std::map<std::string, std::string, std::less<>> earlier;
    std::map<std::string, std::string, std::less<>> later;
    for (const NameLink& link : links) {
        const auto [back, isNew] = earlier.emplace(link.later, link.name);
        if (!isNew && back->second != link.name) {
            return wrong(link.later + " is said to have been " + back->second + " and " +
                         link.name + " before: it can have been only one.");
        }
        if (link.isCross) {
            continue;
        }
        const auto [on, isFirst] = later.emplace(link.name, link.later);
        if (!isFirst && on->second != link.later) {
            return wrong(link.name + " is said to have become " + on->second + " and " +
                         link.later + ": it can be only one.");
        }
    }
    std::vector<std::string> chain{name};
    for (auto at = earlier.find(name); at != earlier.end(); at = earlier.find(chain.front())) {
        if (std::ranges::find(chain, at->second) != chain.end()) {
            return wrong("The names of " + name + " go in a circle.");
        }
        chain.insert(chain.begin(), at->second);
    }
    for (auto at = later.find(name); at != later.end(); at = later.find(chain.back())) {
        if (std::ranges::find(chain, at->second) != chain.end()) {
            return wrong("The names of " + name + " go in a circle.");
        }
        chain.push_back(at->second);
    }
    return chain;
}

} // namespace bullace::breeding
