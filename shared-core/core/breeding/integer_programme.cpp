// GLPK ends the program where its own checks fail, unless its error hook does not return: so every
// call into it is left by a long jump then, over frames that own nothing, and the problem counts as
// not solved.
#include "core/breeding/integer_programme.hpp"

#include "core/breeding/programme_rows.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <csetjmp>
#include <glpk.h>
#include <numeric>

namespace bullace::breeding {

namespace {

constexpr double kTolerance = 1e-7; // of a worth, relative to its size
// How far a row may be broken, relative to its bound: by a set; by the relaxation; by parts of
// units on the way to a set, where more planes would only slow the search down.
constexpr double kStrict = 1e-6;
constexpr double kRelaxed = 1e-5;
constexpr double kLoose = 1e-3;
constexpr std::size_t kFewest = 400;    // columns that branch and bound starts with
constexpr int kMostCuttingRounds = 60;  // of the relaxation
constexpr std::size_t kMostRounds = 12; // of branch and bound over more columns

struct Escape {
    std::jmp_buf to;
};

[[noreturn]] void leave(void* escape) {
    std::longjmp(static_cast<Escape*>(escape)->to, 1);
}

// GLPK says what it found wrong even where its terminal is off.
int sayNothing(void* /*info*/, const char* /*text*/) {
    return 1;
}

// Calls into GLPK; false where it gave up. Nothing that GLPK made exists afterwards then.
template<typename Call>
bool guarded(const Call& call) {
    Escape escape;
    if (setjmp(escape.to) != 0) {
        glp_error_hook(nullptr, nullptr);
        glp_free_env();
        return false;
    }
    glp_term_hook(&sayNothing, nullptr);
    glp_error_hook(&leave, &escape);
    call();
    glp_error_hook(nullptr, nullptr);
    return true;
}

class Deadline {
public:
    explicit Deadline(double seconds)
        : end_(Clock::now() + std::chrono::duration_cast<Clock::duration>(
                                  std::chrono::duration<double>(std::clamp(seconds, 0.0, 1e6)))) {}

    [[nodiscard]] int milliseconds() const {
        const auto left =
            std::chrono::duration_cast<std::chrono::milliseconds>(end_ - Clock::now()).count();
        return static_cast<int>(std::clamp<std::int64_t>(left, 0, 1'000'000'000));
    }

private:
    using Clock = std::chrono::steady_clock;
    Clock::time_point end_;
};

int kindOfBounds(double lower, double upper) {
    const bool isBelow = lower > -statistics::kUnbounded;
    const bool isAbove = upper < statistics::kUnbounded;
    if (isBelow && isAbove) {
        return lower == upper ? GLP_FX : GLP_DB;
    }
    return isBelow ? GLP_LO : isAbove ? GLP_UP : GLP_FR;
}

// The programme over some of its columns; the others are at their lower bound.
class Solver {
public:
    Solver(const Programme& programme, std::vector<std::uint32_t> columns)
        : programme_(programme),
          columns_(std::move(columns)),
          place_(programme.columns.size(), 0),
          full_(programme.columns.size()) {
        for (std::size_t k = 0; k < columns_.size(); ++k) {
            place_[columns_[k]] = static_cast<int>(k) + 1;
        }
        for (std::size_t c = 0; c < full_.size(); ++c) {
            full_[c] = programme.columns[c].lower;
        }
        isSound_ = guarded([this] {
            glp_term_out(GLP_OFF);
            problem_ = glp_create_prob();
            glp_set_obj_dir(problem_, GLP_MAX);
            addColumns();
        });
        for (const ProgrammeRow& row : programme.rows) {
            add(row);
        }
    }
    ~Solver() {
        if (isSound_) {
            glp_delete_prob(problem_);
        }
    }
    Solver(const Solver&) = delete;
    Solver& operator=(const Solver&) = delete;
    Solver(Solver&&) = delete;
    Solver& operator=(Solver&&) = delete;

    void add(const ProgrammeRow& row) {
        if (!isSound_) {
            return;
        }
        prepare(row);
        isSound_ = guarded([this] { addPrepared(problem_); });
    }

    // GLP_OPT, GLP_NOFEAS, or another status of GLPK's.
    int relax(const Deadline& deadline) {
        int status = GLP_UNDEF;
        isSound_ = isSound_ && guarded([&] {
                       glp_smcp how;
                       glp_init_smcp(&how);
                       how.msg_lev = GLP_MSG_OFF;
                       how.tm_lim = std::max(deadline.milliseconds(), 1);
                       if (glp_simplex(problem_, &how) == 0) {
                           status = glp_get_status(problem_);
                       }
                   });
        return isSound_ ? status : GLP_UNDEF;
    }

    [[nodiscard]] double relaxedWorth() const { return glp_get_obj_val(problem_); }
    [[nodiscard]] double reducedCost(std::uint32_t column) const {
        return std::abs(glp_get_col_dual(problem_, place_[column]));
    }

    std::span<const double> relaxedValues() {
        for (std::size_t k = 0; k < columns_.size(); ++k) {
            full_[columns_[k]] = glp_get_col_prim(problem_, static_cast<int>(k) + 1);
        }
        return full_;
    }

    // Branch and bound from the relaxation that was solved; false where no set was found.
    // `isAll` says whether the search was completed, `bound` what it proves.
    struct Whole {
        bool isFound = false;
        bool isAll = false;
        double worth = 0;
        double bound = 0;
    };
    // With a margin the search ends at the first set, and proves nothing.
    Whole search(const Deadline& deadline, const FindBroken& findBroken, double margin) {
        Whole whole;
        margin_ = margin;
        findBroken_ = findBroken ? &findBroken : nullptr;
        bound_ = relaxedWorth();
        isSound_ = isSound_ && guarded([&] {
                       glp_iocp how;
                       glp_init_iocp(&how);
                       how.msg_lev = GLP_MSG_OFF;
                       how.tm_lim = std::max(deadline.milliseconds(), 1);
                       // With rows that come while it goes on, GLPK's own cuts have cut off the
                       // best set (they
                       // are set up for the rows at the root), and rounding would offer sets that
                       // no row was looked for.
                       const int own = findBroken ? GLP_OFF : GLP_ON;
                       how.gmi_cuts = own;
                       how.mir_cuts = own;
                       how.sr_heur = own;
                       how.bt_tech = GLP_BT_DFS;
                       how.cb_func = &Solver::step;
                       how.cb_info = this;
                       const int end = glp_intopt(problem_, &how);
                       const int status = glp_mip_status(problem_);
                       whole.isFound = status == GLP_OPT || status == GLP_FEAS;
                       whole.isAll =
                           end == 0 && margin == 0 && (status == GLP_OPT || status == GLP_NOFEAS);
                       whole.worth = whole.isFound ? glp_mip_obj_val(problem_) : 0;
                   });
        if (!isSound_) {
            return {};
        }
        whole.bound = whole.isAll && whole.isFound ? whole.worth : bound_;
        return whole;
    }

    std::vector<double> wholeValues() {
        std::vector<double> values(full_.size());
        for (std::size_t c = 0; c < values.size(); ++c) {
            const double value =
                place_[c] == 0 ? programme_.columns[c].lower : glp_mip_col_val(problem_, place_[c]);
            values[c] = programme_.columns[c].isWhole ? std::round(value) : value;
        }
        return values;
    }

    [[nodiscard]] bool isSound() const { return isSound_; }

private:
    void addColumns() {
        if (columns_.empty()) {
            return;
        }
        glp_add_cols(problem_, static_cast<int>(columns_.size()));
        for (std::size_t k = 0; k < columns_.size(); ++k) {
            const ProgrammeColumn& column = programme_.columns[columns_[k]];
            const int at = static_cast<int>(k) + 1;
            glp_set_obj_coef(problem_, at, column.worth);
            glp_set_col_bnds(problem_,
                             at,
                             column.lower == column.upper ? GLP_FX : GLP_DB,
                             column.lower,
                             column.upper);
            if (column.isWhole) {
                glp_set_col_kind(problem_, at, GLP_IV);
            }
        }
        double outside = 0;
        for (std::size_t c = 0; c < place_.size(); ++c) {
            const ProgrammeColumn& column = programme_.columns[c];
            outside += place_[c] == 0 ? column.worth * column.lower : 0;
        }
        glp_set_obj_coef(problem_, 0, outside);
    }

    void prepare(const ProgrammeRow& row) {
        indices_.assign(1, 0);
        elements_.assign(1, 0);
        double outside = 0;
        for (const auto& [column, element] : row.elements) {
            if (place_[column] != 0) {
                indices_.push_back(place_[column]);
                elements_.push_back(element);
            } else {
                outside += element * programme_.columns[column].lower;
            }
        }
        rowLower_ = row.lower - outside;
        rowUpper_ = row.upper - outside;
    }

    void addPrepared(glp_prob* problem) {
        const int at = glp_add_rows(problem, 1);
        glp_set_row_bnds(problem, at, kindOfBounds(rowLower_, rowUpper_), rowLower_, rowUpper_);
        glp_set_mat_row(
            problem, at, static_cast<int>(indices_.size()) - 1, indices_.data(), elements_.data());
    }

    // GLPK calls it at every node: for its bound, and for rows that its relaxation breaks.
    static void step(glp_tree* tree, void* info) {
        auto& self = *static_cast<Solver*>(info);
        if (const int best = glp_ios_best_node(tree); best != 0) {
            self.bound_ = std::min(self.bound_, glp_ios_node_bound(tree, best));
        }
        if (glp_ios_reason(tree) == GLP_IROWGEN && self.findBroken_ != nullptr) {
            self.addBroken(glp_ios_get_prob(tree));
        }
        if (glp_ios_reason(tree) == GLP_IBINGO && self.margin_ > 0) {
            glp_ios_terminate(tree);
        }
        if (glp_ios_reason(tree) == GLP_IBRANCH) {
            self.branch(tree);
        }
    }

    // Upon the column that is farthest from whole, of those to be decided first while there is one;
    // GLPK chooses among the rest.
    void branch(glp_tree* tree) const {
        glp_prob* problem = glp_ios_get_prob(tree);
        int chosen = 0;
        double farthest = 0;
        for (std::size_t k = 0; k < columns_.size(); ++k) {
            const int at = static_cast<int>(k) + 1;
            if (!programme_.columns[columns_[k]].isDecidedFirst ||
                glp_ios_can_branch(tree, at) == 0) {
                continue;
            }
            const double value = glp_get_col_prim(problem, at);
            const double off = std::abs(value - std::round(value));
            chosen = off > farthest ? at : chosen;
            farthest = std::max(farthest, off);
        }
        if (chosen != 0) {
            glp_ios_branch_upon(tree, chosen, GLP_NO_BRNCH);
        }
    }

    // Whether all that has to be is whole in `full_`.
    [[nodiscard]] bool isWhole() const {
        return std::ranges::all_of(columns_, [this](std::uint32_t column) {
            return !programme_.columns[column].isWhole ||
                   std::abs(full_[column] - std::round(full_[column])) < 1e-5;
        });
    }

    void addBroken(glp_prob* problem) {
        for (std::size_t k = 0; k < columns_.size(); ++k) {
            full_[columns_[k]] = glp_get_col_prim(problem, static_cast<int>(k) + 1);
        }
        findClearlyBroken(
            *findBroken_, full_, isWhole() ? kStrict : kLoose, isWhole() ? 0 : margin_, broken_);
        for (const ProgrammeRow& row : broken_) {
            prepare(row);
            addPrepared(problem);
        }
    }

    const Programme& programme_;
    std::vector<std::uint32_t> columns_;
    std::vector<int> place_; // of each column in the problem, from 1; 0 where it is not in it
    std::vector<double> full_;
    glp_prob* problem_ = nullptr;
    bool isSound_ = false;
    bool isRelaxed_ = false;
    const FindBroken* findBroken_ = nullptr;
    double margin_ = 0;
    double bound_ = 0;
    std::vector<ProgrammeRow> broken_;
    std::vector<int> indices_; // of the row that is being added; GLPK counts from 1
    std::vector<double> elements_;
    double rowLower_ = 0;
    double rowUpper_ = 0;
};

// Solves the relaxation with all columns, adding broken rows to `programme` until none is.
bool relaxAll(Programme& programme,
              const Deadline& deadline,
              const FindBroken& findBroken,
              ProgrammeSolution& solution) {
    std::vector<std::uint32_t> all(programme.columns.size());
    std::iota(all.begin(), all.end(), 0U);
    Solver solver(programme, std::move(all));
    std::vector<ProgrammeRow> broken;
    for (int round = 0; round < kMostCuttingRounds; ++round) {
        const int status = solver.relax(deadline);
        if (status == GLP_NOFEAS) {
            solution.status = ProgrammeStatus::Infeasible;
        }
        if (status != GLP_OPT) {
            return false;
        }
        findClearlyBroken(findBroken, solver.relaxedValues(), kRelaxed, 0, broken);
        if (broken.empty()) {
            break;
        }
        for (const ProgrammeRow& row : broken) {
            solver.add(row);
            programme.rows.push_back(row);
        }
    }
    if (!broken.empty() && solver.relax(deadline) != GLP_OPT) {
        return false;
    }
    solution.relaxation = solver.relaxedWorth();
    solution.bound = solution.relaxation;
    const std::span<const double> values = solver.relaxedValues();
    solution.reducedCosts.resize(programme.columns.size());
    for (std::uint32_t c = 0; c < programme.columns.size(); ++c) {
        const bool isTaken = values[c] > programme.columns[c].lower + 1e-9;
        solution.reducedCosts[c] = isTaken ? 0 : solver.reducedCost(c);
    }
    return true;
}

// A first set under a convex condition: parts of units near its limit leave no room for whole ones,
// so they are held a little farther from it, and more if that is not enough.
void searchInside(double most,
                  const Programme& programme,
                  double seconds,
                  const FindBroken& findBroken,
                  ProgrammeSolution& solution) {
    const std::vector<std::uint32_t> columns = cheapColumns(solution.reducedCosts, most);
    for (const double margin : {0.01, 0.03, 0.08}) {
        const Deadline deadline(seconds / 3);
        Solver solver(programme, columns);
        if (solver.relax(deadline) != GLP_OPT) {
            return;
        }
        const Solver::Whole whole = solver.search(deadline, findBroken, margin);
        if (whole.isFound) {
            solution.values = solver.wholeValues();
            solution.worth = whole.worth;
            return;
        }
    }
}

// One branch and bound over the cheap columns; whether another with more columns is due.
bool searchAmong(double most,
                 const Programme& programme,
                 const Deadline& deadline,
                 const FindBroken& findBroken,
                 ProgrammeSolution& solution) {
    std::vector<std::uint32_t> columns = cheapColumns(solution.reducedCosts, most);
    const bool hasAll = columns.size() == programme.columns.size();
    Solver solver(programme, std::move(columns));
    const int status = solver.relax(deadline);
    if (status != GLP_OPT) {
        const bool isProven = status == GLP_NOFEAS && hasAll;
        solution.status = isProven                  ? ProgrammeStatus::Infeasible
                          : solution.values.empty() ? solution.status
                                                    : ProgrammeStatus::TimeIsUp;
        return status == GLP_NOFEAS && !hasAll;
    }
    const Solver::Whole whole = solver.search(deadline, findBroken, 0);
    if (whole.isFound && (solution.values.empty() || whole.worth > solution.worth)) {
        solution.values = solver.wholeValues();
        solution.worth = whole.worth;
    }
    if (!whole.isAll) {
        solution.bound = hasAll ? std::min(solution.bound, whole.bound) : solution.bound;
        solution.status =
            solution.values.empty() ? ProgrammeStatus::NotSolved : ProgrammeStatus::TimeIsUp;
        return false;
    }
    if (!whole.isFound && solution.values.empty()) {
        solution.status = hasAll ? ProgrammeStatus::Infeasible : solution.status;
        return !hasAll;
    }
    const double slack = solution.relaxation - solution.worth;
    const bool isProven = hasAll || most >= slack;
    solution.status = isProven ? ProgrammeStatus::Optimal : ProgrammeStatus::TimeIsUp;
    solution.bound = isProven ? solution.worth : solution.bound;
    return !isProven;
}

} // namespace

ProgrammeSolution
solveProgramme(const Programme& given, double seconds, const FindBroken& findBroken) {
    ProgrammeSolution solution;
    if (!isSolvable(given)) {
        return solution;
    }
    const Deadline deadline(seconds);
    Programme programme = given;
    if (!relaxAll(programme, deadline, findBroken, solution)) {
        return solution;
    }
    const double small = kTolerance * (1 + std::abs(solution.relaxation));
    std::size_t rank = std::max(kFewest, 3 * programme.rows.size());
    double most = costOfRank(solution.reducedCosts, rank);
    if (findBroken) {
        searchInside(most + small, programme, seconds / 3, findBroken, solution);
    }
    for (std::size_t round = 0; round < kMostRounds; ++round) {
        if (!searchAmong(most + small, programme, deadline, findBroken, solution)) {
            break;
        }
        rank *= 4;
        most = solution.values.empty()
                   ? costOfRank(solution.reducedCosts, rank)
                   : std::max(solution.relaxation - solution.worth, most + small);
    }
    return solution;
}

} // namespace bullace::breeding
