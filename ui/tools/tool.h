#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/drafting/snap.h"
#include "core/measures/catalogue.h"
#include "core/plan/edits.h"

namespace crosstick::tools {

/// What the hand did. Places are in the plan's plane; the table turns pixels into them.
struct Event {
    /// Again: the second of two quick presses on one spot.
    enum class Kind { Press, Again, Move, Release, Finish, TakeBack, Cancel, Nudge, NextPoint, LastPoint };
    Kind kind = Kind::Move;
    geodesy::PlanePoint at;
    bool held = false;     ///< a button is down
    bool second = false;   ///< the key for the other meaning (Shift): a bend instead of a route point, symbol aside
    bool more = false;     ///< the key that adds to what is chosen (Control); it frees the hand from snapping, too
    bool snapped = false;  ///< the place is that of something the hand was drawn to
};

/// A symbol or a label of the films as they lie on the table.
struct Touched {
    plan::ItemId item;
    plan::FilmId film;  ///< the uppermost that it is inked on
    enum class What { Symbol, Letters, Figures };
    What what = What::Symbol;
    bool isAside = false;                    ///< the symbol stands off its spot
    geodesy::PlanePoint at;                  ///< where the symbol or the middle of the letters stands
    std::optional<plan::LegPiece> leg = {};  ///< whose figures they are; of those without any no hand takes hold
};
/// What of the films lies at a place, other than one thing.
using Touch = std::function<std::optional<Touched>(geodesy::PlanePoint at, const plan::ItemId& except)>;
/// A place in the millimetres of the working film; nothing where it has no window yet.
using PaperOf = std::function<std::optional<drawing::Point>(geodesy::PlanePoint at)>;

/// What a tool works on, as it is at the moment of the event.
struct Ground {
    const plan::Plan& plan;  ///< committed
    plan::FilmId film;       ///< the working film
    std::vector<plan::FilmPtr> shown;
    std::optional<plan::ItemId> selected;
    Metres reach;  ///< how far beside a thing still means it: some pixels at the present zoom
    std::function<Uuid()> newId;
    Touch touch = {};  ///< as the films lie now: a copy goes on telling of them as they lay
    PaperOf onPaper = {};
    std::vector<plan::ItemId> selection = {};  ///< all that is selected, the leading one first
    Degrees up = {};                           ///< the grid azimuth that lies upward on the table
};

struct Commit {
    plan::Plan plan;
    std::string caption;
    bool named = false;   ///< the caret goes to the label
    bool stroke = false;  ///< a line without a meaning yet: the kind that is named next is its
};

/// What came of an event. Everything not set stays as it was.
struct Reply {
    std::optional<plan::Plan> draft;  ///< show this in place of the present plan
    bool draftGone = false;           ///< show the present plan again
    std::optional<Commit> commit;
    std::optional<std::optional<plan::ItemId>> select;   ///< this alone
    std::optional<std::vector<plan::ItemId>> selectAll;  ///< these, the first leading
    std::optional<Error> refused;                        ///< why nothing came of what the hand did
    std::string said = {};                               ///< what else came of it, in one line; empty: nothing
    bool done = false;                                   ///< the tool lays itself down
};

/// Three rows for the tag.
struct Told {
    std::string first, second, third;
};

/// A protractor on the table, its zero to grid north.
struct Rose {
    geodesy::PlanePoint at;
    Degrees toMagnetic, toTrue;  ///< from grid north, east positive
};

/// What is wet: drawn in our colour over everything, ending at the hand.
struct Wet {
    plan::Points line;                                     ///< fixed points, then the hand
    bool closes = false;                                   ///< an area
    std::string what;                                      ///< "CP 3", "PL B"
    std::optional<std::size_t> from;                       ///< figures are told from this point of the line to the last
    plan::Points marks = {};                               ///< what the hand may take hold of
    enum class Belongs { ToTheFilm, ToThePlan, Nowhere };  ///< nowhere: a place is told, nothing is drawn
    Belongs belongs = Belongs::ToTheFilm;
    std::vector<plan::Points> others = {};  ///< what is aimed at, or would go
    std::optional<Told> told = {};          ///< read off, in place of the figures from a point
    std::optional<Rose> rose = {};          ///< a protractor laid down
};

/// A route as it would be if it ended at the hand: for the ledger's live row.
struct Preview {
    plan::Plan plan;
    plan::ItemId route;
};

/// A drawing tool: a state machine that takes events and gives edits. It knows no window, so lists of events test it.
class Tool {
  public:
    virtual ~Tool() = default;
    [[nodiscard]] virtual Reply take(const Event& event, const Ground& ground) = 0;
    [[nodiscard]] virtual Wet wet() const { return {}; }
    [[nodiscard]] virtual std::optional<Preview> preview(const Ground& /*ground*/) const { return std::nullopt; }
    /// Which point of the selected thing the keys move; none: the whole of it.
    [[nodiscard]] virtual std::optional<std::size_t> heldPoint(const plan::ItemId& /*selected*/) const {
        return std::nullopt;
    }
    /// In the middle of something that Escape would give up.
    [[nodiscard]] virtual bool isBusy() const { return false; }
    /// Is the hand drawn to points, ticks and what else is wished for? With what it holds already.
    struct Snaps {
        std::optional<drafting::InHand> inHand;
    };
    [[nodiscard]] virtual std::optional<Snaps> snaps() const { return std::nullopt; }
    /// What lies under the hand beside what is selected, so many on; nothing where nothing does.
    [[nodiscard]] virtual std::optional<plan::ItemId> underneath(const Ground& /*ground*/, int /*step*/) const {
        return std::nullopt;
    }
    /// Ends what is being drawn as another kind of measure; nothing where it cannot be that.
    [[nodiscard]] virtual std::optional<Reply> endAs(const measures::Entry& /*kind*/, const Ground& /*ground*/) {
        return std::nullopt;
    }
    /// What to do next, in a few words, for the tag.
    [[nodiscard]] virtual std::string hint() const { return {}; }
};

}  // namespace crosstick::tools
