#pragma once

#include <array>
#include <cstdint>
#include <filesystem>
#include <optional>

#include "core/plan/sheet.h"

namespace crosstick::testing {

inline constexpr int kPhotoColumns = 1600, kPhotoRows = 1200;

enum class Pen : std::uint8_t { Black, Red, Blue, Green };

/// A film drawn by hand with felt pens, as a poor photo has it: slanted on a wooden table, by a lamp at one side, with
/// the shadow of a hand and its fingers, two folds, the grain of the paper under it, and the ring of a cup.
struct FilmSpot {
    bool isTable = false;
    std::optional<Pen> pen;  ///< in the middle of a stroke
    bool isBlank = false;    ///< no stroke within some pixels
    bool isStain = false;    ///< of the cup
};
[[nodiscard]] FilmSpot filmSpot(int column, int row);

/// Its four ticks, 10 mm across: where they lie in the photo, and on the film in mm from its upper left corner.
struct FilmTick {
    plan::RasterSpot photo, film;
};
[[nodiscard]] std::array<FilmTick, 4> filmTicks();

/// As a JPEG file of quality 60. @param seed  of all noise
void photographFilm(const std::filesystem::path& file, unsigned seed);

}  // namespace crosstick::testing
