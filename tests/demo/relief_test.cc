// Contours and cliffs of the sheet over the island's own ground.
#include <cmath>
#include <map>
#include <set>

#include <gtest/gtest.h>

#include "sample-data/sheet/cliffs.h"
#include "sample-data/sheet/contours.h"
#include "sample-data/sheet/palette.h"
#include "tests/places.h"

namespace crosstick::demo {
namespace {

struct Isle {
    Island lists = readIsland(places::share() / "demo/island.json").value_or(Island{});
    Ground ground = makeGround(lists);
};

Cover coverAt(const Ground& ground, Spot at) {
    return ground.cover(ground.cover.lattice.nearestColumn(at), ground.cover.lattice.nearestRow(at));
}

struct Piece {
    Spot from, to;
    std::size_t line, number;
};

double turn(Spot a, Spot b, Spot c) {
    return (b.east - a.east) * (c.north - a.north) - (b.north - a.north) * (c.east - a.east);
}

bool cross(const Piece& a, const Piece& b) {
    return turn(a.from, a.to, b.from) * turn(a.from, a.to, b.to) < 0 &&
           turn(b.from, b.to, a.from) * turn(b.from, b.to, a.to) < 0;
}

/// Pieces by the 20 m squares they touch.
using Squares = std::map<std::pair<int, int>, std::vector<Piece>>;

Squares squaresOf(const std::vector<Contour>& contours) {
    Squares squares;
    const auto square = [](Spot at) {
        return std::pair{static_cast<int>(std::floor(at.east / 20)), static_cast<int>(std::floor(at.north / 20))};
    };
    for (std::size_t line = 0; line < contours.size(); ++line) {
        const Line& points = contours[line].line;
        for (std::size_t n = 0; n + 1 < points.size(); ++n) {
            const Piece piece{points[n], points[n + 1], line, n};
            const auto from = square(piece.from);
            const auto to = square(piece.to);
            for (int x = std::min(from.first, to.first); x <= std::max(from.first, to.first); ++x) {
                for (int y = std::min(from.second, to.second); y <= std::max(from.second, to.second); ++y) {
                    squares[{x, y}].push_back(piece);
                }
            }
        }
    }
    return squares;
}

TEST(Relief, ContoursNeverCross) {
    ASSERT_TRUE(cross({{0, 0}, {2, 2}, 0, 0}, {{0, 2}, {2, 0}, 1, 0}));
    const Isle isle;
    const auto contours = contoursOf(heightsToDraw(isle.ground, isle.lists.spotHeights), 10, 10, 450);
    ASSERT_GT(contours.size(), 40U);  // the ground rises to 412 m
    for (const auto& [square, pieces] : squaresOf(contours)) {
        for (std::size_t a = 0; a < pieces.size(); ++a) {
            for (std::size_t b = a + 1; b < pieces.size(); ++b) {
                ASSERT_FALSE(cross(pieces[a], pieces[b]))
                    << contours[pieces[a].line].height << " and " << contours[pieces[b].line].height << " at "
                    << pieces[a].from.east << ' ' << pieces[a].from.north;
            }
        }
    }
}

/// A spot height lies between the contours it should lie between.
TEST(Relief, ContoursAgreeWithTheSpotHeights) {
    const Isle isle;
    const Field<float> drawn = heightsToDraw(isle.ground, isle.lists.spotHeights);
    for (const SpotHeight& spot : isle.lists.spotHeights) {
        if (spot.kind != SpotKind::Lake) {
            EXPECT_NEAR(sampled(drawn, spot.peg.at), spot.peg.height, 1) << spot.peg.height;
        }
    }
}

/// Heights are drawn out for the picture's sake only a little: half an interval for all but a few places, a quarter of
/// one on the mean.
TEST(Relief, IsDrawnNearItsTrueHeights) {
    const Isle isle;
    const Field<float> drawn = heightsToDraw(isle.ground, isle.lists.spotHeights);
    Field<std::uint8_t> sea(drawn.lattice);
    for (std::size_t n = 0; n < sea.values.size(); ++n) {
        sea.values[n] = isle.ground.cover.values[n] == Cover::Land ? 0 : 1;
    }
    const Field<float> inland = distanceTo(sea, 200);
    double sum = 0;
    double count = 0;
    double far = 0;
    for (std::size_t n = 0; n < drawn.values.size(); ++n) {
        if (inland.values[n] > 100) {
            const auto off = std::abs(static_cast<double>(drawn.values[n] - isle.ground.heights.values[n]));
            sum += off;
            far += off > 5 ? 1 : 0;
            ++count;
        }
    }
    EXPECT_LT(sum / count, 2.5);
    EXPECT_LT(far / count, 0.01);
}

TEST(Relief, CliffsHaveTheirFootOnTheShoreAndTheirEdgeInland) {
    const Isle isle;
    const auto cliffs = cliffsOf(isle.ground);
    ASSERT_GE(cliffs.size(), 5U);
    for (const Cliff& cliff : cliffs) {
        ASSERT_EQ(cliff.foot.size(), cliff.top.size());
        double widest = 0;
        for (std::size_t n = 0; n < cliff.foot.size(); ++n) {
            const double width = length(cliff.top[n] - cliff.foot[n]);
            widest = std::max(widest, width);
            EXPECT_LE(width, 42);
            if (width > 15) {
                EXPECT_EQ(coverAt(isle.ground, cliff.top[n]), Cover::Land);
            }
        }
        EXPECT_GT(widest, 10);
    }
}

TEST(Palette, HasAtMost256InksAndNoneTwice) {
    const auto inks = sheetPalette();
    EXPECT_LE(inks.size(), 256U);
    EXPECT_EQ(std::set<QRgb>(inks.begin(), inks.end()).size(), inks.size());
}

/// Every shade of open land from none to 14 % of grey-violet is met within one step of each colour: no bands.
TEST(Palette, ShadesOpenLandWithoutBands) {
    const auto inks = sheetPalette();
    InkFinder finder(inks);
    for (int alpha = 0; alpha <= 36; ++alpha) {  // 14 % of 255
        const auto mixed = [&](int ground, int shade) { return (ground * (255 - alpha) + shade * alpha + 127) / 255; };
        const QRgb wanted = qRgb(mixed(253, 88), mixed(252, 80), mixed(245, 110));
        const QRgb found = inks[finder.inkFor(wanted)];
        EXPECT_LE(std::abs(qRed(found) - qRed(wanted)), 1) << alpha;
        EXPECT_LE(std::abs(qGreen(found) - qGreen(wanted)), 1) << alpha;
        EXPECT_LE(std::abs(qBlue(found) - qBlue(wanted)), 1) << alpha;
    }
}

}  // namespace
}  // namespace crosstick::demo
