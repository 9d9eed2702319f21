#pragma once

#include "core/units/result.h"

namespace crosstick::movement {

inline constexpr FaultId kRouteTooShort{"movement/route-too-short"};
inline constexpr FaultId kRouteNotOnGrid{"movement/route-not-on-grid"};
inline constexpr FaultId kNoDate{"movement/no-date"};
inline constexpr FaultId kNoModel{"movement/no-model"};
inline constexpr FaultId kNoPrintedAngle{"movement/no-printed-angle"};
inline constexpr FaultId kNoRoutes{"movement/no-routes"};
inline constexpr FaultId kNoSuchRoute{"movement/no-such-route"};
inline constexpr FaultId kBadCourse{"movement/bad-course"};
inline constexpr FaultId kOddCount{"movement/odd-count"};
inline constexpr FaultId kBadCount{"movement/bad-count"};
inline constexpr FaultId kBadRate{"movement/bad-rate"};
inline constexpr FaultId kBadNavigator{"movement/bad-navigator"};
inline constexpr FaultId kBadPreparation{"movement/bad-preparation"};
inline constexpr FaultId kCardForm{"movement/card-form"};
inline constexpr FaultId kTooLong{"movement/too-long"};
inline constexpr FaultId kNoSuchColumn{"movement/no-such-column"};
inline constexpr FaultId kNoRate{"movement/no-rate"};
inline constexpr FaultId kNoHeights{"movement/no-heights"};
inline constexpr FaultId kProfileForm{"movement/profile-form"};
inline constexpr FaultId kTableForm{"movement/table-form"};

}  // namespace crosstick::movement
