#pragma once

#include "core/drawing/drawing.h"

namespace crosstick::table {

/// The weight of the table's letters that are not bold anyhow: that of the application's own face, which is bold where
/// the night light is dimmed far.
[[nodiscard]] drawing::Weight plainLetters();

}  // namespace crosstick::table
