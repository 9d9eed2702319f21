#include "ui/table/held_picture.h"

#include <cmath>

#include <QPainter>

namespace crosstick::table {
namespace {

constexpr double kMostScaled = 1.6;

}  // namespace

bool HeldPicture::serves(const View& view, double deviceRatio) const {
    if (!view_ || image_.devicePixelRatio() != deviceRatio || !(view_->area() == view.area()) ||
        view_->up() != view.up()) {
        return false;
    }
    const double scaled = view.zoom() / view_->zoom();
    return scaled <= kMostScaled && scaled >= 1 / kMostScaled;
}

void HeldPicture::take(const View& view, double deviceRatio, const std::function<void(QPainter& painter)>& paint) {
    const Area& area = view.area();
    const QSize size(static_cast<int>(std::ceil(area.width * deviceRatio)),
                     static_cast<int>(std::ceil(area.height * deviceRatio)));
    if (size.isEmpty()) {
        return forget();
    }
    if (size != image_.size()) {
        image_ = QImage(size, QImage::Format_RGB32);
    }
    image_.setDevicePixelRatio(deviceRatio);
    view_ = view;
    QPainter painter(&image_);
    painter.translate(-area.left, -area.top);
    paint(painter);
}

std::vector<QRectF> HeldPicture::lay(QPainter& painter, const View& view) const {
    const Area& area = view.area();
    const QRectF whole(area.left, area.top, area.width, area.height);
    if (!view_) {
        return {whole};
    }
    const Spot first = view.spot(view_->place({area.left, area.top}));
    const Spot last = view.spot(view_->place({area.right(), area.bottom()}));
    // Whole pixels, so that nothing shimmers where it meets what is painted beside it.
    const QRectF to =
        QRectF(QPointF(std::round(first.x), std::round(first.y)), QPointF(std::round(last.x), std::round(last.y)));
    painter.save();
    painter.setClipRect(whole, Qt::IntersectClip);
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.setRenderHint(QPainter::SmoothPixmapTransform, false);
    painter.drawImage(to, image_);
    painter.restore();
    const QRectF seen = to.intersected(whole);
    if (seen.isEmpty()) {
        return {whole};
    }
    std::vector<QRectF> open;
    for (const QRectF& part : {QRectF(whole.left(), whole.top(), whole.width(), seen.top() - whole.top()),
                               QRectF(whole.left(), seen.bottom(), whole.width(), whole.bottom() - seen.bottom()),
                               QRectF(whole.left(), seen.top(), seen.left() - whole.left(), seen.height()),
                               QRectF(seen.right(), seen.top(), whole.right() - seen.right(), seen.height())}) {
        if (part.width() > 0 && part.height() > 0) {
            open.push_back(part);
        }
    }
    return open;
}

}  // namespace crosstick::table
