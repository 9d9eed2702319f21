#pragma once

#include <cstdint>
#include <optional>

#include "core/registration/grey_picture.h"
#include "core/registration/model.h"

namespace crosstick::testing {

enum class GridLines : std::uint8_t { None, Printed };

/// How a made sheet of 8 by 10 km is to look: contours, woods, roads, names, and a grid of 1 km.
struct SheetLook {
    double denominator = 25000, dotsPerInch = 150;
    double gridGrey = 60, gridMm = 0.13;
    GridLines grid = GridLines::Printed;
    double margin = 40;  ///< pixels about the sheet
    double blur = 1;     ///< pixels
    double noise = 2;    ///< greys, one sigma
    double shade = 0;    ///< greys by which one side is darker than the other
    double turn = 0.4;   ///< degrees
    double aslant = 0;   ///< share by which depth grows from the middle to an edge
    double bulge = 0;    ///< pixels by which paper that does not lie flat moves: no model's own shape
    unsigned seed = 1;   ///< of noise and of where names stand
    int ground = 0;      ///< which piece of an endless country it shows
};

/// A picture with all that is true of it.
struct DrawnSheet {
    int columns = 0, rows = 0;
    std::vector<std::uint8_t> grey;
    std::vector<registration::Mark> inner;  ///< crossings within the neatline
    std::vector<registration::Mark> edge;   ///< on the neatline
    [[nodiscard]] registration::GreyPicture picture() const;
    /// The inner crossing nearest to a place of the picture, as shares of its sides.
    [[nodiscard]] registration::Mark near(double across, double down) const;
};

/// The same bytes for the same look.
[[nodiscard]] DrawnSheet drawnSheet(const SheetLook& look);

}  // namespace crosstick::testing
