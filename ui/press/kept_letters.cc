#include "ui/press/kept_letters.h"

#include <cmath>
#include <memory>

#include <QPainter>
#include <QPainterPath>

namespace crosstick::press {
namespace {

constexpr int kPhases = 4;         ///< of a device pixel, each way
constexpr double kLargest = 1500;  ///< device pixels of a row that is still kept

/// How a row stands on the device.
struct Stand {
    QPoint pixel;        ///< the whole pixel its start lies in
    int phaseX, phaseY;  ///< quarters beyond it
    double scale;        ///< device pixels to the millimetre
    double turn;         ///< degrees, clockwise as seen
};

Stand standOf(const QTransform& toDevice, const drawing::Text& text) {
    const QPointF start = toDevice.map(QPointF(text.start.x, text.start.y));
    const double column = std::floor(start.x());
    const double row = std::floor(start.y());
    const double turned = degrees(Radians(std::atan2(toDevice.m12(), toDevice.m11()))).value();
    return {QPoint(static_cast<int>(column), static_cast<int>(row)), static_cast<int>((start.x() - column) * kPhases),
            static_cast<int>((start.y() - row) * kPhases), std::hypot(toDevice.m11(), toDevice.m12()),
            turned - text.angle.value()};
}

template <typename Value>
void add(QByteArray& key, const Value& value) {
    key.append(reinterpret_cast<const char*>(&value), static_cast<qsizetype>(sizeof value));
}

QByteArray keyOf(const Stand& stand, const drawing::Text& text, const Brushes& brushes, bool rimmed) {
    QByteArray key(text.text.data(), static_cast<qsizetype>(text.text.size()));
    add(key, text.weight);
    add(key, text.capHeight);
    add(key, stand.phaseX);
    add(key, stand.phaseY);
    add(key, stand.scale);
    add(key, stand.turn);
    add(key, brushes.inks.of(text.ink).rgba());
    add(key, rimmed ? brushes.inks.paper.rgba() : QRgb{0});
    return key;
}

}  // namespace

bool KeptLetters::paint(QPainter& painter, const drawing::Text& text, const Brushes& brushes) {
    const QTransform toDevice = painter.deviceTransform();
    const Stand stand = standOf(toDevice, text);
    const double reach = text.capHeight * (static_cast<double>(text.text.size()) + 2) * stand.scale;
    if (!(reach < kLargest)) {
        return false;
    }
    const QPaintDevice& device = *painter.device();
    if (!QRectF(0, 0, device.width(), device.height())
             .adjusted(-reach, -reach, reach, reach)
             .contains(QPointF(stand.pixel) / device.devicePixelRatio())) {
        return true;  // out of sight
    }
    const bool rimmed = brushes.halo == HaloRule::Painted && text.halo == drawing::Halo::Paper;
    const QByteArray key = keyOf(stand, text, brushes, rimmed);
    Picture* picture = pictures_.object(key);
    std::unique_ptr<Picture> made;
    if (picture == nullptr) {
        made = std::make_unique<Picture>();
        const QPainterPath outlines = brushes.faces.outlines(text);
        QTransform local = QTransform::fromTranslate((stand.phaseX + 0.5) / kPhases, (stand.phaseY + 0.5) / kPhases);
        local.rotate(stand.turn).scale(stand.scale, stand.scale);
        const double rim = (rimmed ? kHaloRim : 0.0) * stand.scale + 1;
        const QRect box = local.mapRect(outlines.boundingRect()).adjusted(-rim, -rim, rim, rim).toAlignedRect();
        made->corner = box.topLeft();
        made->image = QImage(box.size().expandedTo({1, 1}), QImage::Format_ARGB32_Premultiplied);
        made->image.fill(Qt::transparent);
        QPainter own(&made->image);
        own.setRenderHint(QPainter::Antialiasing);
        own.setTransform(local * QTransform::fromTranslate(-box.left(), -box.top()));
        paintOutlines(own, outlines, text, brushes);
        own.end();
        made->image.setDevicePixelRatio(device.devicePixelRatio());
        picture = made.get();
    }
    painter.save();
    painter.resetTransform();
    painter.drawImage(QPointF(stand.pixel + picture->corner) / device.devicePixelRatio(), picture->image);
    painter.restore();
    if (made) {
        const auto bytes = static_cast<int>(made->image.sizeInBytes());
        pictures_.insert(key, made.release(), bytes);
    }
    return true;
}

}  // namespace crosstick::press
