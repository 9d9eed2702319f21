#pragma once

#include "core/drawing/occupancy.h"

namespace crosstick::drawing {

/// Parallel lines inside a ring by the even-odd rule, at fixed places: multiples of the pitch from the film's origin,
/// so that neighbours, tiles and redraws agree.
/// @param ring   closed without repeating its first point
/// @param angle  of the lines, counter-clockwise as seen
/// @param inset  what stays clear inside the edge
/// @param left   boxes that stay clear (labels)
/// Law: a ring moved by whole pitches has the same lines, moved. An area narrower than two pitches gets one line
/// through its middle at least.
struct Hatching {
    Degrees angle;
    double pitch = 2.5;
    double inset = 0.6;
};
[[nodiscard]] std::vector<Polyline> hatched(const Points& ring, const Hatching& hatching,
                                            const std::vector<TurnedBox>& left);

/// Ticks square to a ring's edge, inward, evened in each stretch between corners (engraving A9).
[[nodiscard]] std::vector<Polyline> combed(const Points& ring, double tick, double pitch);

}  // namespace crosstick::drawing
