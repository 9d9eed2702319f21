#pragma once

#include <cstdint>

#include <QImage>
#include <QPainterPath>

namespace crosstick::demo {

/// A number from 0 to 255 for every pixel of the sheet: which ground it is, or whether a line may run there. 0 outside.
class Mask {
  public:
    Mask();
    void fill(const QPainterPath& area, std::uint8_t value);
    /// At a place of the paper, millimetres.
    [[nodiscard]] int at(QPointF place) const;
    /// Share of an upright box that has a value, 0 to 1, counted every quarter of a millimetre.
    [[nodiscard]] double share(const QRectF& box, std::uint8_t value) const;

  private:
    QImage pixels_;
};

}  // namespace crosstick::demo
