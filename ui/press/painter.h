#pragma once

#include <array>

#include <QColor>

#include "core/drawing/drawing.h"
#include "ui/press/faces.h"

class QPainter;
class QPainterPath;

namespace crosstick::press {

/// What colour each pen has on one surface.
struct Inks {
    std::array<QColor, 5> pens;  ///< in the order of drawing::Ink
    QColor paper;                ///< of the halo
    [[nodiscard]] const QColor& of(drawing::Ink ink) const { return pens[static_cast<std::size_t>(ink)]; }
};
[[nodiscard]] Inks dayInks();     ///< the light table by day
[[nodiscard]] Inks nightInks();   ///< the light table by night: one hue for everything
[[nodiscard]] Inks paperInks();   ///< film and paper in colour; black is the pure one, so that a printer uses its black
[[nodiscard]] Inks onePenInks();  ///< film and paper, everything black

/// How letters reach the surface: as text of the embedded face, or as filled outlines at exact places.
enum class Letters { AsText, AsOutlines };
enum class HaloRule { Painted, LeftOut };

class KeptLetters;

/// Everything a painter needs beside the drawing. Screens take outlines, paper takes text.
struct Brushes {
    const Faces& faces;
    Inks inks;
    Letters letters = Letters::AsOutlines;
    HaloRule halo = HaloRule::LeftOut;
    KeptLetters* kept = nullptr;  ///< for a screen that is painted again and again; none: letters are painted anew
};

/// Millimetres of paper colour round letters with a halo.
inline constexpr double kHaloRim = 0.5;

/// Paints a drawing where one unit of the painter is one millimetre (whatever transformation does that). Marks keep
/// their order. Letters stand where drawing::setRow puts them, without kerning. Points that are not finite are passed
/// over. The painter's state is as before afterwards.
void paint(QPainter& painter, const drawing::Drawing& drawing, const Brushes& brushes);

/// A row's outlines with their halo where the brushes have one; the painter stands at the row's start and is turned.
void paintOutlines(QPainter& painter, const QPainterPath& outlines, const drawing::Text& text, const Brushes& brushes);

}  // namespace crosstick::press
