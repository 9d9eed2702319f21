#pragma once

#include <functional>
#include <optional>
#include <vector>

#include <QImage>
#include <QRectF>

#include "ui/table/view.h"

class QPainter;

namespace crosstick::table {

/// The table as it lay at the beginning of a zoom, kept while the view goes nearer or farther: a frame scales one
/// opaque picture instead of painting tiles and blending films anew, and paints only what comes in at the edges.
class HeldPicture {
  public:
    void forget() { view_.reset(); }
    /// Can it stand for a view: the same way up, and scaled so little that it is still readable?
    [[nodiscard]] bool serves(const View& view, double deviceRatio) const;
    /// Keeps the table of a view. @param paint  paints all of the view's area
    void take(const View& view, double deviceRatio, const std::function<void(QPainter& painter)>& paint);
    /// Lays it where it belongs in a view that it serves. Gives the parts of the view's area that it does not reach.
    [[nodiscard]] std::vector<QRectF> lay(QPainter& painter, const View& view) const;

  private:
    QImage image_;
    std::optional<View> view_;
};

}  // namespace crosstick::table
