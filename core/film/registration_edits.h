#pragma once

#include <cstddef>
#include <vector>

#include "core/film/registration.h"

namespace crosstick::film {

/// The same window with its ticks on other crossings of the grid that ticks stand on.
/// @param crossings  in the grid of the plan's first sheet; one that lies within a twentieth of the interval from a
///                   crossing means it; named twice, it counts once
/// Errors: film/not-a-crossing with "easting", "northing", "interval"; film/tick-outside-window with "easting",
///         "northing" (a tick's arms need 7 mm inside the frame); film/too-few-ticks with "count";
///         film/ticks-in-a-row where the ticks span less than a twentieth of the window: a film could turn about them.
[[nodiscard]] Result<plan::Registration> withTicksAt(const plan::Registration& registration,
                                                     const std::vector<geodesy::PlanePoint>& crossings,
                                                     const TickGrid& grid);

/// The crossing of that grid nearest to a place.
[[nodiscard]] geodesy::PlanePoint crossingNear(geodesy::PlanePoint place, const TickGrid& grid);

/// One tick more, one less, or one of them on the crossing nearest to a place.
/// @param tick  its place in the registration's list, which must be there
/// Errors: film/crossing-taken with "easting", "northing" where another tick stands there; those of withTicksAt.
[[nodiscard]] Result<plan::Registration> withTickMoved(const plan::Registration& registration, std::size_t tick,
                                                       geodesy::PlanePoint to, const TickGrid& grid);
[[nodiscard]] Result<plan::Registration> withTickAdded(const plan::Registration& registration,
                                                       geodesy::PlanePoint place, const TickGrid& grid);
[[nodiscard]] Result<plan::Registration> withTickRemoved(const plan::Registration& registration, std::size_t tick,
                                                         const TickGrid& grid);

/// The plan's window and ticks, with those of somebody's film that was laid by its own: all films of the plan then fit
/// that one too. The window grows for them by tenths of the grid interval. @param film  with the marks it was laid by
/// Errors: film/too-few-ticks where it has none; those of withTicksAt, proposeRegistration, geodesy::PlaneLink.
[[nodiscard]] Result<plan::Registration> withTicksOf(const plan::Sheet& film, const plan::Plan& plan);

/// How far each edge of a window goes: east and north are positive.
struct WindowPull {
    Metres west, south, east, north;
};

/// The window with its edges pulled, each edge that goes laid on the nearest tenth of the grid interval. A tick that
/// would stand outside or too close to the frame goes to the nearest free crossing inside; the others stay.
/// Errors: film/window-too-small with "least" (metres a side); those of withTicksAt.
[[nodiscard]] Result<plan::Registration> withWindowPulled(const plan::Registration& registration,
                                                          const WindowPull& pull, const TickGrid& grid);

/// A window between two corners, whichever they are, rounded outward to tenths of the grid interval, with the ticks
/// that it would be proposed. Errors: film/window-too-small with "least" (metres a side); those of proposeTicks.
[[nodiscard]] Result<plan::Registration> withWindow(const plan::Plan& plan, geodesy::PlanePoint corner,
                                                    geodesy::PlanePoint opposite);

}  // namespace crosstick::film
