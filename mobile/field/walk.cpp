// The walk's own course: how it begins, goes on, and moves from stop to stop.
#include "field/walk.hpp"

#include "core/journal/json_value.hpp"

#include <algorithm>
#include <array>

namespace bullace::field {

namespace {

constexpr const char* kPlanMark = "walk";
constexpr const char* kFootingMark = "footing";
constexpr const char* kMoreMark = "more-samples";

std::string_view rowOf(const walk::Stop& stop) {
    return std::string_view(stop.position).substr(0, stop.position.rfind('-'));
}

// What was wished for at a stop of the leg goes with the stop when the leg is turned round.
void turn(const Leg& leg, MoreSamples& more) {
    MoreSamples turned;
    for (const auto& [at, samples] : more) {
        const bool isIn = at.first >= leg.first && at.first <= leg.last;
        turned[{isIn ? leg.first + leg.last - at.first : at.first, at.second}] = samples;
    }
    more = std::move(turned);
}

} // namespace

Walk::Walk(store::Database& database, const vineyard::Catalogue& catalogue, Pen& pen, WalkPlan plan)
    : database_(database),
      catalogue_(catalogue),
      pen_(pen),
      plan_(std::move(plan)),
      sheet_(std::make_unique<WalkSheet>(database, plan_)),
      memory_(std::make_unique<Memory>(database, catalogue, plan_.date)) {}

Result<std::unique_ptr<Walk>> Walk::begin(store::Database& database,
                                          const vineyard::Catalogue& catalogue,
                                          Pen& pen,
                                          WalkPlan plan) {
    if (plan.stops.empty() || plan.asks.empty()) {
        return Error{ErrorCode::InvalidInput,
                     "There is nothing to walk: the round has no vine here, or asks nothing.",
                     {}};
    }
    plan.before.clear();
    for (const journal::BranchEnd& end : database.vector()) {
        if (end.origin.device == database.about().own.device) {
            plan.before.push_back(end);
        }
    }
    std::unique_ptr<Walk> walk(new Walk(database, catalogue, pen, std::move(plan)));
    const std::array<store::Bookmark, 3> marks{{{kPlanMark, writePlan(walk->plan_)},
                                                {kFootingMark, writeFooting(walk->footing_)},
                                                {kMoreMark, {}}}};
    if (Status kept = database.keep(marks); !kept) {
        return kept.error();
    }
    return walk;
}

Result<std::unique_ptr<Walk>>
Walk::resume(store::Database& database, const vineyard::Catalogue& catalogue, Pen& pen) {
    const Result<Bytes> planBytes = database.kept(kPlanMark);
    const Result<Bytes> footingBytes = database.kept(kFootingMark);
    const Result<Bytes> moreBytes = database.kept(kMoreMark);
    for (const Result<Bytes>* const read : {&planBytes, &footingBytes, &moreBytes}) {
        if (!read->ok()) {
            return read->error();
        }
    }
    std::optional<WalkPlan> plan = readPlan(*planBytes);
    const std::optional<Footing> footing = readFooting(*footingBytes);
    if (!plan || !footing || footing->stop >= plan->stops.size() ||
        footing->ask >= plan->asks.size()) {
        return std::unique_ptr<Walk>();
    }
    std::unique_ptr<Walk> walk(new Walk(database, catalogue, pen, std::move(*plan)));
    walk->footing_ = *footing;
    walk->more_ = readMoreSamples(*moreBytes).value_or(MoreSamples{});
    if (Status read = walk->sheet_->readAll(); !read) {
        return read.error();
    }
    if (Status weighed = walk->weighLeg(); !weighed) {
        return weighed.error();
    }
    return walk;
}

Leg Walk::legOf(std::size_t stop) const {
    const std::vector<walk::Stop>& stops = plan_.stops;
    if (plan_.isList) {
        return {0, stops.size() - 1};
    }
    const auto isSame = [&](std::size_t i) {
        return stops[i].side == stops[stop].side && rowOf(stops[i]) == rowOf(stops[stop]);
    };
    Leg leg{stop, stop};
    while (leg.first > 0 && isSame(leg.first - 1)) {
        --leg.first;
    }
    while (leg.last + 1 < stops.size() && isSame(leg.last + 1)) {
        ++leg.last;
    }
    return leg;
}

unsigned Walk::wanted(std::size_t stop, std::size_t ask) const {
    const auto more = more_.find({stop, ask});
    return plan_.asks[ask].samples + (more == more_.end() ? 0 : more->second);
}

bool Walk::isDone(std::size_t stop, std::size_t ask) const {
    const auto noted = sheet_->at(stop, plan_.asks[ask].descriptor);
    const bool isAnswered = std::any_of(
        noted.begin(), noted.end(), [](const NotedValue* value) { return value->isNone(); });
    return isAnswered || noted.size() >= wanted(stop, ask);
}

bool Walk::isDone(std::size_t stop) const {
    for (std::size_t ask = 0; ask < plan_.asks.size(); ++ask) {
        if (!isDone(stop, ask)) {
            return false;
        }
    }
    return true;
}

// From a repaired stop one goes back to where one was; else to the next one.
Footing Walk::afterStop(const Footing& footing) const {
    Footing next = footing;
    next.ask = 0;
    next.isAtRowEnd = false;
    if (footing.stop < footing.front) {
        next.stop = footing.front;
        return next;
    }
    if (footing.stop == legOf(footing.stop).last) {
        next.isAtRowEnd = true;
        return next;
    }
    ++next.stop;
    next.front = std::max(next.front, next.stop);
    return next;
}

Footing Walk::after(const Footing& footing, std::size_t samplesMore) const {
    const auto noted = sheet_->at(footing.stop, plan_.asks[footing.ask].descriptor);
    if (noted.size() + samplesMore < wanted(footing.stop, footing.ask)) {
        return footing;
    }
    for (std::size_t ask = footing.ask + 1; ask < plan_.asks.size(); ++ask) {
        if (!isDone(footing.stop, ask)) {
            Footing next = footing;
            next.ask = ask;
            return next;
        }
    }
    return afterStop(footing);
}

Status Walk::write(const Draw& draw) {
    const std::array<store::Bookmark, 1> marks{{{kFootingMark, writeFooting(draw.next)}}};
    const auto written = pen_.write(draw.drafts, marks);
    if (!written) {
        return written.error();
    }
    footing_ = draw.next;
    for (const store::Draft& draft : draw.drafts) {
        if (Status refreshed = sheet_->refresh(draft.subject); !refreshed) {
            return refreshed;
        }
    }
    return {};
}

Status Walk::move(const Footing& next) {
    const std::array<store::Bookmark, 1> marks{{{kFootingMark, writeFooting(next)}}};
    if (Status kept = database_.keep(marks); !kept) {
        return kept;
    }
    footing_ = next;
    return {};
}

Status Walk::goTo(std::size_t stop, std::size_t ask) {
    if (stop >= plan_.stops.size() || ask >= plan_.asks.size()) {
        return Error{ErrorCode::NotFound, "This vine is not on the walk.", {}};
    }
    Footing next{stop, ask, false, std::max(footing_.front, stop)};
    // What is passed on the way on a walk that notes only what stands out is walked past.
    if (!plan_.isOnlyWhatStandsOut || stop <= footing_.front) {
        return move(next);
    }
    Draw draw{{}, next};
    for (std::size_t i = footing_.front; i < stop; ++i) {
        for (std::size_t open = 0; open < plan_.asks.size(); ++open) {
            if (isDone(i, open)) {
                continue;
            }
            Result<store::Draft> past = observation(
                i, plan_.asks[open].descriptor, journal::noneValue("walked-past"), false);
            if (!past) {
                return past.error();
            }
            draw.drafts.push_back(std::move(*past));
        }
    }
    return draw.drafts.empty() ? move(next) : write(draw);
}

Status Walk::walkOn() {
    const Footing next = afterStop(footing_);
    if (!plan_.isOnlyWhatStandsOut || isDone(footing_.stop)) {
        return move(next);
    }
    Draw draw{{}, next};
    for (std::size_t ask = 0; ask < plan_.asks.size(); ++ask) {
        if (isDone(footing_.stop, ask)) {
            continue;
        }
        Result<store::Draft> past = observation(
            footing_.stop, plan_.asks[ask].descriptor, journal::noneValue("walked-past"), false);
        if (!past) {
            return past.error();
        }
        draw.drafts.push_back(std::move(*past));
    }
    return write(draw);
}

Status Walk::takeMore(std::size_t stop, std::size_t ask, unsigned more) {
    MoreSamples wished = more_;
    wished[{stop, ask}] += more;
    Footing next = footing_;
    next.stop = stop;
    next.ask = ask;
    next.isAtRowEnd = false;
    const std::array<store::Bookmark, 2> marks{
        {{kFootingMark, writeFooting(next)}, {kMoreMark, writeMoreSamples(wished)}}};
    if (Status kept = database_.keep(marks); !kept) {
        return kept;
    }
    more_ = std::move(wished);
    footing_ = next;
    return {};
}

Status Walk::nextLeg(bool fromOtherEnd) {
    const std::size_t first = legOf(footing_.stop).last + 1;
    if (first >= plan_.stops.size()) {
        return end();
    }
    Footing next{first, 0, false, first};
    if (!fromOtherEnd) {
        return move(next);
    }
    WalkPlan turned = plan_;
    MoreSamples more = more_;
    std::size_t at = first;
    while (at < plan_.stops.size()) {
        const Leg leg = legOf(at);
        std::reverse(turned.stops.begin() + static_cast<std::ptrdiff_t>(leg.first),
                     turned.stops.begin() + static_cast<std::ptrdiff_t>(leg.last) + 1);
        turn(leg, more);
        at = plan_.isOneWay ? plan_.stops.size() : leg.last + 1;
    }
    const std::array<store::Bookmark, 3> marks{{{kPlanMark, writePlan(turned)},
                                                {kFootingMark, writeFooting(next)},
                                                {kMoreMark, writeMoreSamples(more)}}};
    if (Status kept = database_.keep(marks); !kept) {
        return kept;
    }
    plan_ = std::move(turned);
    more_ = std::move(more);
    footing_ = next;
    sheet_ = std::make_unique<WalkSheet>(database_, plan_);
    return sheet_->readAll();
}

Status Walk::end() {
    const std::array<store::Bookmark, 3> marks{
        {{kPlanMark, {}}, {kFootingMark, {}}, {kMoreMark, {}}}};
    if (Status kept = database_.keep(marks); !kept) {
        return kept;
    }
    isOver_ = true;
    return {};
}

LegReport Walk::legReport(std::size_t stop) const {
    LegReport report;
    report.leg = legOf(stop);
    report.stops = report.leg.last - report.leg.first + 1;
    for (std::size_t i = report.leg.first; i <= report.leg.last; ++i) {
        if (isDone(i)) {
            ++report.done;
        } else {
            report.leftOut.push_back(i);
        }
        const auto& noted = sheet_->all(i);
        if (std::any_of(noted.begin(), noted.end(), [](const NotedValue& value) {
                return value.doubt && !value.isKept;
            })) {
            report.marked.push_back(i);
        }
    }
    return report;
}

} // namespace bullace::field
