#pragma once

#include "core/geodesy/grid_reference.h"

namespace crosstick::geodesy {

/// Upper case without blanks: a zone and a letter, or a polar letter, followed by letters and digits only.
[[nodiscard]] bool looksLikeMgrs(const std::string& packed);
/// The south-west corner and the side of the square named. Errors as parsePoint.
[[nodiscard]] Result<GridReference> parseMgrs(const std::string& packed);

}  // namespace crosstick::geodesy
