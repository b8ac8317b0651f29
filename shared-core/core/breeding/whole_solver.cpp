#include "core/breeding/whole_solver.hpp"

#include "core/breeding/programme_rows.hpp"

#include <algorithm>
#include <cmath>
#include <csetjmp>
#include <glpk.h>

namespace bullace::breeding {

namespace {

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

int kindOfBounds(double lower, double upper) {
    const bool isBelow = lower > -statistics::kUnbounded;
    const bool isAbove = upper < statistics::kUnbounded;
    if (isBelow && isAbove) {
        return lower == upper ? GLP_FX : GLP_DB;
    }
    return isBelow ? GLP_LO : isAbove ? GLP_UP : GLP_FR;
}

} // namespace

Deadline::Deadline(double seconds)
    : end_(Clock::now() + std::chrono::duration_cast<Clock::duration>(
                              std::chrono::duration<double>(std::clamp(seconds, 0.0, 1e6)))) {}

int Deadline::milliseconds() const {
    const auto left =
        std::chrono::duration_cast<std::chrono::milliseconds>(end_ - Clock::now()).count();
    return static_cast<int>(std::clamp<std::int64_t>(left, 0, 1'000'000'000));
}

WholeSolver::WholeSolver(const Programme& programme, std::vector<std::uint32_t> columns)
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

WholeSolver::~WholeSolver() {
    if (isSound_) {
        glp_delete_prob(problem_);
    }
}

void WholeSolver::add(const ProgrammeRow& row) {
    if (!isSound_) {
        return;
    }
    prepare(row);
    isSound_ = guarded([this] { addPrepared(problem_); });
}

RelaxationStatus WholeSolver::relax(const Deadline& deadline) {
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
    return !isSound_ || (status != GLP_OPT && status != GLP_NOFEAS) ? RelaxationStatus::Unknown
           : status == GLP_OPT                                      ? RelaxationStatus::Solved
                                                                    : RelaxationStatus::Infeasible;
}

double WholeSolver::relaxedWorth() const {
    return glp_get_obj_val(problem_);
}

double WholeSolver::reducedCost(std::uint32_t column) const {
    return std::abs(glp_get_col_dual(problem_, place_[column]));
}

std::span<const double> WholeSolver::relaxedValues() {
    for (std::size_t k = 0; k < columns_.size(); ++k) {
        full_[columns_[k]] = glp_get_col_prim(problem_, static_cast<int>(k) + 1);
    }
    return full_;
}

WholeSolver::Whole WholeSolver::search(const Deadline& deadline,
                                       const FindBroken& findBroken,
                                       double margin,
                                       std::span<const double> known) {
    Whole whole;
    margin_ = margin;
    findBroken_ = findBroken ? &findBroken : nullptr;
    bound_ = relaxedWorth();
    known_.assign(known.empty() ? 0 : columns_.size() + 1, 0);
    for (std::size_t k = 0; k < columns_.size() && !known.empty(); ++k) {
        known_[k + 1] = known[columns_[k]];
    }
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
                   how.cb_func = &WholeSolver::step;
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

std::vector<double> WholeSolver::wholeValues() {
    std::vector<double> values(full_.size());
    for (std::size_t c = 0; c < values.size(); ++c) {
        const double value =
            place_[c] == 0 ? programme_.columns[c].lower : glp_mip_col_val(problem_, place_[c]);
        values[c] = programme_.columns[c].isWhole ? std::round(value) : value;
    }
    return values;
}

void WholeSolver::addColumns() {
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

void WholeSolver::prepare(const ProgrammeRow& row) {
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

void WholeSolver::addPrepared(glp_prob* problem) {
    const int at = glp_add_rows(problem, 1);
    glp_set_row_bnds(problem, at, kindOfBounds(rowLower_, rowUpper_), rowLower_, rowUpper_);
    glp_set_mat_row(
        problem, at, static_cast<int>(indices_.size()) - 1, indices_.data(), elements_.data());
}

// GLPK calls it at every node: for its bound, and for rows that its relaxation breaks.
void WholeSolver::step(glp_tree* tree, void* info) {
    auto& self = *static_cast<WholeSolver*>(info);
    if (const int best = glp_ios_best_node(tree); best != 0) {
        self.bound_ = std::min(self.bound_, glp_ios_node_bound(tree, best));
    }
    if (glp_ios_reason(tree) == GLP_IROWGEN && self.findBroken_ != nullptr) {
        self.addBroken(glp_ios_get_prob(tree));
    }
    if (glp_ios_reason(tree) == GLP_IBINGO && self.margin_ > 0) {
        glp_ios_terminate(tree);
    }
    if (glp_ios_reason(tree) == GLP_IHEUR && !self.known_.empty()) {
        self.offerKnown(tree);
    }
    if (glp_ios_reason(tree) == GLP_IBRANCH) {
        self.branch(tree);
    }
}

// Once: nothing that is not better is looked for from then on.
void WholeSolver::offerKnown(glp_tree* tree) {
    glp_ios_heur_sol(tree, known_.data());
    known_.clear();
}

// Upon the column that is farthest from whole, of those to be decided first while there is one;
// GLPK chooses among the rest.
void WholeSolver::branch(glp_tree* tree) const {
    glp_prob* problem = glp_ios_get_prob(tree);
    int chosen = 0;
    double farthest = 0;
    for (std::size_t k = 0; k < columns_.size(); ++k) {
        const int at = static_cast<int>(k) + 1;
        if (!programme_.columns[columns_[k]].isDecidedFirst || glp_ios_can_branch(tree, at) == 0) {
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
bool WholeSolver::isWhole() const {
    return std::ranges::all_of(columns_, [this](std::uint32_t column) {
        return !programme_.columns[column].isWhole ||
               std::abs(full_[column] - std::round(full_[column])) < 1e-5;
    });
}

void WholeSolver::addBroken(glp_prob* problem) {
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

} // namespace bullace::breeding
