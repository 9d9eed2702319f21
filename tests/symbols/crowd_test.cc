// Symbols that crowd: each true place stays to be seen, and no extension line runs through another symbol.
#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "tests/symbols/ink.h"
#include "tests/symbols/made_film.h"

namespace crosstick::symbols {
namespace {

using drawing::Box;
using drawing::Point;
using testing::Made;
using testing::MadeFilm;

/// Of the symbol's outline: the one closed line of a box or a post.
Box outlineOf(const drawing::Drawing& drawing) {
    Box box;
    for (const drawing::Mark& mark : drawing.marks) {
        if (const auto* stroke = std::get_if<drawing::Stroke>(&mark)) {
            for (const drawing::Polyline& line : stroke->pieces) {
                if (line.closed) {
                    for (const Point p : line.points) {
                        box = box.joined({p.x, p.y, p.x, p.y});
                    }
                }
            }
        }
    }
    return box;
}

struct Crowd {
    MadeFilm film;
    std::vector<Point> spots;
};

/// Boxes round a place, as far from each other as the radius says.
Crowd crowdOf(int count, double radius) {
    constexpr std::array kKinds{"casualty-collection-point",
                                "ammunition-supply-point",
                                "logistics-release-point",
                                "ambulance-exchange-point",
                                "traffic-post",
                                "checkpoint",
                                "rally-point",
                                "start-point"};
    Crowd crowd;
    for (int n = 0; n < count; ++n) {
        const double turn = 0.8 * n;
        const Point spot{100 + radius * std::cos(turn), 75 + radius * std::sin(turn)};
        crowd.spots.push_back(spot);
        crowd.film.add(Made{.kind = kKinds[static_cast<std::size_t>(n) % kKinds.size()],
                            .points = {spot},
                            .number = std::to_string(n + 1)});
    }
    return crowd;
}

TEST(Crowd, NoSymbolCoversTheTruePlaceOfAnother) {
    for (const int count : {2, 5, 8}) {
        for (const double radius : {1.5, 4.0, 7.0}) {
            const Crowd crowd = crowdOf(count, radius);
            for (std::size_t a = 0; a < crowd.spots.size(); ++a) {
                const Box box = outlineOf(crowd.film.drawn(a));
                ASSERT_FALSE(box.isEmpty()) << a;
                for (std::size_t b = 0; b < crowd.spots.size(); ++b) {
                    EXPECT_FALSE(a != b && box.contains(crowd.spots[b]))
                        << count << " within " << radius << ": " << a << " covers " << b;
                }
            }
        }
    }
}

TEST(Crowd, NoExtensionLineRunsThroughAnotherSymbol) {
    const Crowd crowd = crowdOf(8, 4);
    for (std::size_t a = 0; a < crowd.spots.size(); ++a) {
        for (const testing::InkLine& line : testing::inkLines(crowd.film.drawn(a))) {
            if (line.width > 0.3) {
                continue;  // an outline: the extension line is thin
            }
            for (std::size_t b = 0; b < crowd.spots.size(); ++b) {
                const Box box = outlineOf(crowd.film.drawn(b)).grown(-0.4);
                const drawing::TurnedBox other{box.middle(), box.width(), box.height(), Degrees(0)};
                EXPECT_FALSE(a != b && other.meets(line.from, line.to)) << a << " runs through " << b;
            }
        }
    }
}

// One of two symbols on one spot may stand on it.
TEST(Crowd, TwoSymbolsOnOneSpotAreBothDrawn) {
    MadeFilm film;
    film.add(Made{.kind = "checkpoint", .points = {{100, 75}}, .number = "1"});
    film.add(Made{.kind = "rally-point", .points = {{100, 75}}, .number = "2"});
    EXPECT_NEAR(outlineOf(film.drawn(0)).bottom, 75, 0.6);
    EXPECT_FALSE(outlineOf(film.drawn(1)).isEmpty());
    EXPECT_TRUE(film.remarks().empty());
}

// A dot at the end of an extension line has to be seen: letters beside a line or a sign stand elsewhere if they can.
TEST(Crowd, LettersKeepOffTheTruePlaceOfASymbolThatStandsAside) {
    for (double x = 60; x < 140; x += 4) {
        MadeFilm film;
        Made point{.kind = "casualty-collection-point", .points = {{x, 72.2}}, .number = "1"};
        point.symbolAt = Point{x, 120};
        film.add(point);
        film.add(Made{.kind = "direction-of-attack", .points = {{50, 75}, {150, 75}}, .name = "FLINT"});
        for (const drawing::TurnedBox& box : testing::letterBoxes(film.drawn())) {
            EXPECT_FALSE(box.grown(0.7).meets(drawing::TurnedBox{point.points.front(), 0.01, 0.01, Degrees(0)})) << x;
        }
    }
}

}  // namespace
}  // namespace crosstick::symbols
