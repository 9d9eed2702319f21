#pragma once

#include "core/units/result.h"

namespace crosstick::press {

inline constexpr FaultId kNoFace{"press/no-face"};
inline constexpr FaultId kCannotWrite{"press/cannot-write"};
inline constexpr FaultId kFolderMissing{"press/folder-missing"};
inline constexpr FaultId kPdfRefused{"press/pdf-refused"};
inline constexpr FaultId kNoPages{"press/no-pages"};
inline constexpr FaultId kNoFilms{"press/no-films"};
inline constexpr FaultId kSpecimenForm{"press/specimen-form"};
inline constexpr FaultId kNoSuchFilm{"press/no-such-film"};

}  // namespace crosstick::press
