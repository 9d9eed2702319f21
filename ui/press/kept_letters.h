#pragma once

#include <QByteArray>
#include <QCache>
#include <QImage>

#include "ui/press/painter.h"

namespace crosstick::press {

/// Rows of letters as pictures, kept from one painting to the next: the rim of a row costs a third of a millisecond to
/// stroke and a microsecond to copy. For screens only: places are rounded to a quarter of a device pixel. Thread: that
/// of its faces.
class KeptLetters {
  public:
    /// @param most  bytes of pictures; the longest unused go first
    explicit KeptLetters(int most = 48 << 20) : pictures_(most) {}

    /// Paints a row where paint() would. False where it is too large to be worth keeping: then nothing was painted.
    [[nodiscard]] bool paint(QPainter& painter, const drawing::Text& text, const Brushes& brushes);

  private:
    struct Picture {
        QImage image;
        QPoint corner;  ///< from the whole device pixel that the row's start lies in
    };
    QCache<QByteArray, Picture> pictures_;
};

}  // namespace crosstick::press
