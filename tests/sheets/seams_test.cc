#include "core/sheets/seams.h"

#include <gtest/gtest.h>

#include "core/geodesy/crs.h"

namespace crosstick::sheets {
namespace {

using geodesy::PlanePoint;

/// A sheet of 4,000 by 3,000 pixels of 2.5 m.
plan::Sheet sheetAt(std::uint8_t id, double east, double north, double scale = 25000) {
    plan::Sheet sheet;
    sheet.id = plan::SheetId{Uuid{{id}}};
    sheet.crs = "EPSG:32625";
    sheet.columns = 4000;
    sheet.rows = 3000;
    sheet.placement = {{Metres(east), Metres(north)}, 2.5, 0, 0, -2.5};
    sheet.scale = Scale{scale};
    return sheet;
}

plan::Plan planOf(std::vector<plan::Sheet> sheets) {
    plan::PlanBuilder builder{plan::Plan{}};
    plan::Heading heading;
    heading.plane = {25, geodesy::Hemisphere::North};
    builder.heading(heading);
    for (plan::Sheet& sheet : sheets) {
        builder.put(std::move(sheet));
    }
    return std::move(builder).build();
}

TEST(Seams, NeighboursThatMeetHaveASeamOfNothing) {
    const auto seams = seamsOf(planOf({sheetAt(1, 640000, 5100000), sheetAt(2, 650000, 5100000)}));
    ASSERT_TRUE(seams.has_value());
    ASSERT_EQ(seams->size(), 1U);
    EXPECT_NEAR(seams->front().offset.value(), 0, 1e-6);
    EXPECT_TRUE(seams->front().meets());
}

TEST(Seams, AMissingStripCountsAboveNoughtAndAnOverlapBelow) {
    const auto apart = seamsOf(planOf({sheetAt(1, 640000, 5100000), sheetAt(2, 650014, 5100000)}));
    ASSERT_EQ(apart->size(), 1U);
    EXPECT_NEAR(apart->front().offset.value(), 14, 1e-6);
    EXPECT_FALSE(apart->front().meets());
    const auto over = seamsOf(planOf({sheetAt(1, 640000, 5100000), sheetAt(2, 640000, 5092516)}));
    ASSERT_EQ(over->size(), 1U);
    EXPECT_NEAR(over->front().offset.value(), -16, 1e-6);
    EXPECT_NEAR(std::abs((over->front().to.easting - over->front().from.easting).value()), 10000, 1);
}

TEST(Seams, UpToAThirdOfAMillimetreSheetsMeet) {
    // 0.3 mm at 1:25,000 are 7.5 m; at 1:50,000, the smaller of the two scales, 15 m.
    EXPECT_TRUE(seamsOf(planOf({sheetAt(1, 640000, 5100000), sheetAt(2, 650007, 5100000)}))->front().meets());
    EXPECT_FALSE(seamsOf(planOf({sheetAt(1, 640000, 5100000), sheetAt(2, 650008, 5100000)}))->front().meets());
    EXPECT_TRUE(seamsOf(planOf({sheetAt(1, 640000, 5100000), sheetAt(2, 650014, 5100000, 50000)}))->front().meets());
}

TEST(Seams, TheCollarDoesNotCountWhereANeatlineIsSet) {
    plan::Sheet one = sheetAt(1, 640000, 5100000);
    plan::Sheet other = sheetAt(2, 649000, 5100000);
    one.neatline = {{200, 200}, {3800, 200}, {3800, 2800}, {200, 2800}};
    other.neatline = {{200, 200}, {3800, 200}, {3800, 2800}, {200, 2800}};
    const auto seams = seamsOf(planOf({one, other}));
    ASSERT_EQ(seams->size(), 1U);
    EXPECT_NEAR(seams->front().offset.value(), 0, 1e-6);
}

TEST(Seams, SheetsFarApartOrOneInTheOtherHaveNone) {
    EXPECT_TRUE(seamsOf(planOf({sheetAt(1, 640000, 5100000), sheetAt(2, 650200, 5100000)}))->empty());
    EXPECT_TRUE(seamsOf(planOf({sheetAt(1, 640000, 5100000), sheetAt(2, 640500, 5100300, 50000)}))->empty());
    EXPECT_TRUE(seamsOf(planOf({sheetAt(1, 640000, 5100000)}))->empty());
}

TEST(Seams, ASheetOfTheNextZoneIsBroughtOver) {
    // The neighbour's west edge is the first sheet's east edge, written in zone 26.
    const plan::Sheet one = sheetAt(1, 640000, 5100000);
    plan::Sheet other = sheetAt(2, 0, 0);
    other.crs = "EPSG:32626";
    const auto link = geodesy::PlaneLink::between(one.crs, other.crs);
    ASSERT_TRUE(link.has_value());
    const auto corner = [&](double east, double north) { return *link->forward({Metres(east), Metres(north)}); };
    const PlanePoint upper = corner(650000, 5100000);
    const PlanePoint lower = corner(650000, 5092500);
    const PlanePoint right = corner(660000, 5100000);
    other.placement = {upper, (right.easting - upper.easting).value() / 4000,
                       (lower.easting - upper.easting).value() / 3000, (right.northing - upper.northing).value() / 4000,
                       (lower.northing - upper.northing).value() / 3000};
    const auto seams = seamsOf(planOf({one, other}));
    ASSERT_TRUE(seams.has_value());
    ASSERT_EQ(seams->size(), 1U);
    EXPECT_LT(std::abs(seams->front().offset.value()), 3);  // the edge that is straight there is bent here
    EXPECT_TRUE(seams->front().meets());
}

}  // namespace
}  // namespace crosstick::sheets
