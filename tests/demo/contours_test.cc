#include "sample-data/sheet/contours.h"

#include <cmath>

#include <gtest/gtest.h>

namespace crosstick::demo {
namespace {

/// A round hill, 100 m high, falling 1 m in 10.
Field<float> cone() {
    Field<float> heights(Lattice{{0, 2000}, 10, 201, 201});
    for (int row = 0; row < 201; ++row) {
        for (int column = 0; column < 201; ++column) {
            heights(column, row) = static_cast<float>(100 - 0.1 * std::hypot(10.0 * column - 1000, 10.0 * row - 1000));
        }
    }
    return heights;
}

TEST(Contours, OfARoundHillAreCircles) {
    const auto contours = contoursOf(cone(), 10, 10, 90);
    ASSERT_EQ(contours.size(), 9U);
    for (const Contour& contour : contours) {
        EXPECT_TRUE(contour.closed);
        for (const Spot& spot : contour.line) {
            EXPECT_NEAR(length(spot - Spot{1000, 1000}), (100 - contour.height) * 10, 2.5);
        }
    }
}

TEST(Contours, KeepTheHigherGroundOnTheirRight) {
    for (const Contour& contour : contoursOf(cone(), 10, 10, 90)) {
        double twiceArea = 0;
        for (std::size_t n = 0; n < contour.line.size(); ++n) {
            const Spot a = contour.line[n] - Spot{1000, 1000};
            const Spot b = contour.line[(n + 1) % contour.line.size()] - Spot{1000, 1000};
            twiceArea += a.east * b.north - b.east * a.north;
        }
        EXPECT_LT(twiceArea, 0) << contour.height;  // clockwise
    }
}

TEST(Contours, OfFlatGroundAreNone) {
    const Field<float> flat(Lattice{{0, 0}, 10, 30, 30}, 42.0F);
    EXPECT_TRUE(contoursOf(flat, 10, 10, 90).empty());
}

}  // namespace
}  // namespace crosstick::demo
