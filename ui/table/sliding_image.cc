#include "ui/table/sliding_image.h"

#include <cmath>

#include <QPainter>

namespace crosstick::table {
namespace {

constexpr double kWhole = 1e-3;  ///< pixels from a whole number that still count as one

QRectF rectOf(const Area& area) {
    return {area.left, area.top, area.width, area.height};
}

std::optional<QPoint> wholePixels(double x, double y) {
    const double column = std::round(x);
    const double row = std::round(y);
    if (!(std::abs(x - column) < kWhole && std::abs(y - row) < kWhole)) {
        return std::nullopt;
    }
    return QPoint(static_cast<int>(column), static_cast<int>(row));
}

int wrapped(int at, int length) {
    return (at % length + length) % length;
}

/// A stretch of the area along one side, cut where the picture's edge runs through it.
struct Stretch {
    int from, length, off;
};
std::vector<Stretch> stretchesOf(int from, int length, int origin, int whole) {
    const int begin = wrapped(origin + from, whole);
    const int first = std::min(length, whole - begin);
    std::vector<Stretch> all{{from, first, begin - from}};
    if (first < length) {
        all.push_back({from + first, length - first, -(from + first)});
    }
    return all;
}

}  // namespace

bool SlidingImage::slides(const View& view, double deviceRatio) const {
    return slideTo(view, deviceRatio).has_value();
}

std::optional<QPoint> SlidingImage::slideTo(const View& view, double deviceRatio) const {
    if (!view_ || ratio_ != deviceRatio || !(view_->area() == view.area())) {
        return std::nullopt;
    }
    const Area& area = view.area();
    const auto moved = [&](Spot was) {
        const Spot now = view.spot(view_->place(was));
        return Spot{(now.x - was.x) * deviceRatio, (now.y - was.y) * deviceRatio};
    };
    // Two corners that move alike: neither zoomed nor turned.
    const Spot first = moved({area.left, area.top});
    const Spot last = moved({area.right(), area.bottom()});
    if (std::abs(first.x - last.x) > kWhole || std::abs(first.y - last.y) > kWhole ||
        std::abs(first.x) >= image_.width() || std::abs(first.y) >= image_.height()) {
        return std::nullopt;
    }
    return wholePixels(first.x, first.y);
}

std::vector<SlidingImage::Piece> SlidingImage::piecesOf(const QRect& area) const {
    std::vector<Piece> pieces;
    for (const Stretch& across : stretchesOf(area.left(), area.width(), origin_.x(), image_.width())) {
        for (const Stretch& down : stretchesOf(area.top(), area.height(), origin_.y(), image_.height())) {
            pieces.push_back({{across.from, down.from, across.length, down.length}, {across.off, down.off}});
        }
    }
    return pieces;
}

/// Of a part of the table the device pixels of the area that it touches.
QRect SlidingImage::pixelsOf(const QRectF& part) const {
    const Area& area = view_->area();
    const QRectF pixels((part.left() - area.left) * ratio_, (part.top() - area.top) * ratio_, part.width() * ratio_,
                        part.height() * ratio_);
    return pixels.toAlignedRect().intersected(QRect(QPoint(0, 0), image_.size()));
}

std::vector<QRectF> SlidingImage::opened(const View& view, QPoint by) const {
    const QRectF whole = rectOf(view.area());
    const double wide = std::abs(by.x()) / ratio_;
    const double high = std::abs(by.y()) / ratio_;
    std::vector<QRectF> parts;
    if (by.x() != 0) {
        parts.emplace_back(by.x() > 0 ? whole.left() : whole.right() - wide, whole.top(), wide, whole.height());
    }
    if (by.y() != 0) {
        parts.emplace_back(whole.left(), by.y() > 0 ? whole.top() : whole.bottom() - high, whole.width(), high);
    }
    return parts;
}

void SlidingImage::paintParts(const View& view, const std::vector<QRectF>& parts, Scaling scaling,
                              const PaintPart& paintPart) {
    QPainter painter(&image_);
    painter.setRenderHint(QPainter::Antialiasing);
    for (const QRectF& part : parts) {
        for (const Piece& piece : piecesOf(pixelsOf(part))) {
            if (piece.area.isEmpty()) {
                continue;
            }
            const QRectF inPicture(QPointF(piece.area.topLeft() + piece.off) / ratio_,
                                   QSizeF(piece.area.size()) / ratio_);
            const QRectF onTable(view.area().left + piece.area.left() / ratio_,
                                 view.area().top + piece.area.top() / ratio_, inPicture.width(), inPicture.height());
            painter.save();
            painter.setClipRect(inPicture);
            painter.translate(inPicture.topLeft() - onTable.topLeft());
            paintPart(painter, onTable, scaling);
            painter.restore();
        }
    }
}

void SlidingImage::renew(const View& view, double deviceRatio, const std::vector<QRectF>& touched, Scaling scaling,
                         const PaintPart& paintPart) {
    const QSize size(static_cast<int>(std::ceil(view.area().width * deviceRatio)),
                     static_cast<int>(std::ceil(view.area().height * deviceRatio)));
    if (size.isEmpty()) {
        return forget();
    }
    const auto by = size == image_.size() ? slideTo(view, deviceRatio) : std::nullopt;
    view_ = view;
    if (!by || (rough_ && scaling == Scaling::Smooth)) {
        if (size != image_.size()) {
            image_ = QImage(size, QImage::Format_RGB32);
        }
        image_.setDevicePixelRatio(deviceRatio);
        ratio_ = deviceRatio;
        origin_ = {};
        rough_ = scaling == Scaling::Nearest;
        paintParts(view, {rectOf(view.area())}, scaling, paintPart);
    } else {
        origin_ = {wrapped(origin_.x() - by->x(), size.width()), wrapped(origin_.y() - by->y(), size.height())};
        std::vector<QRectF> parts = opened(view, *by);
        parts.insert(parts.end(), touched.begin(), touched.end());
        paintParts(view, parts, rough_ ? Scaling::Nearest : Scaling::Smooth, paintPart);
    }
}

void SlidingImage::lay(QPainter& painter, const QRectF& part) const {
    if (!view_) {
        return;
    }
    const Area& area = view_->area();
    for (const Piece& piece : piecesOf(pixelsOf(part))) {
        painter.drawImage(QPointF(area.left + piece.area.left() / ratio_, area.top + piece.area.top() / ratio_), image_,
                          QRectF(piece.area.translated(piece.off)));
    }
}

void SlidingImage::lay(QPainter& painter) const {
    if (view_) {
        lay(painter, rectOf(view_->area()));
    }
}

}  // namespace crosstick::table
