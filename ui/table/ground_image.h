#pragma once

#include <functional>
#include <optional>
#include <vector>

#include <QImage>
#include <QRectF>

#include "ui/table/tile_painter.h"
#include "ui/table/view.h"

class QPainter;

namespace crosstick::table {

/// The ground of the last frame, kept: when the view slides by whole pixels it slides along, and only the strips that
/// come in at the edges are painted. A frame of a pan then costs a copy instead of scaling every tile again.
class GroundImage {
  public:
    /// Paints the ground inside a part of the table, in logical pixels of the table.
    using PaintPart = std::function<void(QPainter& painter, const QRectF& part, Scaling scaling)>;

    void forget() { view_.reset(); }
    /// @param touched  parts of the table that look otherwise since the last call
    /// @param scaling  Nearest: whatever must be painted whole is painted quickly, and smoothly at the next call that
    ///                 asks for Smooth
    void paint(QPainter& painter, const View& view, double deviceRatio, const std::vector<QRectF>& touched,
               Scaling scaling, const PaintPart& paintPart);

  private:
    QImage image_;
    std::optional<View> view_;
    double ratio_ = 1;
    bool rough_ = false;

    /// By how many device pixels the ground has slid since the last frame; nothing where it has done anything else.
    [[nodiscard]] std::optional<QPoint> slideTo(const View& view, double deviceRatio) const;
    void slide(QPoint by);
    /// Parts of the table that a slide lays open.
    [[nodiscard]] std::vector<QRectF> opened(const View& view, QPoint by) const;
    void paintParts(const View& view, const std::vector<QRectF>& parts, Scaling scaling, const PaintPart& paintPart);
};

}  // namespace crosstick::table
