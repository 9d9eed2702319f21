#include "core/film/grid_names.h"

#include <gtest/gtest.h>

#include "tests/film/printed_plan.h"

namespace crosstick::film {
namespace {

using movement::at;

// Scenario 4: 653000 5097000 is FL53009700, 658000 5104000 FM58000400, in 25T.
TEST(GridNames, CrossingsAreMgrsOnAUtmSheet) {
    const auto names = GridNames::of("EPSG:32625");
    ASSERT_TRUE(names.has_value());
    EXPECT_EQ(names->crossing(at(653000, 5097000)), "25TFL53009700");
    EXPECT_EQ(names->crossing(at(658000, 5104000)), "25TFM58000400");
    EXPECT_EQ(names->square(at(654000, 5097000), Metres(1000)), "FL 54 97");
    EXPECT_EQ(names->square(at(654300, 5097200), Metres(100)), "FL 543 972");
}

TEST(GridNames, SquaresOfTheWindowAreAllNamed) {
    const auto names = GridNames::of("EPSG:32625");
    ASSERT_TRUE(names.has_value());
    EXPECT_EQ(names->area({at(652300, 5096200), at(659000, 5104500), {}}), "25T FL FM");
}

TEST(GridNames, AnotherGridHasItsOwnFigures) {
    const auto names = GridNames::of("EPSG:21781");
    ASSERT_TRUE(names.has_value());
    EXPECT_EQ(names->crossing(at(600000, 200000)), "600000 200000");
    EXPECT_EQ(names->square(at(600000, 200000), Metres(1000)), "600 200");
    EXPECT_EQ(names->area({at(600000, 200000), at(605000, 205000), {}}), "CH1903 / LV03");
    EXPECT_EQ(GridNames::of("EPSG:23032")->area({at(500000, 5300000), at(505000, 5305000), {}}), "UTM zone 32 north");
}

TEST(GridNames, PrincipalFiguresStandApart) {
    EXPECT_EQ(lineFigures(Metres(408000)), "4 08");
    EXPECT_EQ(lineFigures(Metres(5102000)), "51 02");
    EXPECT_EQ(lineFigures(Metres(98000)), "98");
    EXPECT_EQ(lineFigures(Metres(5000)), "05");
    EXPECT_EQ(lineFigures(Metres(653200)), "6 53.2");
}

}  // namespace
}  // namespace crosstick::film
