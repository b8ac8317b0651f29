// How the vines of a walk moved on since the last visit, learnt from both visits' notes: how often
// each stage was there, and by how many steps vines went on, with the observers' noise taken out of
// both. The slip detector compares with it what a stop would be in place and one vine along.
#pragma once

#include <map>
#include <utility>
#include <vector>

namespace bullace::walk {

// Latent classes fitted by expectation and maximisation (Dempster, Laird & Rubin 1977, J. R. Stat.
// Soc. B 39:1-38): a vine truly stood at t, moved on by d, and each note is one off in 16 of 100
// cases, half of them either way. A plain value.
class StageAdvance {
public:
    // One vine's notes, then and now, in whole steps.
    void add(int then, int now);
    [[nodiscard]] unsigned count() const { return count_; }

    // Estimates from all notes so far; until it was called first every likelihood is the same.
    void fit();

    // The probability of noting `now` at a vine of which `then` was noted. It is never 0: vines die
    // back, are replanted, and are mistaken.
    [[nodiscard]] double likelihood(int now, int then) const;

private:
    // Weights of consecutive whole numbers from `first` on; 0 outside.
    struct Weights {
        int first = 0;
        std::vector<double> of;

        [[nodiscard]] double at(int number) const;
        void add(int number, double weight); // within the numbers that are there
        void normalise();
    };

    // What is estimated. Vines low in a stage need longer to reach one further on than those high
    // in it, so the steps are known by stage as well, leaning on those of all vines.
    struct Estimate {
        Weights stood;                   // how many vines truly stood at a stage
        std::vector<Weights> wentOnFrom; // by how many steps those truly moved on; as stood.of
        Weights wentOn;                  // the same of all vines

        [[nodiscard]] const Weights& from(int stage) const;
    };

    [[nodiscard]] Estimate firstEstimate() const;
    void improve();
    void share(int then, int now, double notes, Estimate& to) const;

    std::map<std::pair<int, int>, unsigned> notes_; // then and now: how often
    unsigned count_ = 0;
    Estimate now_;
};

} // namespace bullace::walk
