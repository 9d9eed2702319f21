#pragma once

#include "tests/drawing/random_lines.h"
#include "tests/symbols/made_film.h"

namespace crosstick::symbols::testing {

/// A film of a number of measures of all kinds strewn over the window and a little beyond.
[[nodiscard]] MadeFilm randomFilm(std::uint64_t seed, int measures);
/// One measure of a kind at random.
[[nodiscard]] Made randomMeasure(drawing::testing::RandomLines& random, std::string_view kind);

}  // namespace crosstick::symbols::testing
