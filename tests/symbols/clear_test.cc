// Boxes and their letters keep clear of other ink (engraving A4, E2): 0.8 round a box, 0.9 round letters beside it.
#include <algorithm>
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "tests/symbols/ink.h"
#include "tests/symbols/made_film.h"

namespace crosstick::symbols {
namespace {

using drawing::Point;
using drawing::Points;
using testing::Made;
using testing::MadeFilm;
using testing::MadeRoute;

constexpr double kRoutePen = 0.55;
constexpr double kPen = 0.4;

double away(Point p, Point a, Point b) {
    const drawing::Vector span = b - a;
    const double size = drawing::dot(span, span);
    const double share = size > 0 ? std::clamp(drawing::dot(p - a, span) / size, 0.0, 1.0) : 0;
    return drawing::length(p - (a + span * share));
}

/// White between the upper part of a box, that is all but its point, and lines of a pen.
double clearOfLines(const drawing::Drawing& box, const drawing::Drawing& lines, double pen) {
    double least = 1e9;
    for (const drawing::Mark& mark : box.marks) {
        const auto* stroke = std::get_if<drawing::Stroke>(&mark);
        if (stroke == nullptr || stroke->pieces.size() != 1 || !stroke->pieces.front().closed) {
            continue;
        }
        const Points& ring = stroke->pieces.front().points;
        for (const testing::InkLine& line : testing::inkLines(lines)) {
            for (std::size_t n = 1; n < ring.size() && std::abs(line.width - pen) < 1e-9; ++n) {
                least = std::min(least, away(ring[n], line.from, line.to) - (kPen + pen) / 2);
            }
        }
    }
    return least;
}

TEST(Clear, ABoxStandsOnItsPointOnlyWhereNoLegRunsAlongIt) {
    int onTheirSpot = 0;
    int aside = 0;
    for (int degrees = 0; degrees < 360; degrees += 2) {
        const double turn = degrees * std::numbers::pi / 180;
        MadeFilm film;
        const Point spot{100, 75};
        film.add(MadeRoute{.vertices = {{100, 130}, spot, spot + drawing::Vector{std::sin(turn), -std::cos(turn)} * 40},
                           .stops = {1},
                           .name = {}});
        const EngravedFilm engraved = film.engraved();
        (engraved.items.back().isAside ? aside : onTheirSpot) += 1;
        EXPECT_GE(clearOfLines(film.drawn(0), film.drawn(1), kRoutePen), 0.8 - 0.02) << degrees;
    }
    EXPECT_GT(onTheirSpot, 90);
    EXPECT_GT(aside, 40);
}

// On a shared stretch the ink runs 0.6 beside the true line, and nearer to a box than that.
TEST(Clear, ABoxKeepsClearOfTheLanesOfAStretchThatRoutesShare) {
    for (int degrees = 20; degrees < 340; degrees += 4) {
        const double turn = degrees * std::numbers::pi / 180;
        const Point spot{100, 75};
        const Point far = spot + drawing::Vector{std::sin(turn), -std::cos(turn)} * 45;
        MadeFilm film;
        film.add(MadeRoute{.vertices = {spot, far}, .stops = {0}, .name = {}});
        film.add(MadeRoute{.vertices = {spot, far, {100, 20}}, .name = {}, .use = plan::Use::Alternate});
        for (const std::size_t route : {1U, 2U}) {
            EXPECT_GE(clearOfLines(film.drawn(0), film.drawn(route), kRoutePen), 0.8 - 0.02) << degrees;
        }
    }
}

TEST(Clear, NeitherABoxNorItsNameTouchesALineThatPasses) {
    for (double y = 60; y <= 80; y += 0.25) {
        MadeFilm film;
        film.add(Made{.kind = "objective-rally-point", .points = {{100, 75}}, .name = "SORREL"});
        film.add(Made{.kind = "phase-line", .points = {{60, y}, {160, y}}});
        const drawing::Drawing box = film.drawn(0);
        const drawing::Drawing line = film.drawn(1);
        for (const drawing::TurnedBox& letters : testing::letterBoxes(box)) {
            EXPECT_GE(testing::clearance(letters, line), 0.9 - 0.02) << y;
        }
        EXPECT_GE(clearOfLines(box, line, kPen), 0.8 - 0.02) << y;
    }
}

// A line that ends on another is named beside its last stretch, a little off the other.
TEST(Clear, NamesOfALineKeepTheWhiteOfLettersFromTheLineThatItEndsOn) {
    for (double rise = -60; rise <= 60; rise += 5) {
        MadeFilm film;
        film.add(Made{.kind = "boundary", .points = {{60, 10}, {60 + rise / 10, 140}}});
        film.add(Made{.kind = "phase-line", .points = {{60 + rise / 20, 75}, {150, 75 + rise / 2}}, .name = "BODKIN"});
        const drawing::Drawing boundary = film.drawn(0);
        const auto names = testing::letterBoxes(film.drawn(1));
        EXPECT_EQ(names.size(), 2U) << rise;
        for (const drawing::TurnedBox& letters : names) {
            EXPECT_GE(testing::clearance(letters, boundary), 0.6 - 0.02) << rise;
        }
    }
}

// There is room without a line through it: by an extension line, if nowhere beside.
TEST(Clear, NoLineStrikesTheNameOfASymbolThrough) {
    for (const char* kind : {"target-reference-point", "observation-post", "coordination-point", "waypoint"}) {
        for (double half = 4; half <= 14; half += 0.5) {
            MadeFilm film;
            const Point c{100, 75};
            film.add(Made{.kind = kind, .points = {c}, .number = "1"});
            film.add(Made{.kind = "named-area-of-interest",
                          .points = {{c.x - half, c.y - half},
                                     {c.x + half, c.y - half},
                                     {c.x + half, c.y + half},
                                     {c.x - half, c.y + half}}});
            const drawing::Drawing symbol = film.drawn(0);
            const drawing::Drawing area = film.drawn(1);
            for (const drawing::TurnedBox& letters : testing::letterBoxes(symbol)) {
                EXPECT_GT(testing::clearance(letters, area), 0) << kind << ' ' << half;
            }
        }
    }
}

}  // namespace
}  // namespace crosstick::symbols
