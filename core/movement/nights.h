#pragma once

#include "core/geodesy/points.h"
#include "core/movement/progress.h"

namespace crosstick::movement {

/// The nights at a place between two times, cut at both: from the end of civil twilight in the evening to its beginning
/// in the morning, when the sun's centre is 6 degrees under the horizon. That rates change there is our own rule, no
/// doctrine: until then the ground can be seen without a lamp. A dusk at which the sun only just turns before it gets
/// so low begins no night. Nothing outside the years that sky::lightOn() knows.
[[nodiscard]] std::optional<std::vector<Night>> nightsBetween(geodesy::GeoPoint place, Instant from, Instant until);

}  // namespace crosstick::movement
