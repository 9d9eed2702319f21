#pragma once

#include "core/units/result.h"

namespace crosstick::geodesy {

inline constexpr FaultId kNotAPoint{"geodesy/not-a-point"};
inline constexpr FaultId kEmptyPoint{"geodesy/empty-point"};
inline constexpr FaultId kBadZone{"geodesy/bad-zone"};
inline constexpr FaultId kBadBand{"geodesy/bad-band"};
inline constexpr FaultId kBadSquare{"geodesy/bad-square"};
inline constexpr FaultId kOldLettering{"geodesy/old-lettering"};
inline constexpr FaultId kOddDigits{"geodesy/odd-digits"};
inline constexpr FaultId kUnequalDigits{"geodesy/unequal-digits"};
inline constexpr FaultId kTooManyDigits{"geodesy/too-many-digits"};
inline constexpr FaultId kZoneAlone{"geodesy/zone-alone"};
inline constexpr FaultId kNoZoneNumber{"geodesy/no-zone-number"};
inline constexpr FaultId kNoZone{"geodesy/no-zone"};
inline constexpr FaultId kNoHemisphere{"geodesy/no-hemisphere"};
inline constexpr FaultId kOneLetter{"geodesy/one-letter"};
inline constexpr FaultId kAmbiguousLetter{"geodesy/ambiguous-letter"};
inline constexpr FaultId kBandMismatch{"geodesy/band-mismatch"};
inline constexpr FaultId kOffGrid{"geodesy/off-grid"};
inline constexpr FaultId kBadLatitude{"geodesy/bad-latitude"};
inline constexpr FaultId kBadLongitude{"geodesy/bad-longitude"};
inline constexpr FaultId kBadSixty{"geodesy/bad-sixty"};
inline constexpr FaultId kOutsideZone{"geodesy/outside-zone"};
inline constexpr FaultId kNoMgrs{"geodesy/no-mgrs"};
inline constexpr FaultId kNoMagneticModel{"geodesy/no-magnetic-model"};
inline constexpr FaultId kDateOutsideModel{"geodesy/date-outside-model"};
inline constexpr FaultId kHeightOutsideModel{"geodesy/height-outside-model"};
inline constexpr FaultId kWeakField{"geodesy/weak-field"};
inline constexpr FaultId kUnknownCrs{"geodesy/unknown-crs"};
inline constexpr FaultId kCrsNotProjected{"geodesy/crs-not-projected"};
inline constexpr FaultId kNoTransformation{"geodesy/no-transformation"};
inline constexpr FaultId kOutsidePlane{"geodesy/outside-plane"};

}  // namespace crosstick::geodesy
