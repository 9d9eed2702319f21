#pragma once

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include "core/registration/grey_picture.h"

namespace crosstick::registration {

inline constexpr int kPiece = 6;     ///< pixels along a line that are averaged
inline constexpr int kSide = 4;      ///< pixels from a line's middle to where its ground is looked at
inline constexpr int kPerPixel = 2;  ///< steps across

/// The steps across a piece of a line, half to either side.
struct Across {
    int half = 0;
    [[nodiscard]] std::size_t indexOf(double offset) const {
        return static_cast<std::size_t>(std::clamp<long>(std::lround(offset * kPerPixel) + half, 0, 2L * half));
    }
    [[nodiscard]] double offsetOf(std::size_t index) const { return (static_cast<double>(index) - half) / kPerPixel; }
};

/// Mean greys across one piece of a line.
struct Piece {
    double along = 0;         ///< of its middle, in pixels
    std::vector<float> dark;  ///< how much darker than the ground at both sides; below 0: not at all
    std::vector<float> grey;
    bool isSeen = false;  ///< inside the picture
};
/// @param at  where along is 0  @param direction  of the line, of length 1
[[nodiscard]] Piece pieceAt(const GreyWindow& window, PixelPoint at, PixelPoint direction, double along,
                            const Across& across);

/// The middle of something dark on a piece: to the right of the line's direction as it points, in pixels.
struct Centre {
    double along = 0, offset = 0;
    double contrast = 0;  ///< greys by which it is darker than both its sides
    double width = 0;     ///< of its darkness, in pixels
};
/// The darkest within two pixels of an offset, by its centre of darkness below the straight line between the grounds
/// at both its sides; nothing where it has not a third of the contrast.
[[nodiscard]] std::optional<Centre> centreOf(const Piece& piece, const Across& across, double near, double contrast);
/// All that are dark on a piece, each a pixel and a half from the next at least.
[[nodiscard]] std::vector<Centre> centresOf(const Piece& piece, const Across& across, double contrast);

}  // namespace crosstick::registration
