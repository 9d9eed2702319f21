// Lists of marks and points.
#include "core/registration/mark_rows.h"

#include <string>

#include <gtest/gtest.h>

#include "core/registration/faults.h"

namespace crosstick::registration {
namespace {

PrintedGrid utm() {
    return *PrintedGrid::of("EPSG:32618", "18S UJ");
}

TEST(MarkRows, AreReadWithAndWithoutNames) {
    const Mark wanted{{12.5, 900.25}, {Metres(345000), Metres(4362000)}};
    for (const char* text : {"x,y,easting,northing\n12.5,900.25,345000,4362000\n", "12.5,900.25,345000,4362000",
                             "\xEF\xBB\xBFx, y, easting, northing\r\n12.5, 900.25, 345000, 4362000\r\n\r\n",
                             "# the four corners\nid,northing,easting,y,x\na,4362000,345000,900.25,12.5\n",
                             "x,y,grid\n12.5,900.25,45 62\n", "12.5,900.25,18S UJ 45 62",
                             "x,y,grid,quality\n12.5,900.25,\"45 62\",good\n", "x,y,grid\n12.5,900.25,\"45,62\""}) {
        auto grid = utm();
        const auto rows = readMarks(text, grid);
        ASSERT_TRUE(rows.has_value()) << text;
        ASSERT_EQ(rows->good.size(), 1U) << text << (rows->bad.empty() ? "" : rows->bad[0].fault.name);
        EXPECT_EQ(rows->good[0], wanted) << text;
    }
}

TEST(MarkRows, DegreesMayHaveTheirOwnComma) {
    auto grid = *PrintedGrid::of("EPSG:26705");
    for (const char* text : {"x,y,grid\n1,2,64.25,-155.5", "1,2,64.25,-155.5", "x,y,grid\n1,2,\"64.25, -155.5\""}) {
        const auto rows = readMarks(text, grid);
        ASSERT_TRUE(rows.has_value());
        ASSERT_EQ(rows->good.size(), 1U) << text;
        EXPECT_NEAR(rows->good[0].place.easting.value(), 378832.22, 0.01);
    }
}

TEST(MarkRows, EachBadRowIsNamedByItsLine) {
    auto grid = utm();
    const auto rows =
        readMarks("x,y,grid\n1,2,45 62\nlong,2,45 62\n1,2\n\n1,1e9,45 62\n1,2,nowhere\n3,4,46 62\n", grid);
    ASSERT_TRUE(rows.has_value());
    EXPECT_EQ(rows->good.size(), 2U);
    const std::vector<std::pair<std::string_view, std::int64_t>> wanted{
        {kNoNumber.name, 3}, {kShortRow.name, 4}, {kOffPicture.name, 6}, {"geodesy/not-a-point", 7}};
    ASSERT_EQ(rows->bad.size(), wanted.size());
    for (std::size_t n = 0; n < wanted.size(); ++n) {
        EXPECT_EQ(rows->bad[n].fault.name, wanted[n].first);
        EXPECT_EQ(std::get<std::int64_t>(rows->bad[n].arguments.back().value), wanted[n].second);
    }
}

TEST(MarkRows, SoManyBadRowsAreCounted) {
    auto grid = utm();
    std::string text = "x,y,grid\n";
    for (int n = 0; n < 500; ++n) {
        text += "a,b,c\n";
    }
    const auto rows = readMarks(text, grid);
    ASSERT_TRUE(rows.has_value());
    ASSERT_EQ(rows->bad.size(), kMostBad + 1);
    EXPECT_EQ(rows->bad.back().fault, kMoreBad);
    EXPECT_EQ(std::get<std::int64_t>(rows->bad.back().arguments.front().value), 480);
}

TEST(MarkRows, RefusesWhatIsNoList) {
    auto grid = utm();
    EXPECT_EQ(readMarks("", grid).error().fault, kNoRows);
    EXPECT_EQ(readMarks("x,y,grid\n", grid).error().fault, kNoRows);
    EXPECT_EQ(readMarks("column,row,place\n1,2,45 62", grid).error().fault, kNoColumns);
    EXPECT_EQ(readMarks(std::string(kLongestList + 1, '1'), grid).error().fault, kTooLong);
    std::string many;
    for (std::size_t n = 0; n <= kMostRows; ++n) {
        many += "1,2,45 62\n";
    }
    EXPECT_EQ(readMarks(many, grid).error().fault, kTooLong);
    auto bare = *PrintedGrid::of("");
    EXPECT_EQ(readMarks("1,2,345000,4362000", bare).error().fault, kNoGrid);
}

TEST(PointRows, AreTwoNumbers) {
    const auto rows = readPoints("x,y\n1,2\n3.5,-4\n");
    ASSERT_TRUE(rows.has_value());
    EXPECT_EQ(rows->good, (std::vector<PixelPoint>{{1, 2}, {3.5, -4}}));
    EXPECT_EQ(readPoints("1,2").value().good.size(), 1U);
}

}  // namespace
}  // namespace crosstick::registration
