#pragma once

#include <optional>
#include <vector>

#include "core/movement/route_figures.h"

namespace crosstick::movement {

using plan::NavigatorErrors;

/// Where somebody may stand when he takes himself to be at a leg's end: half axes round that end.
struct DriftEllipse {
    Metres major, minor;
    Degrees gridAzimuth;  ///< of the major axis, [0, 180)
    friend bool operator==(const DriftEllipse&, const DriftEllipse&) = default;
};

/// A leg of one straight piece of length d gives pace x d along it and sin(compass) x d across it. Over bends: the pace
/// error is the person's, the same all along the leg, so that it scales the straight line from the leg's start to its
/// end; the compass error is new with each azimuth and independent of the others, so that its squares add up:
///     covariance = pace^2 D D^T + sum (sin(compass) d_i)^2 n_i n_i^T
/// with D the vector from start to end, d_i a piece's ground length and n_i the unit vector across it; the half axes
/// are the roots of its eigenvalues (propagation of errors in a compass traverse, common practice in surveying).
/// Assumed besides: one begins at the true start of the leg, walks each piece straight, and nothing on the way (a
/// stream, a track) catches or corrects him. If the errors put in are standard deviations, the ellipse holds 39 of 100
/// who walk the leg, and one twice as large 86.
[[nodiscard]] DriftEllipse driftOf(const std::vector<Piece>& pieces, NavigatorErrors errors);

/// The longest straight leg at whose end no half axis is larger than what one finds the point within.
/// Infinite where both errors are 0.
[[nodiscard]] Metres longestSafeLeg(NavigatorErrors errors, Metres foundWithin);

/// From how far off a point is found where nothing better is known: our own default.
inline constexpr Metres kFoundWithin{50};

enum class FoundBy {
    Plan,  ///< the route point's own field "found_within"
    Asked  ///< what was given for all points, or our default
};
struct LegDrift {
    int leg = 1;
    DriftEllipse ellipse;
    Metres foundWithin;
    FoundBy by = FoundBy::Asked;
    [[nodiscard]] bool isLarger() const { return ellipse.major > foundWithin; }
    friend bool operator==(const LegDrift&, const LegDrift&) = default;
};
struct RouteDrift {
    NavigatorErrors errors;
    Metres foundWithin;     ///< of points that do not say their own
    Metres longestSafeLeg;  ///< to such a point
    std::vector<LegDrift> legs;
};
/// @param asked  none: those of the plan, else our defaults
[[nodiscard]] RouteDrift routeDrift(const plan::Plan& plan, const RouteFigures& figures,
                                    std::optional<NavigatorErrors> asked, Metres foundWithin);

}  // namespace crosstick::movement
