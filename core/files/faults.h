#pragma once

#include "core/units/result.h"

namespace crosstick::files {

inline constexpr FaultId kFileMissing{"files/file-missing"};
inline constexpr FaultId kFileExists{"files/file-exists"};
inline constexpr FaultId kFolderMissing{"files/folder-missing"};
inline constexpr FaultId kCannotOpen{"files/cannot-open"};
inline constexpr FaultId kNotAPlan{"files/not-a-plan"};
inline constexpr FaultId kNoPlanInside{"files/no-plan-inside"};
inline constexpr FaultId kDamagedPlan{"files/damaged-plan"};
inline constexpr FaultId kNewerPlan{"files/newer-plan"};
inline constexpr FaultId kReadOnly{"files/read-only"};
inline constexpr FaultId kLockedNow{"files/locked-now"};
inline constexpr FaultId kDiskFull{"files/disk-full"};
inline constexpr FaultId kIoError{"files/io-error"};
inline constexpr FaultId kChangedMeanwhile{"files/changed-meanwhile"};
inline constexpr FaultId kReplacedMeanwhile{"files/replaced-meanwhile"};
inline constexpr FaultId kPlanTooLarge{"files/plan-too-large"};
inline constexpr FaultId kBadField{"files/bad-field"};
inline constexpr FaultId kBadGeometry{"files/bad-geometry"};
inline constexpr FaultId kNotJson{"files/not-json"};
inline constexpr FaultId kNotGeoJson{"files/not-geojson"};
inline constexpr FaultId kBadFeature{"files/bad-feature"};
inline constexpr FaultId kNoKind{"files/no-kind"};
inline constexpr FaultId kNotCarried{"files/not-carried"};
inline constexpr FaultId kCannotWrite{"files/cannot-write"};
inline constexpr FaultId kGivenUp{"files/given-up"};
inline constexpr FaultId kJournalDamaged{"files/journal-damaged"};
inline constexpr FaultId kJournalOfOtherState{"files/journal-of-other-state"};
inline constexpr FaultId kJournalUnwritable{"files/journal-unwritable"};

}  // namespace crosstick::files
