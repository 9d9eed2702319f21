#pragma once

#include "ui/table/film_painter.h"
#include "ui/work/film_look.h"

namespace crosstick::table {

/// One film painted as it is to lie on the table: with its strength, in its tint.
/// @param under  the picture that the painter paints on: of its size a faded film is made by itself, so that its
///               overlaps do not add up
void paintAsItLies(QPainter& painter, const View& view, const FilmInk& film, const press::Brushes& brushes,
                   const work::FilmLook& look, Theme theme, const QImage& under);

}  // namespace crosstick::table
