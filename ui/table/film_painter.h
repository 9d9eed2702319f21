#pragma once

#include <vector>

#include <QImage>
#include <QTransform>

#include "ui/press/painter.h"
#include "ui/table/palette.h"
#include "ui/table/scene.h"

class QPainter;

namespace crosstick::table {

/// From a film's millimetres to the table.
[[nodiscard]] QTransform filmTransform(const View& view, const film::Frame& frame);

/// One film's ink and its ticks.
void paintFilm(QPainter& painter, const View& view, const FilmInk& film, const press::Brushes& brushes);

/// Several films as one transparent picture of the table, to be laid on with one strength.
/// @param size  of the table in device pixels; @param deviceRatio  device pixels for a logical one
[[nodiscard]] QImage flattened(const View& view, const std::vector<FilmInk>& films, std::size_t count,
                               const press::Brushes& brushes, QSize size, double deviceRatio);

/// The edge of the working film: double, in our colour, with the clipped corner and the notches of its place in the
/// set; along the rim where the film's edge is out of sight.
void paintFilmEdge(QPainter& painter, const View& view, const FilmInk& film, int placeInSet, const Palette& palette);
/// The same from the ground that the film's window covers; none: along the rim.
void paintFilmEdge(QPainter& painter, const View& view, const std::optional<GridBox>& window, int placeInSet,
                   const Palette& palette);

}  // namespace crosstick::table
