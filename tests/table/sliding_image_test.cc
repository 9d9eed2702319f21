// A picture that slides shows what a fresh one would: law over random slides, zooms and changes.
#include "ui/table/sliding_image.h"

#include <random>

#include <gtest/gtest.h>

#include <QPainter>

namespace crosstick::table {
namespace {

constexpr Area kArea{18, 20, 64, 48};

View viewAt(double east, double north, double zoom) {
    return {kArea, {Metres(east), Metres(north)}, Zoom(zoom)};
}

/// Ground whose every metre has its own colour: squares of one metre, and a stamp that a test may change.
struct Ground {
    int stamp = 0;
    int painted = 0;  ///< pixels

    void paint(QPainter& painter, const View& view, const QRectF& part) {
        painter.setRenderHint(QPainter::Antialiasing, false);
        painted += static_cast<int>(part.width() * part.height());
        for (int y = static_cast<int>(part.top()); y < static_cast<int>(part.bottom()); ++y) {
            for (int x = static_cast<int>(part.left()); x < static_cast<int>(part.right()); ++x) {
                const geodesy::PlanePoint p = view.place({x + 0.5, y + 0.5});
                const auto east = static_cast<int>(std::floor(p.easting.value()));
                const auto north = static_cast<int>(std::floor(p.northing.value()));
                painter.fillRect(x, y, 1, 1, QColor((east * 37) & 255, (north * 91) & 255, (stamp * 53) & 255));
            }
        }
    }
};

QImage shown(const SlidingImage& sliding) {
    QImage table(100, 80, QImage::Format_RGB32);
    table.fill(Qt::black);
    QPainter painter(&table);
    sliding.lay(painter);
    painter.end();
    return table;
}

void renew(SlidingImage& sliding, Ground& ground, const View& view, const std::vector<QRectF>& touched = {}) {
    sliding.renew(view, 1, touched, Scaling::Smooth,
                  [&](QPainter& painter, const QRectF& part, Scaling) { ground.paint(painter, view, part); });
}

QImage fresh(Ground ground, const View& view) {
    SlidingImage sliding;
    renew(sliding, ground, view);
    return shown(sliding);
}

TEST(SlidingImage, ShowsAfterAnySlidesWhatAFreshOneShows) {
    const unsigned seed = std::random_device{}();
    SCOPED_TRACE("seed " + std::to_string(seed));
    std::mt19937 random(seed);
    const auto pick = [&](int low, int high) { return std::uniform_int_distribution<int>(low, high)(random); };
    SlidingImage sliding;
    Ground ground;
    View view = viewAt(1000, 2000, 1);
    for (int round = 0; round < 200; ++round) {
        if (pick(0, 15) == 0) {
            view = viewAt(pick(0, 5000), pick(0, 5000), pick(1, 3));
        } else {
            view = view.dragged({50, 40}, {50.0 + pick(-70, 70), 40.0 + pick(-50, 50)});
        }
        renew(sliding, ground, view);
        ASSERT_EQ(shown(sliding), fresh(ground, view)) << "round " << round;
    }
}

TEST(SlidingImage, PaintsOnlyTheStripsThatASlideOpens) {
    SlidingImage sliding;
    Ground ground;
    const View view = viewAt(1000, 2000, 1);
    renew(sliding, ground, view);
    EXPECT_EQ(ground.painted, 64 * 48);
    ground.painted = 0;
    renew(sliding, ground, view.dragged({50, 40}, {53, 38}));
    EXPECT_EQ(ground.painted, 3 * 48 + 2 * 64);
    ground.painted = 0;
    renew(sliding, ground, view.dragged({50, 40}, {53, 38}));
    EXPECT_EQ(ground.painted, 0) << "it stands still";
}

TEST(SlidingImage, PaintsAgainWhatWasTouchedWhereverItLiesInThePicture) {
    SlidingImage sliding;
    Ground ground;
    View view = viewAt(1000, 2000, 1);
    renew(sliding, ground, view);
    view = view.dragged({50, 40}, {70, 25});
    renew(sliding, ground, view);
    ground.stamp = 1;
    renew(sliding, ground, view, {QRectF(kArea.left, kArea.top, kArea.width, kArea.height)});
    EXPECT_EQ(shown(sliding), fresh(ground, view));
}

TEST(SlidingImage, LaysPartsSideBySideAsTheWhole) {
    SlidingImage sliding;
    Ground ground;
    View view = viewAt(1000, 2000, 1);
    renew(sliding, ground, view);
    view = view.dragged({50, 40}, {31, 57});
    renew(sliding, ground, view);
    QImage table(100, 80, QImage::Format_RGB32);
    table.fill(Qt::black);
    QPainter painter(&table);
    for (double x = kArea.left; x < kArea.right(); x += 16) {
        for (double y = kArea.top; y < kArea.bottom(); y += 16) {
            sliding.lay(painter, {x, y, 16, 16});
        }
    }
    painter.end();
    EXPECT_EQ(table, shown(sliding));
}

}  // namespace
}  // namespace crosstick::table
