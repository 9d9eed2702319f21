#pragma once

#include <string>
#include <vector>

#include "core/plan/plan.h"

namespace crosstick::movement {

/// The plan that the hand-checked figures were computed for: exercise SLOW KETTLE, UTM zone 25 north, 13 March 2027,
/// zone time O, both routes with their points, the lines they cross, film MOVE, the column of 40 people, 74 double
/// paces to 100 m, 1.6 km/h.
[[nodiscard]] plan::Plan kettlePlan();

/// The same with MSR OAK on film MOVE, 10 m east of the leg from CP 2, from its metre 200 to 740.
[[nodiscard]] plan::Plan kettlePlanBesideOak();

/// A measure's identity in that plan, by "CP 3", "PL BODKIN".
[[nodiscard]] plan::ItemId kettleId(const std::string& name);

/// A plan in the same place with one route through these points (metres), every one of them a checkpoint.
[[nodiscard]] plan::Plan plainRoute(const std::vector<geodesy::PlanePoint>& vertices);

[[nodiscard]] geodesy::PlanePoint at(double easting, double northing);

}  // namespace crosstick::movement
