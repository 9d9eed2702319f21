#include "core/drafting/fix.h"

#include <gtest/gtest.h>

#include "core/drafting/faults.h"
#include "core/geodesy/plane_angles.h"
#include "tests/drafting/made_lines.h"

namespace crosstick::drafting {
namespace {

geodesy::PlanePoint plain(double east, double north) {
    return {Metres(east), Metres(north)};
}

// The three check values of the trade's page on fixing a position (reckoned there, no book's own).
TEST(Fix, TwoSightsFromTheEndsOfAKilometre) {
    const auto fix = fixBy({{plain(0, 0), Degrees(45)}, {plain(1000, 0), Degrees(315)}});
    ASSERT_TRUE(fix);
    EXPECT_NEAR(fix->at.easting.value(), 500, 1e-9);
    EXPECT_NEAR(fix->at.northing.value(), 500, 1e-9);
    EXPECT_NEAR(fix->cut.value(), 90, 1e-9);
    EXPECT_TRUE(fix->triangle.empty());
}

TEST(Fix, TwoSightsAtSixtyAndThreeHundredThirty) {
    const auto fix = fixBy({{plain(10000, 20000), Degrees(60)}, {plain(12000, 20000), Degrees(330)}});
    ASSERT_TRUE(fix);
    EXPECT_NEAR(fix->at.easting.value(), 11500.00, 0.005);
    EXPECT_NEAR(fix->at.northing.value(), 20866.03, 0.005);
    EXPECT_NEAR(geodesy::planeDistance(plain(10000, 20000), fix->at).value(), 1732.05, 0.005);
}

TEST(Fix, APolarPlot) {
    const geodesy::PlanePoint place = polarPlace(plain(0, 0), Degrees(227), Metres(2500));
    EXPECT_NEAR(place.easting.value(), -1828.384, 0.0005);
    EXPECT_NEAR(place.northing.value(), -1704.996, 0.0005);
}

TEST(Fix, SightsThroughOnePlaceMeetThereWhateverTheirOrder) {
    MadeLines made(41);
    int fixed = 0;
    for (int round = 0; round < 200; ++round) {
        const geodesy::PlanePoint place = made.place();
        std::vector<Sight> sights;
        for (int n = 0; n < 3; ++n) {
            const geodesy::PlanePoint from = made.place();
            sights.push_back({from, geodesy::planeAzimuth(from, place)});
        }
        const auto fix = fixBy(sights);
        if (!fix) {  // two of them nearly in one line with the place
            EXPECT_EQ(fix.error().fault, kSightsAlong);
            continue;
        }
        ++fixed;
        EXPECT_LT(geodesy::planeDistance(fix->at, place), Metres(1e-3));
        EXPECT_LT(fix->longestSide, Metres(1e-3));
        std::swap(sights[0], sights[2]);
        EXPECT_LT(geodesy::planeDistance(fixBy(sights)->at, fix->at), Metres(1e-3));
    }
    EXPECT_GT(fixed, 150);
}

// A slow oracle: places all about, none of which lies nearer to the three lines.
TEST(Fix, NoOtherPlaceLiesNearerToThreeLines) {
    const std::vector<Sight> sights{
        {plain(0, 0), Degrees(44)}, {plain(1000, 0), Degrees(316)}, {plain(500, 1500), Degrees(182)}};
    const auto fix = fixBy(sights);
    ASSERT_TRUE(fix);
    const auto squares = [&](geodesy::PlanePoint place) {
        double sum = 0;
        for (const Sight& sight : sights) {
            const double angle = radians(sight.gridAzimuth).value();
            const double off = (place.easting - sight.from.easting).value() * std::cos(angle) -
                               (place.northing - sight.from.northing).value() * std::sin(angle);
            sum += off * off;
        }
        return sum;
    };
    for (double east = -60; east <= 60; east += 1) {
        for (double north = -60; north <= 60; north += 1) {
            EXPECT_GE(squares({fix->at.easting + Metres(east), fix->at.northing + Metres(north)}) + 1e-9,
                      squares(fix->at));
        }
    }
    ASSERT_EQ(fix->triangle.size(), 3U);
    EXPECT_GT(fix->longestSide, Metres(10));
    EXPECT_TRUE(isInside(fix->at, fix->triangle));
}

TEST(Fix, SightsThatRunAlongOrPartAreRefused) {
    EXPECT_EQ(fixBy({{plain(0, 0), Degrees(45)}}).error().fault, kTooFewSights);
    EXPECT_EQ(fixBy({{plain(0, 0), Degrees(45)}, {plain(100, 0), Degrees(225.5)}}).error().fault, kSightsAlong);
    const auto parting = fixBy({{plain(0, 0), Degrees(315)}, {plain(1000, 0), Degrees(45)}});
    ASSERT_FALSE(parting);
    EXPECT_EQ(parting.error().fault, kSightsPart);
}

}  // namespace
}  // namespace crosstick::drafting
