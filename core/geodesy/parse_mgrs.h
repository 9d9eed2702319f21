#pragma once

#include "core/geodesy/grid_reference.h"

namespace crosstick::geodesy {

/// A plain text (plainText) that, blanks aside, is a zone and a letter, or a polar letter, followed by letters and
/// digits; or one that is so but for a zone in front (a square and its digits alone).
[[nodiscard]] bool looksLikeMgrs(const std::string& plain);
/// The south-west corner and the side of the square named. Errors as parsePoint.
[[nodiscard]] Result<GridReference> parseMgrs(const std::string& plain);

}  // namespace crosstick::geodesy
