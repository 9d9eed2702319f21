#pragma once

#include "sample-data/sheet/canvas.h"
#include "sample-data/sheet/contours.h"

namespace crosstick::demo {

/// Is this one of the heavy contours, every 50 m?
[[nodiscard]] bool isIndexContour(double height);

/// The figures of one height, as they will stand in a gap of its contour.
struct ContourFigures {
    QPainterPath row;
    QPainterPath gap;  ///< where no contour is drawn
};

/// Figures for every index contour: about 90 mm apart, where the contour runs straight over easy ground, on slopes that
/// are read from below before others, near the figures of the next index contour; their tops uphill.
/// @param contours  as drawn; the higher ground right of their direction
/// @param room      where figures may stand (anything but 0)
[[nodiscard]] std::vector<ContourFigures> figuresFor(const Canvas& canvas, const std::vector<Contour>& contours,
                                                     const Field<float>& heights, const Mask& room);

}  // namespace crosstick::demo
