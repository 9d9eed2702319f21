#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/plan/plan.h"

namespace crosstick::plan {

/// How a thing goes over to the next phase.
enum class Passage {
    Carried,  ///< the same thing, shown on one more film
    Proposed  ///< a new one where the last phase left it, assumed until somebody confirms or moves it
};

/// Why a thing is offered to the next phase, or left behind.
enum class Because {
    LivesOn,
    StillToCome,  ///< planned and on order, or in force beyond the end of the phase
    Expired,      ///< its time ends with the phase
    OfThePhase,   ///< its kind serves what was done in one phase: an arrow, a task, words
    Walked,       ///< a way of the phase, or a point that stands on one
    Crossed,      ///< a way of the phase leads across it
    LeftBehind,   ///< a way of the phase begins in it and ends elsewhere
    Stood,        ///< a unit that stays where it stood
    Marched       ///< a unit that stood where a way of the phase begins: it is where that way ends
};

/// One thing that the films of a phase show.
struct Offer {
    ItemId item;
    Passage passage = Passage::Carried;
    Because because = Because::LivesOn;
    bool taken = true;                               ///< it goes over to the next phase
    std::optional<ItemId> way = {};                  ///< the route or arrow that the reason names
    std::optional<geodesy::PlanePoint> stands = {};  ///< where what is proposed stands, in the plan's plane
};

/// The phase after one, before it is taken: whoever leads may change all of it.
struct NextPhase {
    int after = 0;
    Phase phase;
    std::string film;           ///< name of its film
    std::vector<Offer> offers;  ///< in the order in which the films draw
};

/// How near to a way's beginning a unit stands that goes along it. Ours: the length of a platoon's column.
inline constexpr Metres kWithTheMarch{300};

/// What the phase after one begins with. Offered is what the films of that phase show that are not films of the next
/// one, too; a measure's own times come first, then what the ways of the phase did to it, then its kind.
/// Laws: (1) everything those films show is offered exactly once; (2) ways and what stands on them are not taken;
///       (3) only what moves is proposed anew.
/// @return  nothing for a phase that the plan does not have
[[nodiscard]] std::optional<NextPhase> proposedNextPhase(const Plan& plan, int after);

/// The plan with that phase, where it has none of its number yet, and with its film on top of the stack.
/// Laws: (1) no film, measure or route that was there is another one now; (2) the film shows what was taken, each thing
///       once: carried ones are the same things, proposed ones new, assumed, and alike in all but their place.
[[nodiscard]] Plan withNextPhase(const Plan& plan, const NextPhase& next, const FilmId& film,
                                 const std::function<Uuid()>& newId);

}  // namespace crosstick::plan
