#include "ui/table/ground_image.h"

#include <cmath>
#include <cstring>
#include <utility>

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

}  // namespace

std::optional<QPoint> GroundImage::slideTo(const View& view, double deviceRatio) const {
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

void GroundImage::slide(QPoint by) {
    const int rows = image_.height() - std::abs(by.y());
    const auto bytes = static_cast<std::size_t>(image_.width() - std::abs(by.x())) * sizeof(QRgb);
    const auto move = [&](int row) {
        const auto* from = reinterpret_cast<const QRgb*>(image_.constScanLine(row - std::min(by.y(), 0)));
        auto* to = reinterpret_cast<QRgb*>(image_.scanLine(row + std::max(by.y(), 0)));
        std::memmove(to + std::max(by.x(), 0), from + std::max(-by.x(), 0), bytes);
    };
    for (int n = 0; n < rows; ++n) {
        move(by.y() > 0 ? rows - 1 - n : n);  // a row is read before it is written over
    }
}

std::vector<QRectF> GroundImage::opened(const View& view, QPoint by) const {
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

void GroundImage::paintParts(const View& view, const std::vector<QRectF>& parts, Scaling scaling,
                             const PaintPart& paintPart) {
    QPainter painter(&image_);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(-view.area().left, -view.area().top);
    for (const QRectF& part : parts) {
        const QRectF seen = QRectF(part.toAlignedRect()).intersected(rectOf(view.area()));
        if (!seen.isEmpty()) {
            painter.save();
            painter.setClipRect(seen);
            paintPart(painter, seen, scaling);
            painter.restore();
        }
    }
}

void GroundImage::paint(QPainter& painter, const View& view, double deviceRatio, const std::vector<QRectF>& touched,
                        Scaling scaling, const PaintPart& paintPart) {
    const QSize size(static_cast<int>(std::ceil(view.area().width * deviceRatio)),
                     static_cast<int>(std::ceil(view.area().height * deviceRatio)));
    if (size.isEmpty()) {
        return;
    }
    const auto by = size == image_.size() ? slideTo(view, deviceRatio) : std::nullopt;
    if (!by || (rough_ && scaling == Scaling::Smooth)) {
        if (size != image_.size()) {
            image_ = QImage(size, QImage::Format_RGB32);
        }
        image_.setDevicePixelRatio(deviceRatio);
        ratio_ = deviceRatio;
        rough_ = scaling == Scaling::Nearest;
        paintParts(view, {rectOf(view.area())}, scaling, paintPart);
    } else {
        slide(*by);
        std::vector<QRectF> parts = opened(view, *by);
        parts.insert(parts.end(), touched.begin(), touched.end());
        paintParts(view, parts, rough_ ? Scaling::Nearest : Scaling::Smooth, paintPart);
    }
    view_ = view;
    painter.drawImage(QPointF(view.area().left, view.area().top), image_);
}

}  // namespace crosstick::table
