// A programme in the hands of GLPK. Inside of integer_programme.
//
// GLPK ends the program where its own checks fail, unless its error hook does not return: so every
// call into it is left by a long jump then, over frames that own nothing, and the problem counts as
// not solved.
#pragma once

#include "core/breeding/integer_programme.hpp"

#include <chrono>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

struct glp_prob;
struct glp_tree;

namespace bullace::breeding {

// How far a row may be broken, relative to its bound: by a set; by the relaxation; by parts of
// units on the way to a set, where more planes would only slow the search down.
inline constexpr double kStrict = 1e-6;
inline constexpr double kRelaxed = 1e-5;
inline constexpr double kLoose = 1e-3;

class Deadline {
public:
    explicit Deadline(double seconds);
    [[nodiscard]] int milliseconds() const; // that are left, not below 0

private:
    using Clock = std::chrono::steady_clock;
    Clock::time_point end_;
};

enum class RelaxationStatus { Solved, Infeasible, Unknown };

// The programme over some of its columns; the others are at their lower bound.
class WholeSolver {
public:
    // `programme` must outlive it.
    WholeSolver(const Programme& programme, std::vector<std::uint32_t> columns);
    ~WholeSolver();
    WholeSolver(const WholeSolver&) = delete;
    WholeSolver& operator=(const WholeSolver&) = delete;
    WholeSolver(WholeSolver&&) = delete;
    WholeSolver& operator=(WholeSolver&&) = delete;

    void add(const ProgrammeRow& row);
    RelaxationStatus relax(const Deadline& deadline);
    // Of the relaxation that was solved.
    [[nodiscard]] double relaxedWorth() const;
    [[nodiscard]] double reducedCost(std::uint32_t column) const;
    std::span<const double> relaxedValues();

    // Branch and bound from the relaxation that was solved; false where no set was found.
    // `isAll` says whether the search was completed, `bound` what it proves.
    struct Whole {
        bool isFound = false;
        bool isAll = false;
        double worth = 0;
        double bound = 0;
    };
    // With a margin the search ends at the first set, and proves nothing. `known` is a set that
    // keeps all rows, or empty: only better ones are looked for.
    Whole search(const Deadline& deadline,
                 const FindBroken& findBroken,
                 double margin,
                 std::span<const double> known = {});
    std::vector<double> wholeValues();

private:
    void addColumns();
    void prepare(const ProgrammeRow& row);
    void addPrepared(glp_prob* problem);
    static void step(glp_tree* tree, void* info);
    void offerKnown(glp_tree* tree);
    void branch(glp_tree* tree) const;
    [[nodiscard]] bool isWhole() const;
    void addBroken(glp_prob* problem);

    const Programme& programme_;
    std::vector<std::uint32_t> columns_;
    std::vector<int> place_; // of each column in the problem, from 1; 0 where it is not in it
    std::vector<double> full_;
    glp_prob* problem_ = nullptr;
    bool isSound_ = false;
    const FindBroken* findBroken_ = nullptr;
    double margin_ = 0;
    double bound_ = 0;
    std::vector<double> known_; // by place, from 1; empty where there is none, or it was offered
    std::vector<ProgrammeRow> broken_;
    std::vector<int> indices_; // of the row that is being added; GLPK counts from 1
    std::vector<double> elements_;
    double rowLower_ = 0;
    double rowUpper_ = 0;
};

} // namespace bullace::breeding
