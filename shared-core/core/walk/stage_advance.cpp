#include "core/walk/stage_advance.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <limits>
#include <utility>

namespace bullace::walk {

namespace {

constexpr double kRight = 0.84; // a note is the truth
constexpr double kOneOff = 0.08;
// Notes that have nothing to do with what was noted before.
constexpr double kStray = 0.01;
constexpr double kStrayEach = kStray / 20;
constexpr int kRounds = 6; // of estimation; more change little
// What is taken for granted beside the notes: that most vines went on together.
constexpr double kTogether = 3;
// How many vines of a stage it takes to be believed as much as those of all stages.
constexpr double kLean = 5;
constexpr double kTrace = 0.02; // nothing is impossible because it was not seen yet

double noise(int off) {
    return off == 0 ? kRight : kOneOff;
}

} // namespace

double StageAdvance::Weights::at(int number) const {
    const int place = number - first;
    return place < 0 || place >= static_cast<int>(of.size()) ? 0
                                                             : of[static_cast<std::size_t>(place)];
}

void StageAdvance::Weights::add(int number, double weight) {
    of[static_cast<std::size_t>(number - first)] += weight;
}

void StageAdvance::Weights::normalise() {
    double sum = 0;
    for (const double weight : of) {
        sum += weight;
    }
    for (double& weight : of) {
        weight /= sum;
    }
}

void StageAdvance::add(int then, int now) {
    ++notes_[{then, now}];
    ++count_;
}

const StageAdvance::Weights& StageAdvance::Estimate::from(int stage) const {
    const int place = stage - stood.first;
    return place < 0 || place >= static_cast<int>(wentOnFrom.size())
               ? wentOn
               : wentOnFrom[static_cast<std::size_t>(place)];
}

void StageAdvance::fit() {
    if (count_ == 0) {
        return;
    }
    now_ = firstEstimate();
    for (int round = 0; round < kRounds; ++round) {
        improve();
    }
}

// The notes taken as the truth. Both can be one off: the truth lies one step around the notes, and
// the advance two.
StageAdvance::Estimate StageAdvance::firstEstimate() const {
    std::pair<int, int> then{std::numeric_limits<int>::max(), std::numeric_limits<int>::min()};
    std::pair<int, int> on = then;
    for (const auto& [note, times] : notes_) {
        const int difference = note.second - note.first;
        then = {std::min(then.first, note.first), std::max(then.second, note.first)};
        on = {std::min(on.first, difference), std::max(on.second, difference)};
    }
    const auto around = [](const std::pair<int, int>& notes, int steps) {
        const auto width = static_cast<std::size_t>(notes.second - notes.first + 1 + 2 * steps);
        return Weights{notes.first - steps, std::vector<double>(width, 0.1)};
    };
    Estimate first{around(then, 1), {}, around(on, 2)};
    for (const auto& [note, times] : notes_) {
        first.stood.add(note.first, times);
        first.wentOn.add(note.second - note.first, times);
    }
    first.stood.normalise();
    first.wentOn.normalise();
    first.wentOnFrom.assign(first.stood.of.size(), first.wentOn);
    return first;
}

// One round: each pair of notes is shared among the truths that can have given it.
void StageAdvance::improve() {
    const Weights none{now_.wentOn.first, std::vector<double>(now_.wentOn.of.size(), 0)};
    Estimate next{now_.stood, std::vector<Weights>(now_.stood.of.size(), none), none};
    std::fill(next.stood.of.begin(), next.stood.of.end(), kTrace);
    std::fill(next.wentOn.of.begin(), next.wentOn.of.end(), kTrace);
    for (const auto& [note, times] : notes_) {
        share(note.first, note.second, times, next);
    }
    const auto common = std::max_element(next.wentOn.of.begin(), next.wentOn.of.end());
    *common += kTogether;
    next.stood.normalise();
    next.wentOn.normalise();
    for (Weights& steps : next.wentOnFrom) {
        for (std::size_t i = 0; i < steps.of.size(); ++i) {
            steps.of[i] += kLean * next.wentOn.of[i];
        }
        steps.normalise();
    }
    now_ = std::move(next);
}

void StageAdvance::share(int then, int now, double notes, Estimate& to) const {
    std::array<double, 9> parts{};
    double sum = kStrayEach;
    for (int i = 0; i < 9; ++i) {
        const int stood = then + i / 3 - 1;
        const int off = i % 3 - 1;
        double& part = parts[static_cast<std::size_t>(i)];
        part = now_.stood.at(stood) * noise(stood - then) * now_.from(stood).at(now + off - stood) *
               noise(off);
        sum += part;
    }
    for (int i = 0; i < 9; ++i) {
        const double part = parts[static_cast<std::size_t>(i)] / sum * notes;
        if (part > 0) {
            const int stood = then + i / 3 - 1;
            const int steps = now + i % 3 - 1 - stood;
            to.stood.add(stood, part);
            to.wentOn.add(steps, part);
            to.wentOnFrom[static_cast<std::size_t>(stood - to.stood.first)].add(steps, part);
        }
    }
}

double StageAdvance::likelihood(int now, int then) const {
    double both = 0;
    double stoodThere = 0;
    for (int stage = then - 1; stage <= then + 1; ++stage) {
        const double stood = now_.stood.at(stage) * noise(stage - then);
        const Weights& wentOn = now_.from(stage);
        stoodThere += stood;
        for (int off = -1; off <= 1; ++off) {
            both += stood * wentOn.at(now + off - stage) * noise(off);
        }
    }
    const double known = stoodThere > 0 ? both / stoodThere : 0;
    return (1 - kStray) * known + kStrayEach;
}

} // namespace bullace::walk
