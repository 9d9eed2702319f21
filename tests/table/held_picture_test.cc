// A picture held through a zoom lies where it belongs and says what it does not reach.
#include "ui/table/held_picture.h"

#include <cmath>

#include <gtest/gtest.h>

#include <QPainter>

namespace crosstick::table {
namespace {

constexpr Area kArea{10, 20, 200, 160};

View viewAt(double east, double north, double zoom, double up = 0) {
    return {kArea, {Metres(east), Metres(north)}, Zoom(zoom), Degrees(up)};
}

/// A cross of one colour over a ground of another, its middle on a place.
void paintCross(QPainter& painter, const View& view, geodesy::PlanePoint at) {
    painter.fillRect(QRectF(kArea.left, kArea.top, kArea.width, kArea.height), Qt::white);
    const Spot spot = view.spot(at);
    painter.fillRect(QRectF(spot.x - 6, spot.y - 6, 12, 12), Qt::red);
}

QImage shown(const HeldPicture& held, const View& view, std::vector<QRectF>* open = nullptr) {
    QImage table(240, 200, QImage::Format_RGB32);
    table.fill(Qt::blue);
    QPainter painter(&table);
    const auto parts = held.lay(painter, view);
    painter.end();
    if (open != nullptr) {
        *open = parts;
    }
    return table;
}

TEST(HeldPicture, LaysEveryPlaceWhereTheViewHasIt) {
    const geodesy::PlanePoint at{Metres(1010), Metres(990)};
    const View first = viewAt(1000, 1000, 1);
    HeldPicture held;
    held.take(first, 1, [&](QPainter& painter) { paintCross(painter, first, at); });
    for (const double zoom : {0.7, 0.9, 1.0, 1.2, 1.5}) {
        for (const double shift : {-20.0, 0.0, 13.0}) {
            const View view = viewAt(1000 + shift, 1000, zoom);
            ASSERT_TRUE(held.serves(view, 1));
            const Spot spot = view.spot(at);
            const QImage table = shown(held, view);
            EXPECT_EQ(table.pixelColor(static_cast<int>(spot.x), static_cast<int>(spot.y)), QColor(Qt::red))
                << zoom << ' ' << shift;
        }
    }
}

TEST(HeldPicture, SaysExactlyWhatItDoesNotReach) {
    const View first = viewAt(1000, 1000, 1);
    HeldPicture held;
    held.take(first, 1, [&](QPainter& painter) { paintCross(painter, first, first.centre()); });
    for (const View& view : {viewAt(1000, 1000, 0.7), viewAt(1030, 980, 0.8), viewAt(980, 1000, 1.3)}) {
        std::vector<QRectF> open;
        const QImage table = shown(held, view, &open);
        for (int y = 20; y < 180; ++y) {
            for (int x = 10; x < 210; ++x) {
                const bool isOpen = std::any_of(open.begin(), open.end(), [&](const QRectF& part) {
                    return part.contains(QPointF(x + 0.5, y + 0.5));
                });
                ASSERT_EQ(table.pixelColor(x, y) == QColor(Qt::blue), isOpen) << x << ' ' << y;
            }
        }
        EXPECT_EQ(table.pixelColor(5, 100), QColor(Qt::blue)) << "outside the area nothing is laid";
    }
}

TEST(HeldPicture, ServesNoViewThatIsTurnedOrFarFromItsOwn) {
    HeldPicture held;
    EXPECT_FALSE(held.serves(viewAt(0, 0, 1), 1));
    held.take(viewAt(0, 0, 1), 1, [](QPainter&) {});
    EXPECT_FALSE(held.serves(viewAt(0, 0, 1, 10), 1));
    EXPECT_FALSE(held.serves(viewAt(0, 0, 2), 1));
    EXPECT_FALSE(held.serves(viewAt(0, 0, 0.5), 1));
    EXPECT_FALSE(held.serves(viewAt(0, 0, 1), 2));
    held.forget();
    EXPECT_FALSE(held.serves(viewAt(0, 0, 1), 1));
}

}  // namespace
}  // namespace crosstick::table
