#include "ui/table/view.h"

#include <cmath>
#include <random>

#include <gtest/gtest.h>

#include "ui/table/corner_block.h"
#include "ui/table/rim_figures.h"
#include "ui/table/rim_painter.h"

namespace crosstick::table {
namespace {

geodesy::PlanePoint at(double easting, double northing) {
    return {Metres(easting), Metres(northing)};
}

constexpr Area kTable{18, 18, 1000, 500};

TEST(View, ScaleSeenIsThatOfAScreenOf96DotsToTheInch) {
    // By hand: 0.3 px a metre, 96/25.4 = 3.7795 px a mm, so 1 mm is 12.598 m.
    const View view(kTable, at(650000, 5100000), Zoom(0.3));
    EXPECT_NEAR(view.scaleSeen().denominator, 12598.4, 0.1);
    EXPECT_NEAR(zoomFor(Scale{12598.425197}).value(), 0.3, 1e-9);
}

TEST(View, FittingShowsTheWholeBoxWithItsMargin) {
    const GridBox wide{at(650000, 5100000), at(660000, 5101000)};
    const View view = View::fitting(wide, kTable, 50, Zoom(10));
    EXPECT_NEAR(view.zoom().value(), 0.09, 1e-12);  // 900 px for 10 km
    EXPECT_NEAR(view.spot(wide.southWest).x, 18 + 50, 1e-6);
    EXPECT_NEAR(view.spot(wide.northEast).x, 1018 - 50, 1e-6);
    const GridBox high{at(650000, 5100000), at(651000, 5110000)};
    EXPECT_NEAR(View::fitting(high, kTable, 50, Zoom(10)).zoom().value(), 0.04, 1e-12);
    const GridBox point{at(650000, 5100000), at(650000, 5100000)};
    EXPECT_EQ(View::fitting(point, kTable, 50, Zoom(1.5)).zoom(), Zoom(1.5));
}

TEST(View, LawThereAndBackIsTheSamePlace) {
    const unsigned seed = 20270313;
    SCOPED_TRACE(seed);
    std::mt19937 chance(seed);
    std::uniform_real_distribution<double> metres(-20000, 20000);
    std::uniform_real_distribution<double> power(-3, 1);
    std::uniform_real_distribution<double> turn(-720, 720);
    for (int n = 0; n < 1000; ++n) {
        const View view(kTable, at(650000, 5100000), Zoom(std::pow(10, power(chance))),
                        Degrees(n % 3 == 0 ? 0 : turn(chance)));
        const auto p = at(650000 + metres(chance), 5100000 + metres(chance));
        const auto back = view.place(view.spot(p));
        EXPECT_NEAR(back.easting.value(), p.easting.value(), 1e-6);
        EXPECT_NEAR(back.northing.value(), p.northing.value(), 1e-6);
    }
}

TEST(View, NorthIsUpAndTheMiddleIsTheCentre) {
    const View view(kTable, at(650000, 5100000), Zoom(0.1));
    EXPECT_EQ(view.spot(at(650000, 5100000)), kTable.middle());
    EXPECT_LT(view.spot(at(650000, 5100100)).y, kTable.middle().y);
    EXPECT_GT(view.spot(at(650100, 5100000)).x, kTable.middle().x);
}

TEST(View, AnAzimuthThatIsUpLiesUpward) {
    const View view(kTable, at(650000, 5100000), Zoom(0.1), Degrees(90));
    EXPECT_EQ(view.spot(at(650100, 5100000)), (Spot{kTable.middle().x, kTable.middle().y - 10}));
    EXPECT_EQ(view.spot(at(650000, 5100100)), (Spot{kTable.middle().x - 10, kTable.middle().y})) << "north is left";
    EXPECT_EQ(View(kTable, at(0, 0), Zoom(1), Degrees(-30)).up(), Degrees(330));
}

TEST(View, LawWhatIsUnderTheHandStaysThereWhateverIsDone) {
    const unsigned seed = std::random_device{}();
    SCOPED_TRACE(seed);
    std::mt19937 chance(seed);
    std::uniform_real_distribution<double> some(0, 1);
    for (int n = 0; n < 500; ++n) {
        const View view(kTable, at(650000, 5100000), Zoom(0.05 + some(chance)), Degrees(360 * some(chance)));
        const Spot hand{18 + 1000 * some(chance), 18 + 500 * some(chance)};
        const Spot to{18 + 1000 * some(chance), 18 + 500 * some(chance)};
        const auto under = view.place(hand);
        const auto expectAt = [&](const View& next, Spot spot) {
            EXPECT_NEAR(next.spot(under).x, spot.x, 1e-6);
            EXPECT_NEAR(next.spot(under).y, spot.y, 1e-6);
        };
        expectAt(view.turnedAt(hand, Degrees(360 * some(chance))), hand);
        expectAt(view.zoomedAt(hand, 0.5 + some(chance), Zoom(0.001), Zoom(10)), hand);
        expectAt(view.dragged(hand, to), to);
    }
}

TEST(View, FittingATurnedViewHoldsEveryCorner) {
    const GridBox box{at(650000, 5100000), at(660000, 5103000)};
    for (int degrees = 0; degrees < 360; degrees += 25) {
        const View view = View::fitting(box, kTable, 28, Zoom(10), Degrees(degrees));
        for (const auto corner : {box.southWest, box.northEast, at(650000, 5103000), at(660000, 5100000)}) {
            const Spot s = view.spot(corner);
            EXPECT_TRUE(s.x > kTable.left + 27.9 && s.x < kTable.right() - 27.9) << degrees;
            EXPECT_TRUE(s.y > kTable.top + 27.9 && s.y < kTable.bottom() - 27.9) << degrees;
        }
    }
}

TEST(CornerBlock, SaysWhichWayIsUp) {
    EXPECT_EQ(upText(Degrees(0)), "north up");
    EXPECT_EQ(upText(Degrees(42.4)), "042° grid up");
    EXPECT_EQ(upText(Degrees(359.7)), "000° grid up");
}

TEST(RimFigures, StandWhereTheirLinesMeetTheRimOfATurnedView) {
    const unsigned seed = std::random_device{}();
    SCOPED_TRACE(seed);
    std::mt19937 chance(seed);
    std::uniform_real_distribution<double> turn(0, 360);
    for (int n = 0; n < 100; ++n) {
        const View view(kTable, at(650300, 5100700), Zoom(0.1), Degrees(turn(chance)));
        const RimFigures figures = rimFigures(view, Metres(1000), 36);
        const bool eastings = figures.above == GridLines::Eastings;
        ASSERT_FALSE(figures.upper.empty());
        for (const RimFigure& figure : figures.upper) {
            const auto place = view.place({figure.at, kTable.top});
            EXPECT_NEAR((eastings ? place.easting : place.northing).value(), figure.line.value(), 1e-6);
        }
        for (const RimFigure& figure : figures.left) {
            const auto place = view.place({kTable.left, figure.at});
            EXPECT_NEAR((eastings ? place.northing : place.easting).value(), figure.line.value(), 1e-6);
        }
    }
}

TEST(RimFigures, PrincipalFiguresAreThoseThatAMapReaderSays) {
    EXPECT_EQ(principalFigures(Metres(654000), Metres(1000)), "54");
    EXPECT_EQ(principalFigures(Metres(5098000), Metres(1000)), "98");
    EXPECT_EQ(principalFigures(Metres(5100000), Metres(1000)), "00");
    EXPECT_EQ(principalFigures(Metres(703000), Metres(1000)), "03");
    EXPECT_EQ(principalFigures(Metres(654200), Metres(100)), "542");
    EXPECT_EQ(principalFigures(Metres(650000), Metres(10000)), "5");
    EXPECT_EQ(principalFigures(Metres(-1000), Metres(1000)), "99");  // a national grid west of its origin
}

TEST(RimFigures, EveryLineInSightHasOneWhereItMeetsTheRim) {
    const View view(kTable, at(650000, 5100000), Zoom(0.1));  // 10 km by 5 km
    const RimFigures figures = rimFigures(view, Metres(1000), 36);
    EXPECT_EQ(figures.interval, Metres(1000));
    ASSERT_EQ(figures.upper.size(), 11U);
    EXPECT_EQ(figures.upper.front().figure, "45");
    EXPECT_NEAR(figures.upper.front().at, 18, 1e-6);
    ASSERT_EQ(figures.left.size(), 5U);
    EXPECT_EQ(figures.left[2].figure, "00");
    EXPECT_NEAR(figures.left[2].at, kTable.middle().y, 1e-6);
}

TEST(RimFigures, CrowdedLinesGiveUpTheirFiguresEvenly) {
    const View view(kTable, at(650000, 5100000), Zoom(0.01));  // a kilometre is 10 px
    const RimFigures figures = rimFigures(view, Metres(1000), 36);
    EXPECT_EQ(figures.interval, Metres(5000));
    for (const RimFigure& figure : figures.upper) {
        EXPECT_EQ(std::fmod(figure.line.value(), 5000), 0);
    }
}

TEST(CornerBlock, ScalesAreWrittenAsOnSheets) {
    EXPECT_EQ(scaleText(Scale{25000}), "1:25,000");
    EXPECT_EQ(scaleText(Scale{500}), "1:500");
    EXPECT_EQ(scaleText(Scale{1000000}), "1:1,000,000");
    EXPECT_EQ(seenScaleText(Scale{12387.6}), "1:12,400");
    EXPECT_EQ(seenScaleText(Scale{99960}), "1:100,000");
}

TEST(Rim, TableKeepsTheShareThatItsDesignStates) {
    // Look, section 2: 1366 by 768 with a head of 32 and rims of 18: 92.3 % of the window is table.
    const Area table = insideRim(1366, 768 - 32);
    EXPECT_NEAR(table.width * table.height / (1366.0 * 768), 0.923, 0.0005);
}

}  // namespace
}  // namespace crosstick::table
