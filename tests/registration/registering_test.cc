#include "core/registration/registering.h"

#include <gtest/gtest.h>

namespace crosstick::registration {
namespace {

/// A sheet of 2,000 by 1,600 pixels, 5 m each; crossing 50 05 of 25T FM stands at 100, 100.
PixelPoint pixelOf(int east, int north) {
    return {100 + east * 200.0, 100 - north * 200.0};
}

Registering started() {
    Registering work(2000, 1600);
    EXPECT_TRUE(work.add(pixelOf(0, 0), "25T FM 50 05"));
    EXPECT_TRUE(work.add(pixelOf(4, -2), "54 03"));
    return work;
}

TEST(Registering, FiguresAloneFollowTheFirstFullReference) {
    const Registering work = started();
    ASSERT_EQ(work.marks().size(), 2U);
    EXPECT_EQ(work.crs(), "EPSG:32625");
    EXPECT_DOUBLE_EQ(work.marks()[1].place.easting.value(), 654000);
    EXPECT_DOUBLE_EQ(work.marks()[1].place.northing.value(), 5103000);
    EXPECT_EQ(work.interval(), Metres(1000));
}

TEST(Registering, FiguresAloneWaitForTheCollarsSquare) {
    Registering work(2000, 1600);
    EXPECT_FALSE(work.add(pixelOf(0, 0), "50 05"));
    EXPECT_TRUE(work.marks().empty());
    ASSERT_TRUE(work.setCollar({"25T FM", "", Scale{25000}}));
    EXPECT_TRUE(work.add(pixelOf(0, 0), "50 05"));
    EXPECT_DOUBLE_EQ(work.marks()[0].place.northing.value(), 5105000);
}

TEST(Registering, ACorrectedSquareMovesAllMarks) {
    Registering work(2000, 1600);
    ASSERT_TRUE(work.setCollar({"25T FL", "", std::nullopt}));
    ASSERT_TRUE(work.add(pixelOf(0, 0), "50 05"));
    ASSERT_TRUE(work.add(pixelOf(4, -2), "54 03"));
    ASSERT_TRUE(work.setCollar({"25T FM", "", std::nullopt}));
    EXPECT_DOUBLE_EQ(work.marks()[1].place.northing.value(), 5103000);
    EXPECT_EQ(squareOf(work.marks()[1].place, work.crs()), "FM");
}

TEST(Registering, WhatTheCollarCannotMeanChangesNothing) {
    Registering work = started();
    EXPECT_FALSE(work.setCollar({"no square", "", std::nullopt}));
    EXPECT_EQ(work.marks().size(), 2U);
    EXPECT_TRUE(work.collar().square.empty());
}

// A picture that was laid before is laid anew from where it was left, to the millimetre.
TEST(Registering, MarksThatAPlanKeptAreTakenUpAgain) {
    Registering work = started();
    ASSERT_TRUE(work.add(pixelOf(1, -5), "51 00"));
    const auto kept = work.kept();
    ASSERT_EQ(kept.size(), 3U);
    EXPECT_EQ(kept[1].place, (geodesy::PlanePoint{Metres(654000), Metres(5103000)}));
    Registering anew(2000, 1600);
    ASSERT_TRUE(anew.setCollar({"", work.crs(), Scale{25000}}));
    ASSERT_TRUE(anew.takeUp(kept));
    EXPECT_EQ(anew.kept(), kept);
    EXPECT_EQ(anew.marks()[1].printed, "654000 5103000");
    ASSERT_TRUE(anew.fit().has_value());
    EXPECT_EQ(anew.fit()->model.placement(), work.fit()->model.placement());
    EXPECT_TRUE(anew.add(pixelOf(2, -3), "52 02")) << "figures alone follow them";
}

TEST(Registering, PlacesBetweenLinesAreKeptToo) {
    Registering work(2000, 1600);
    ASSERT_TRUE(work.setCollar({"", "EPSG:26705", std::nullopt}));
    ASSERT_TRUE(work.takeUp({{{205.51, 657.53}, {Metres(78832.225), Metres(7127058.93)}}}));
    EXPECT_NEAR(work.marks()[0].place.easting.value(), 78832.225, 0.0005);
    EXPECT_NEAR(work.marks()[0].place.northing.value(), 7127058.93, 0.0005);
}

TEST(Registering, ProposesACrossingInsideThePictureFarFromAllMarks) {
    const Registering work = started();
    const auto proposal = work.proposal();
    ASSERT_TRUE(proposal.has_value());
    EXPECT_GE(proposal->at.x, 40);
    EXPECT_LE(proposal->at.x, 1960);
    EXPECT_GE(proposal->at.y, 32);
    EXPECT_LE(proposal->at.y, 1568);
    for (const NamedMark& mark : work.marks()) {
        EXPECT_GT(std::hypot(mark.at.x - proposal->at.x, mark.at.y - proposal->at.y), 800);
    }
    EXPECT_EQ(printedName(proposal->place, Metres(1000)), proposal->printed);
    const auto next = work.proposal(1);
    ASSERT_TRUE(next.has_value());
    EXPECT_NE(next->printed, proposal->printed);
    EXPECT_FALSE(work.proposal(100000).has_value());
}

TEST(Registering, UnsureCrossingsAreShownAndNotUsed) {
    Registering work = started();
    ASSERT_TRUE(work.add(pixelOf(8, -6), "58 99"));
    const auto place = [](int east, int north) {
        return geodesy::PlanePoint{Metres(650000 + 1000.0 * east), Metres(5105000 + 1000.0 * north)};
    };
    work.take(
        {{pixelOf(0, 0), place(0, 0), 1}, {pixelOf(1, -1), place(1, -1), 0.9}, {pixelOf(2, -3), place(2, -3), 0.3}});
    ASSERT_EQ(work.crossings().size(), 2U);  // the first is a mark already
    EXPECT_TRUE(work.crossings()[0].isUsed);
    EXPECT_FALSE(work.crossings()[1].isUsed);
    EXPECT_EQ(work.all().size(), 4U);
    work.use(1, true);
    EXPECT_EQ(work.all().size(), 5U);
    ASSERT_TRUE(work.fit());
    EXPECT_EQ(work.fit()->residuals.size(), 5U);
}

// As figures stand along a map's edge: two of the kilometre, three of the hundred metres (common practice).
TEST(Registering, NamesCrossingsByTheFiguresOfTheMapsEdge) {
    EXPECT_EQ(printedName({Metres(654000), Metres(5098000)}, Metres(1000)), "54 98");
    EXPECT_EQ(printedName({Metres(600000), Metres(5103000)}, Metres(1000)), "00 03");
    EXPECT_EQ(printedName({Metres(654300), Metres(5098200)}, Metres(100)), "543 982");
}

}  // namespace
}  // namespace crosstick::registration
