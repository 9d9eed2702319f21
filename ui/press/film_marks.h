#pragma once

#include <QPainterPath>
#include <QRectF>

namespace crosstick::press {

// The marks of a film as the window draws them, in logical pixels: notches and corner tell its place in the set without
// any colour, the others what it is doing. Icons stand on a grid of 16.

/// A film cut out of its sheet, clockwise from the upper left corner: clipped upper right corner of 7, notches left of
/// it, 3 wide, 4 deep and 4 apart; from five on a wide one of 10 counts five.
/// @param place  in the set, from 1; none for 0
[[nodiscard]] QPainterPath filmOutline(const QRectF& film, int place);
/// How much of the upper edge corner and notches take, from the right.
[[nodiscard]] double notchesWide(int place);

/// A nib: drawing happens here.
[[nodiscard]] QPainterPath nib(QPointF corner);
/// A drawing pin: nothing on it moves.
[[nodiscard]] QPainterPath pin(QPointF corner);
/// A halved sheet: it lies there with part of its strength.
[[nodiscard]] QPainterPath halvedSheet(QPointF corner);

}  // namespace crosstick::press
