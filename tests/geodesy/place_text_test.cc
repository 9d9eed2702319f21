#include "core/geodesy/place_text.h"

#include <gtest/gtest.h>

namespace crosstick::geodesy {
namespace {

GeoPoint place(double latitude, double longitude) {
    return {Degrees(latitude), Degrees(longitude)};
}

const GridPoint kFgdc{{18, Hemisphere::North}, {Metres(323483.168), Metres(4306479.498)}};

TEST(PlaceText, IsAsPeopleReadIt) {
    EXPECT_EQ(sexagesimalText(place(38.889467310, -77.035240216)), "38 53 22.08 N  77 02 06.86 W");
    EXPECT_EQ(degreesText(place(38.889467310, -77.035240216)), "38.8894673 N  77.0352402 W");
    EXPECT_EQ(gridText(kFgdc), "18 north 323483.168 4306479.498");
    EXPECT_EQ(gridText({{0, Hemisphere::South}, {Metres(2746000), Metres(1515000)}}), "south 2746000.000 1515000.000");
    EXPECT_EQ(mgrsText(kFgdc, Digits::Ten), "18S UJ 2348 0647");
    EXPECT_EQ(mgrsText(kFgdc, Digits::SquareOnly), "18S UJ");
}

TEST(PlaceText, CarriesSecondsThatRoundUp) {
    EXPECT_EQ(sexagesimalText(place(38.99999999999, -0.99999999999)), "39 00 00.00 N  1 00 00.00 W");
    EXPECT_EQ(sexagesimalText(place(0, 0)), "0 00 00.00 N  0 00 00.00 E");
}

// FM 21-26 ch. 6: convergence is printed to the minute, the G-M angle to half a degree and to 10 mils.
TEST(ConvergenceText, IsToTheMinute) {
    EXPECT_EQ(convergenceText(Degrees(1.432972)), "1 degree 26 minutes east");
    EXPECT_EQ(convergenceText(Degrees(-2.3648575)), "2 degrees 22 minutes west");
    EXPECT_EQ(convergenceText(Degrees(0.5)), "30 minutes east");
    EXPECT_EQ(convergenceText(Degrees(-0.001)), "0 minutes");
}

TEST(GmAngleText, IsToHalfADegreeAndTenMilsAndSaysWhatToDo) {
    EXPECT_EQ(gmAngleText(Degrees(-10.894109)), "11 degrees (190 mils) WEST; grid to magnetic: add 11");
    EXPECT_EQ(gmAngleText(Degrees(9.4)), "9.5 degrees (170 mils) EAST; grid to magnetic: subtract 9.5");
    EXPECT_EQ(gmAngleText(Degrees(-0.1)), "0 degrees (0 mils)");
}

}  // namespace
}  // namespace crosstick::geodesy
