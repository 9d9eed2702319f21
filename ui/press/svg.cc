#include "ui/press/svg.h"

#include <cmath>

#include <QBuffer>
#include <QPainter>
#include <QSvgGenerator>

namespace crosstick::press {
namespace {

// The writer gives its size in whole pixels; a tenth of a millimetre each keeps every room's size exact enough.
constexpr double kPixels = 10;  // a millimetre
constexpr double kInch = 25.4;

}  // namespace

std::string svgOf(const drawing::Drawing& drawing, const drawing::Box& room, const std::string& title,
                  const Faces& faces, const Inks& inks) {
    QBuffer bytes;
    QSvgGenerator picture;
    picture.setOutputDevice(&bytes);
    picture.setTitle(QString::fromStdString(title));
    picture.setResolution(static_cast<int>(std::lround(kPixels * kInch)));
    picture.setSize(QSize(static_cast<int>(std::ceil(room.width() * kPixels)),
                          static_cast<int>(std::ceil(room.height() * kPixels))));
    picture.setViewBox(QRectF(0, 0, room.width() * kPixels, room.height() * kPixels));
    QPainter painter(&picture);
    painter.scale(kPixels, kPixels);
    painter.translate(-room.left, -room.top);
    paint(painter, drawing, Brushes{faces, inks, Letters::AsOutlines, HaloRule::LeftOut});
    painter.end();
    return bytes.data().toStdString();
}

}  // namespace crosstick::press
