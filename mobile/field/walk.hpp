// One person's walk as it goes: where she stands, what is asked, what she notes, and everything
// that can be done about it. Each act is one transaction with the bookmark of where the walk stands
// after it: whatever ends the program, the next start goes on from the last act that was shown.
#pragma once

#include "field/memory.hpp"
#include "field/pen.hpp"
#include "field/walk_plan.hpp"
#include "field/walk_sheet.hpp"

#include "core/vineyard/catalogue.hpp"
#include "core/walk/slip_detector.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace bullace::field {

// The stops of one row, or of one side of it, that follow one another: [first, last].
struct Leg {
    std::size_t first = 0;
    std::size_t last = 0;
};

struct LegReport {
    Leg leg;
    std::size_t stops = 0;
    std::size_t done = 0;
    std::vector<std::size_t> leftOut; // something asked is neither noted nor given a reason
    std::vector<std::size_t> marked;  // a value that looks wrong and was not kept
};

// What an undo took back.
struct TakenBack {
    std::vector<std::string> subjects;
    Bytes value; // of the first
};

// Takes the last act of this device back, as one act of `author`. Nothing where there is none.
[[nodiscard]] Result<std::optional<TakenBack>>
takeBackLast(store::Database& database, Pen& pen, const std::string& author);

class Walk {
public:
    // Begins a walk and keeps it. Errors: InvalidInput (no stop, nothing asked), those of writing.
    [[nodiscard]] static Result<std::unique_ptr<Walk>>
    begin(store::Database& database, const vineyard::Catalogue& catalogue, Pen& pen, WalkPlan plan);
    // Goes on with the walk that is kept in the journal; null where there is none, or it is over.
    [[nodiscard]] static Result<std::unique_ptr<Walk>>
    resume(store::Database& database, const vineyard::Catalogue& catalogue, Pen& pen);

    [[nodiscard]] const WalkPlan& plan() const { return plan_; }
    [[nodiscard]] const Footing& footing() const { return footing_; }
    [[nodiscard]] const WalkSheet& sheet() const { return *sheet_; }
    [[nodiscard]] const walk::Stop& here() const { return plan_.stops[footing_.stop]; }
    [[nodiscard]] const Ask& asked() const { return plan_.asks[footing_.ask]; }
    [[nodiscard]] Leg legOf(std::size_t stop) const;
    // How many samples are wanted of an ask at a stop.
    [[nodiscard]] unsigned wanted(std::size_t stop, std::size_t ask) const;
    [[nodiscard]] bool isDone(std::size_t stop, std::size_t ask) const;
    [[nodiscard]] bool isDone(std::size_t stop) const;

    // Notes a value of what is asked and goes on. A value that stands on the screen is replaced.
    // Errors: InvalidInput where the descriptor does not allow it, those of writing; then nothing
    // changed.
    [[nodiscard]] Status note(const Bytes& value, const std::optional<std::string>& as = {});
    // A value of another descriptor at this stop (a note, a photo, work on a cross); stays here.
    [[nodiscard]] Status noteBeside(std::string_view descriptor,
                                    const Bytes& value,
                                    const std::optional<std::string>& as = {});
    // Why there is no value of what is asked: a reason of DESIGN §5.
    [[nodiscard]] Status noteNothing(std::string_view reason);
    // The vine itself. "dead" and "missing" answer all that is still asked here, in one act, and go
    // on; other words stay.
    [[nodiscard]] Status markVine(std::string_view state);
    // On to the next stop. Where only what stands out is noted, what is open here is walked past.
    [[nodiscard]] Status walkOn();
    // Takes `more` samples beyond those wanted of the ask at the stop, and goes there.
    [[nodiscard]] Status takeMore(std::size_t stop, std::size_t ask, unsigned more);
    [[nodiscard]] Status goTo(std::size_t stop, std::size_t ask = 0);
    // Nothing is taken back where nothing was ever written here.
    [[nodiscard]] Result<std::optional<TakenBack>> undo();

    [[nodiscard]] LegReport legReport(std::size_t stop) const;
    // Moves what was noted from `first` to the end of its leg by one stop along the walk (+1) or
    // back (-1), as one act. Errors: as walk::shiftRun, and those of writing.
    [[nodiscard]] Status shiftRun(std::size_t first, int by);
    // From the end of a leg to the next one; from its other end, the stops of it (and, in a
    // serpentine, of those after it) are turned round. Without a next one the walk is over.
    [[nodiscard]] Status nextLeg(bool fromOtherEnd);
    [[nodiscard]] bool hasNextLeg() const {
        return legOf(footing_.stop).last + 1 < plan_.stops.size();
    }
    [[nodiscard]] bool isOver() const { return isOver_; }
    // Ends the walk where it stands; what is left open stays open.
    [[nodiscard]] Status end();

    // Looks at the value last noted, against the vine's own past and its neighbours; called after
    // it was shown. Returns the value where it looks wrong.
    [[nodiscard]] Result<const NotedValue*> weighLast();
    void keep(const std::string& subject);
    // Whether the values of this leg look as if they stood one vine along.
    [[nodiscard]] std::optional<walk::Slip> slip();
    void putSlipAside();

private:
    Walk(store::Database& database, const vineyard::Catalogue& catalogue, Pen& pen, WalkPlan plan);

    struct Draw { // an act before it is written
        std::vector<store::Draft> drafts;
        Footing next;
    };
    [[nodiscard]] Status write(const Draw& draw);
    [[nodiscard]] Status move(const Footing& next);
    [[nodiscard]] store::Draft draft(journal::Kind kind, std::string subject, Bytes value) const;
    [[nodiscard]] Result<store::Draft>
    observation(std::size_t stop, std::string_view descriptor, const Bytes& value, bool isSample);
    [[nodiscard]] std::vector<journal::Place> headsOn(const std::string& subject);
    // Where one goes on from a stop at which `ask` has just been answered.
    [[nodiscard]] Footing after(const Footing& footing, std::size_t samplesMore) const;
    [[nodiscard]] Footing afterStop(const Footing& footing) const;
    [[nodiscard]] Footing beforeAct(const std::vector<std::string>& subjects,
                                    const std::string& asked) const;
    [[nodiscard]] Status weigh(NotedValue& noted, std::size_t stop);
    [[nodiscard]] Status
    weighLeg(); // everything noted on it: doubts are not kept, they are seen anew
    [[nodiscard]] Status
    addMoved(std::vector<store::Draft>& drafts, std::size_t to, std::optional<std::size_t> from);
    [[nodiscard]] std::optional<double> measureOf(const NotedValue& noted) const;

    store::Database& database_;
    const vineyard::Catalogue& catalogue_;
    Pen& pen_;
    WalkPlan plan_;
    Footing footing_;
    std::unique_ptr<WalkSheet> sheet_;
    std::unique_ptr<Memory> memory_;
    MoreSamples more_;
    std::string lastNoted_;          // its subject
    std::size_t slipAsideUntil_ = 0; // stops up to here were looked at and are in place
    bool isOver_ = false;
};

} // namespace bullace::field
