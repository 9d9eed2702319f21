// The ink of every tip ends within 0.05 mm of its anchor, whatever the size of symbols and the pen (engraving A7, B1).
#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include <gtest/gtest.h>

#include "core/drawing/path.h"
#include "tests/symbols/ink.h"
#include "tests/symbols/random_film.h"

namespace crosstick::symbols {
namespace {

using drawing::Point;
using drawing::Points;
using drawing::Vector;
using testing::Made;
using testing::MadeFilm;
using testing::MadeRoute;

constexpr double kTip = 0.05;
constexpr std::array<const char*, 6> kBoxes{
    "start-point", "checkpoint", "release-point", "rally-point", "objective-rally-point", "casualty-collection-point"};

std::vector<drawing::Gauge> gauges() {
    std::vector<drawing::Gauge> all;
    for (const double symbol : {4.0, 5.0, 6.0, 7.0, 8.0}) {
        for (const double pen : {0.25, 0.40, 0.70}) {
            all.push_back({.symbol = symbol, .pen = pen});
        }
    }
    return all;
}

std::string named(const drawing::Gauge& gauge) {
    return "H " + std::to_string(gauge.symbol) + ", pen " + std::to_string(gauge.pen);
}

/// The film in colour, and with one pen.
std::vector<MadeFilm> bothPens(const Made& made, const drawing::Gauge& gauge) {
    MadeFilm colour;
    colour.gauge(gauge).add(made);
    MadeFilm one = colour;
    one.onePen();
    return {colour, one};
}

TEST(Tips, OfEveryActionBoxEndOnTheSpot) {
    const Point spot{100.013, 75.021};
    for (const drawing::Gauge& gauge : gauges()) {
        for (const char* kind : kBoxes) {
            for (const plan::Standing standing : {plan::Standing::Present, plan::Standing::Planned}) {
                for (const plan::Whose whose : {plan::Whose::Own, plan::Whose::Enemy}) {
                    Made made{.kind = kind, .points = {spot}, .number = "3", .standing = standing, .whose = whose};
                    for (const MadeFilm& film : bothPens(made, gauge)) {
                        EXPECT_NEAR(testing::reach(film.drawn(), spot, {0, 1}, 50), 0, kTip)
                            << kind << ", " << named(gauge);
                    }
                }
            }
        }
    }
}

TEST(Tips, OfABoxSetAsideEndOnItsExtensionLine) {
    const Point spot{100.013, 75.021};
    const Point aside{120.017, 60.033};
    MadeFilm film;
    film.add(Made{.kind = "checkpoint", .points = {spot}, .number = "3", .symbolAt = aside});
    EXPECT_NEAR(testing::reach(film.drawn(), aside, {0, 1}, 10), 0, 0.2);   // the extension line's own pen
    EXPECT_NEAR(testing::reach(film.drawn(), spot, {0, 1}, 3), 0.4, 1e-6);  // a dot of 0.8 on the spot
}

TEST(Tips, OfAMainAttackEndOnTheLastPoint) {
    drawing::testing::RandomLines random(7);
    for (const drawing::Gauge& gauge : gauges()) {
        for (int n = 0; n < 8; ++n) {
            SCOPED_TRACE(named(gauge) + ", round " + std::to_string(n));
            Made made{.kind = "direction-of-main-attack"};
            const double turn = random.between(0, 6.28);
            const Vector u{std::cos(turn), std::sin(turn)};
            made.points = {Point{100, 75} - u * random.between(8, 45), {100, 75}};
            made.standing = n % 2 == 0 ? plan::Standing::Planned : plan::Standing::Present;
            made.whose = n % 3 == 0 ? plan::Whose::Enemy : plan::Whose::Own;
            for (const MadeFilm& film : bothPens(made, gauge)) {
                EXPECT_NEAR(testing::reach(film.drawn(), {100, 75}, u, 4), 0, kTip);
            }
        }
    }
}

// A7: the head points along the chord of the last 2.4 mm.
TEST(Tips, OfAMainAttackPointAlongItsLastStretch) {
    MadeFilm film;
    film.add(Made{.kind = "direction-of-main-attack", .points = {{60, 75}, {98, 75}, {100, 77}}});
    const Vector u = drawing::unit(drawing::Path({{60, 75}, {98, 75}, {100, 77}}).chord(100, 4.8));
    EXPECT_NEAR(testing::reach(film.drawn(), {100, 77}, u, 4), 0, kTip);
}

// A line shorter than one and a half heads has a head scaled to it, not under 1.6 long.
TEST(Tips, OfAShortMainAttackStayWithinItsLine) {
    for (const double size : {0.5, 1.5, 2.4, 4.0, 6.0, 9.0}) {
        MadeFilm film;
        film.add(Made{.kind = "direction-of-main-attack", .points = {{100 - size, 75}, {100, 75}}});
        const drawing::Drawing drawn = film.drawn();
        EXPECT_NEAR(testing::reach(drawn, {100, 75}, {1, 0}, 20), 0, kTip) << size;
        EXPECT_LE(testing::reach(drawn, {100, 75}, {-1, 0}, 20), std::max(size, 1.6) + 0.8) << size;
    }
}

TEST(Tips, OfASupportByFireEndOnTheLimits) {
    for (const drawing::Gauge& gauge : gauges()) {
        for (const plan::Whose whose : {plan::Whose::Own, plan::Whose::Enemy}) {
            Made made = testing::sample("support-by-fire", {100, 75});
            made.whose = whose;
            for (const MadeFilm& film : bothPens(made, gauge)) {
                const drawing::Drawing drawn = film.drawn();
                for (const auto& [end, tip] : {std::pair{0, 2}, std::pair{1, 3}}) {
                    const Point at = made.points[static_cast<std::size_t>(tip)];
                    const Vector u = drawing::unit(at - made.points[static_cast<std::size_t>(end)]);
                    EXPECT_NEAR(testing::reach(drawn, at, u, 2), 0, kTip) << named(gauge);
                }
            }
        }
    }
}

// E3: a head of 2.4 with its middle at the middle of each leg.
TEST(Tips, OfARoutesHeadsStandRoundTheMiddleOfItsLegs) {
    MadeFilm film;
    film.add(MadeRoute{.vertices = {{30, 75}, {80, 75}, {120, 75}}, .stops = {0, 1, 2}, .name = "QUILL"});
    for (const double middle : {55.0, 100.0}) {
        const double tip = testing::reach(film.drawn(), {middle + 1.2, 75}, {1, 0}, 0.01);
        EXPECT_NEAR(tip, 0, 1e-6);
    }
}

}  // namespace
}  // namespace crosstick::symbols
