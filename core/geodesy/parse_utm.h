#pragma once

#include <optional>

#include "core/geodesy/grid_reference.h"

namespace crosstick::geodesy {

/// A plain text (plainText) read as UTM or UPS: "18N 323483 4306479", "18 north ...", "323483 mE 4306479 mN 18N",
/// "N 2000000 1555731". Nothing where it has not that form.
/// Errors: geodesy/bad-zone, bad-band, band-mismatch, ambiguous-letter, off-grid, no-hemisphere, no-zone.
[[nodiscard]] std::optional<Result<GridPoint>> parseUtm(const std::string& plain);

}  // namespace crosstick::geodesy
