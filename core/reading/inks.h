#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/sheets/file_report.h"
#include "core/sheets/pixels.h"

class GDALDataset;
class GDALRasterBand;

namespace crosstick::reading {

/// The values of a band that stand for black and for white.
struct Tones {
    double black = 0, white = 255;
    [[nodiscard]] bool arePlain() const { return black == 0 && white == 255; }
    [[nodiscard]] std::uint8_t byte(double value) const;  ///< not a number: white
};

/// How a file's bands make a colour, and what turns their values into it.
struct Inks {
    sheets::Colours colours = sheets::Colours::Unknown;
    std::array<std::uint32_t, 256> palette{};
    Tones tones;

    [[nodiscard]] int bands() const;  ///< that are read
    /// Colours from bytes that lie band by band within a pixel, clear ones laid on white.
    [[nodiscard]] std::vector<std::uint32_t> mixed(const std::vector<std::uint8_t>& bytes) const;
};

/// Colours::Unknown where the bands are none that we know: a palette of more than 256 inks, complex numbers. No pixel
/// is read.
[[nodiscard]] sheets::Colours coloursOf(GDALDataset& dataset);
/// With what turns values into colours; reads a sample where a file does not say what its values span.
[[nodiscard]] Inks inksOf(GDALDataset& dataset);

}  // namespace crosstick::reading
