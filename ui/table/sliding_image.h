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

/// What was seen in the last frame, kept: when the view slides by whole pixels only the strips that come in at the
/// edges are painted. The picture is bent round: what leaves it on one side makes room for what comes in on the other,
/// so nothing that stays is moved, and a frame of a pan costs no more than laying the picture on the table.
class SlidingImage {
  public:
    /// Paints what lies in a part of the table, in logical pixels of the table.
    using PaintPart = std::function<void(QPainter& painter, const QRectF& part, Scaling scaling)>;

    void forget() { view_.reset(); }
    /// Would a call with this view find that the last one's picture has only slid?
    [[nodiscard]] bool slides(const View& view, double deviceRatio) const;
    /// Makes the picture that of a view.
    /// @param touched  parts of the table that look otherwise since the last call
    /// @param scaling  Nearest: whatever must be painted whole is painted quickly, and smoothly at the next call that
    ///                 asks for Smooth
    void renew(const View& view, double deviceRatio, const std::vector<QRectF>& touched, Scaling scaling,
               const PaintPart& paintPart);
    /// Lays a part of the picture on the table, of the view it was made for.
    void lay(QPainter& painter, const QRectF& part) const;
    void lay(QPainter& painter) const;

  private:
    QImage image_;
    QPoint origin_;  ///< where the area's upper left pixel lies in the picture
    std::optional<View> view_;
    double ratio_ = 1;
    bool rough_ = false;

    /// A rectangle of the area, in its device pixels, and how far its pixels lie off in the picture.
    struct Piece {
        QRect area;
        QPoint off;
    };
    [[nodiscard]] std::vector<Piece> piecesOf(const QRect& area) const;
    [[nodiscard]] QRect pixelsOf(const QRectF& part) const;
    /// By how many device pixels it has slid since the last frame; nothing where it has done anything else.
    [[nodiscard]] std::optional<QPoint> slideTo(const View& view, double deviceRatio) const;
    /// Parts of the table that a slide lays open.
    [[nodiscard]] std::vector<QRectF> opened(const View& view, QPoint by) const;
    void paintParts(const View& view, const std::vector<QRectF>& parts, Scaling scaling, const PaintPart& paintPart);
};

}  // namespace crosstick::table
