#pragma once

#include <functional>

#include "core/drafting/wipe.h"
#include "core/plan/plan.h"

namespace crosstick::drafting {

using NewId = std::function<Uuid()>;

/// A wipe as it would be: told before it is done.
struct Wiping {
    plan::Plan plan;
    std::size_t whole = 0;      ///< things that go altogether
    std::size_t partly = 0;     ///< lines, areas and routes of which a part goes
    std::size_t elsewhere = 0;  ///< of the latter, shown on other films too: they change there as well
    std::size_t left = 0;  ///< what the region cuts and cannot be cut: signs of set points, what waits to be placed
    [[nodiscard]] bool isNothing() const { return whole + partly == 0; }
};

/// A region wiped on one film. Points inside it go; lines, areas and routes lose what lies in it, and where several
/// parts are left each becomes a thing of its own, the largest with the old identity. What another film shows is only
/// taken off this one where it goes altogether. What lies on the film's paper stays.
/// @param region  in the plan's plane  @param newId  for parts
[[nodiscard]] Wiping regionWiped(const plan::Plan& plan, const plan::FilmId& film, const Line& region,
                                 const NewId& newId);

/// May a stretch of it be wiped: a line of as many points as one likes, a route.
[[nodiscard]] bool hasPartsToWipe(const plan::Plan& plan, const plan::ItemId& item);
/// A stretch of a line or a route wiped. Another thing, or one that the plan has not, leaves the plan as it is.
[[nodiscard]] plan::Plan stretchWiped(const plan::Plan& plan, const plan::ItemId& item, Stretch stretch,
                                      const NewId& newId);

/// Everything on one film; what lies on its paper stays, as do ticks and title block, which are none of its measures.
[[nodiscard]] Wiping filmWiped(const plan::Plan& plan, const plan::FilmId& film);

}  // namespace crosstick::drafting
