// The book of crosses: how far each is, with what success by mother, father and year, what is due,
// and under which later names a seedling is known.
#pragma once

#include "core/base/civil_date.hpp"
#include "core/base/remark.hpp"
#include "core/base/result.hpp"
#include "core/breeding/expected_cross.hpp"
#include "core/statistics/estimate.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace bullace::breeding {

// In the order in which they are done.
enum class BookStep {
    Bagged,
    Emasculated,
    Pollinated, // count: flowers
    Set,        // fruits
    Harvested,  // fruits
    Seeds,
    Sinkers,    // seeds that sink in water
    Stratified, // seeds
    Germinated,
    Planted,
    FirstFlower, // seedlings, with their sex
    Selected
};
inline constexpr std::size_t kBookSteps = 12;

struct CrossHead {
    std::string cross;
    std::string mother;
    std::string father; // empty: open pollination
    int year = 0;
};

struct BookEvent {
    std::string cross;
    BookStep step = BookStep::Bagged;
    CivilDate date;
    std::optional<std::int64_t> count{};
    std::optional<FlowerSex> sex{}; // of FirstFlower
};

struct StepRecord {
    std::size_t events = 0;
    std::optional<std::int64_t> count; // of all events that have one, added up
    std::optional<CivilDate> first;
    std::optional<CivilDate> last;
};

struct BookEntry {
    CrossHead head;
    std::array<StepRecord, kBookSteps> steps;
    std::int64_t male = 0; // of the first flowers
    std::int64_t perfect = 0;
    std::int64_t female = 0;
    Remarks remarks; // counts that grow, steps dated before those they follow

    [[nodiscard]] const StepRecord& at(BookStep step) const {
        return steps[static_cast<std::size_t>(step)];
    }
};

// One entry for each head, in their order; counts of one step are added up.
// Errors  InvalidInput for an event of a cross that has no head, a head without an id or given
// twice,
//         a count below 0, a day that the calendar has not.
[[nodiscard]] Result<std::vector<BookEntry>> crossBook(std::span<const CrossHead> heads,
                                                       std::span<const BookEvent> events);

// A share of what one step began with that reached the other.
struct SuccessRate {
    std::string group;       // a mother, a father ("" open pollination), a year; "all"
    std::size_t crosses = 0; // with both counts
    std::size_t leftOut = 0; // without one of them, or with more after than before
    std::int64_t before = 0;
    std::int64_t after = 0;
    // Pearson's chi squared of the crosses' rates over its degrees of freedom: above 1 where
    // crosses differ more than counts of chance; of two crosses and more.
    std::optional<double> heterogeneity;
    // With 95 % limits: of one cross those of Clopper & Pearson 1934, Biometrika 26:404-413; of
    // several Wilson's (1927, J. Am. Stat. Assoc. 22:209-212) with the number divided by the
    // heterogeneity where it is above 1, and Student's t with one degree of freedom less than
    // crosses (McCullagh & Nelder 1989, Generalized Linear Models, 4.5), as flowers of one cross
    // are no independent trials.
    std::optional<statistics::Estimate> rate; // nothing where nothing was begun
};

enum class BookGroup { All, Mother, Father, Year };

// Groups in the order of their names. `to` comes after `from`.
[[nodiscard]] std::vector<SuccessRate>
successRates(std::span<const BookEntry> book, BookStep from, BookStep to, BookGroup by);

enum class DueAct { BagsOff, Harvest, Stratify, TakeOut };

// What waits.
struct DueWork {
    std::string cross;
    DueAct act = DueAct::BagsOff;
    CivilDate from; // it may be done from this day on
    Remark reason;
};

// Days between steps. The stratification of 90 days at 4 °C is Conner 2008, HortScience 43:853-856;
// the ripening 100 to 120 days after bloom Florida extension bulletin HS100; the others are common
// practice, no source.
struct BookCalendar {
    int bagsOffAfter = 14;  // pollination, when fruit has set
    int harvestAfter = 100; // pollination
    int stratifyAfter = 7;  // harvest or extraction of seed
    int stratifiedFor = 90; // at least, damp at 4 °C
};

// What may be done on a day from `today` until `days` later, or should have been before; the
// earliest first. Crosses whose next step is not known are left out.
[[nodiscard]] std::vector<DueWork> dueWork(std::span<const BookEntry> book,
                                           CivilDate today,
                                           int days = 7,
                                           const BookCalendar& calendar = {});

// A later name of the same vine: seedling vine → selection → cultivar. The cross that a seedling is
// of stands before its first name, and is the one name that may have several later ones.
struct NameLink {
    std::string name;
    std::string later;
    bool isCross = false; // `name` is a cross, `later` one of its seedlings
};

// All names of the vine that `name` is one of, the earliest first, its cross before them. Of a
// cross itself: the cross alone, as its seedlings are different vines. Errors  InvalidInput where
// names go in a circle, or one has two earlier or two later ones.
[[nodiscard]] Result<std::vector<std::string>> nameChain(std::span<const NameLink> links,
                                                         const std::string& name);

} // namespace bullace::breeding
