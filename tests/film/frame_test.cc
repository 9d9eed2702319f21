#include "core/film/frame.h"

#include <cmath>
#include <random>

#include <gtest/gtest.h>

#include "tests/film/printed_plan.h"

namespace crosstick::film {
namespace {

using movement::at;

Frame frameOf(const plan::Plan& plan, const char* film, std::optional<Scale> scale = std::nullopt) {
    return *Frame::of(plan, *plan.filmNamed(film), scale);
}

// Scenario 4: the window E 652300 to 659000, N 5096200 to 5104500 is 268 x 332 mm at 1:25,000.
TEST(Frame, WindowHasItsSizeAtScale) {
    const plan::Plan plan = printedPlan();
    const Frame frame = frameOf(plan, "MOVE");
    EXPECT_EQ(frame.scale(), Scale{25000});
    EXPECT_NEAR(frame.window().width(), 268, 1e-9);
    EXPECT_NEAR(frame.window().height(), 332, 1e-9);
    EXPECT_EQ(frame.origin(), at(652300, 5104500));
}

TEST(Frame, OriginIsTheWindowsUpperLeftCornerAndYRunsDown) {
    const plan::Plan plan = printedPlan();
    const Frame frame = frameOf(plan, "MOVE");
    const drawing::Point corner = frame.onFilm(at(652300, 5104500));
    EXPECT_EQ(corner, (drawing::Point{0, 0}));
    // 1000 m east and 500 m south at 1:25,000.
    const drawing::Point p = frame.onFilm(at(653300, 5104000));
    EXPECT_NEAR(p.x, 40, 1e-9);
    EXPECT_NEAR(p.y, 20, 1e-9);
}

TEST(Frame, ScaleThatIsAskedForOverridesTheFilmsAndTheSheets) {
    plan::Plan plan = printedPlan();
    EXPECT_NEAR(frameOf(plan, "MOVE", Scale{50000}).window().width(), 134, 1e-9);
    plan::Film own = *plan.filmNamed("MOVE");
    own.scale = Scale{10000};
    plan::PlanBuilder builder{plan};
    builder.put(own);
    plan = std::move(builder).build();
    EXPECT_NEAR(frameOf(plan, "MOVE").window().width(), 670, 1e-9);
    EXPECT_NEAR(frameOf(plan, "LOOK").window().width(), 268, 1e-9);
}

TEST(Frame, RefusesAScaleThatIsNoNumberAboveNothing) {
    const plan::Plan plan = printedPlan();
    for (const double wrong : {0.0, -25000.0, std::nan("")}) {
        const auto frame = Frame::of(plan, *plan.filmNamed("MOVE"), Scale{wrong});
        ASSERT_FALSE(frame.has_value());
        EXPECT_EQ(frame.error().fault.name, "film/no-such-scale");
    }
}

// Law: back and forth is where one began, within a tenth of a millimetre on the ground, datum change included.
TEST(Frame, WayToTheSheetsGridAndBackComesHome) {
    const plan::Plan plan = lineOn({32, geodesy::Hemisphere::North}, {at(501000, 5301500), at(505000, 5306000)},
                                   "EPSG:23032", at(498000, 5309000), Metres(10000));
    const Frame frame = frameOf(plan, "LINE");
    const unsigned seed = 20270313;
    SCOPED_TRACE(seed);
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> east(499000, 507000);
    std::uniform_real_distribution<double> north(5300000, 5308000);
    for (int n = 0; n < 200; ++n) {
        const geodesy::PlanePoint p = at(east(random), north(random));
        const geodesy::PlanePoint home = frame.inPlan(frame.filmToGrid(frame.onFilm(p)));
        EXPECT_NEAR(home.easting.value(), p.easting.value(), 1e-4);
        EXPECT_NEAR(home.northing.value(), p.northing.value(), 1e-4);
    }
}

TEST(Frame, OutOfReachIsNotANumberAndNoFault) {
    const plan::Plan plan = lineOn({32, geodesy::Hemisphere::North}, {at(501000, 5301500), at(505000, 5306000)},
                                   "EPSG:23032", at(498000, 5309000), Metres(10000));
    const drawing::Point nowhere = frameOf(plan, "LINE").onFilm(at(1e12, 1e12));
    EXPECT_FALSE(std::isfinite(nowhere.x));
}

TEST(Frame, FilmOfAPlanWithoutAWindowHasNone) {
    const plan::Plan plan = lineOn({32, geodesy::Hemisphere::North}, {at(501000, 5301500), at(505000, 5306000)},
                                   "EPSG:32632", at(498000, 5309000), Metres(10000));
    const Frame frame = frameOf(plan, "LINE");
    EXPECT_TRUE(frame.window().isEmpty());
    EXPECT_EQ(frame.origin(), at(498000, 5309000));
}

TEST(Frame, FittedToPaperThatHasStretchedItsPlacesLieFartherApart) {
    const plan::Plan plan = printedPlan();
    const Frame exact = frameOf(plan, "MOVE");
    const Frame fitted = exact.fitted({0.25, -0.1});
    // 268 mm to the east and 332 mm to the south become 268.67 and 331.668.
    EXPECT_NEAR(fitted.window().width(), 268.67, 1e-9);
    EXPECT_NEAR(fitted.window().height(), 331.668, 1e-9);
    const drawing::Point far = fitted.gridToFilm({exact.origin().easting + Metres(1000), exact.origin().northing});
    EXPECT_NEAR(far.x, 40.1, 1e-9);
    EXPECT_NEAR(fitted.north(Metres(1000)).value(), 39.96, 1e-9);
    const geodesy::PlanePoint back = fitted.filmToGrid(far);
    EXPECT_NEAR((back.easting - exact.origin().easting).value(), 1000, 1e-6);
    EXPECT_EQ(fitted.fitted({}).window().width(), exact.window().width());
}

}  // namespace
}  // namespace crosstick::film
