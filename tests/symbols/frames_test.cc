// Frames and icons of units (engraving C1, C3; proportions of MIL-STD-2525D and APP-6 as trade.md 3.1 has them: from
// memory, confidence high, not checked against the documents).
#include <algorithm>
#include <cmath>
#include <string>

#include <gtest/gtest.h>

#include "symbols/unit_frame.h"
#include "symbols/unit_symbol.h"
#include "tests/symbols/ink.h"

namespace crosstick::symbols {
namespace {

using measures::Affiliation;

constexpr Affiliation kAll[] = {Affiliation::Friend, Affiliation::Hostile, Affiliation::Neutral, Affiliation::Unknown};

struct Ratio {
    Affiliation affiliation;
    double wide, high;
};
constexpr Ratio kRatios[] = {{Affiliation::Friend, 1.5, 1.0},
                             {Affiliation::Hostile, 1.44, 1.44},
                             {Affiliation::Neutral, 1.1, 1.1},
                             {Affiliation::Unknown, 1.44, 1.44}};

drawing::Box extentOf(const Points& points) {
    drawing::Box box;
    for (const Point p : points) {
        box = box.joined({p.x, p.y, p.x, p.y});
    }
    return box;
}

measures::UnitSymbol unitOf(Affiliation affiliation, std::string_view icon) {
    measures::UnitSymbol unit = measures::readUnit(icon);
    unit.affiliation = affiliation;
    return unit;
}

TEST(Frames, AreAsWideAndHighAsTheStandardHasThem) {
    for (const Ratio& ratio : kRatios) {
        const drawing::Box box = extentOf(unitFrame(ratio.affiliation).outline);
        EXPECT_NEAR(box.width(), ratio.wide, 0.005) << static_cast<int>(ratio.affiliation);
        EXPECT_NEAR(box.height(), ratio.high, 0.005) << static_cast<int>(ratio.affiliation);
        EXPECT_NEAR(box.middle().x, 0, 1e-9);
        EXPECT_NEAR(box.middle().y, 0, 1e-9);
    }
}

TEST(Frames, KeepTheirRatioAtEverySizeOfSymbol) {
    for (const double h : {4.0, 5.0, 6.0, 8.0}) {
        for (const Ratio& ratio : kRatios) {
            const drawing::Gauge gauge = drawing::Gauge::of(h, 0.4, 2.0);
            const drawing::Box box = extentOf(sketchUnit(unitOf(ratio.affiliation, ""), {}, gauge).outline);
            EXPECT_NEAR(box.width(), ratio.wide * h, 0.04);
            EXPECT_NEAR(box.height(), ratio.high * h, 0.04);
        }
    }
}

TEST(Frames, TheHalfWidthIsThatOfTheOutline) {
    for (const Affiliation affiliation : kAll) {
        const UnitFrame frame = unitFrame(affiliation);
        for (const double y : {-0.45, -0.3, -0.1, 0.0, 0.2, 0.36, 0.48}) {
            const auto end = drawing::leaves(frame.outline, {0, y}, {1, 0});
            ASSERT_TRUE(end) << y;
            EXPECT_NEAR(end->far, frame.halfWidth(y), 0.01) << static_cast<int>(affiliation) << " at " << y;
        }
    }
}

// Half height and half width 0.5, corners cut to (0.5, 0.207): icons that keep inside it fit every frame.
TEST(Frames, AllHoldTheOctagonOfTheIcons) {
    constexpr double kCut = 0.207;
    const Points octagon{{0.5, kCut},   {kCut, 0.5},   {-kCut, 0.5}, {-0.5, kCut},
                         {-0.5, -kCut}, {-kCut, -0.5}, {kCut, -0.5}, {0.5, -kCut}};
    for (const Affiliation affiliation : kAll) {
        for (const Point corner : octagon) {
            EXPECT_LE(std::abs(corner.x), unitFrame(affiliation).halfWidth(corner.y) + 1e-9)
                << static_cast<int>(affiliation) << " at " << corner.x << ' ' << corner.y;
        }
    }
}

// No icon reaches over the frame's own ink.
TEST(Frames, HoldEveryIcon) {
    const drawing::Gauge gauge;
    for (const measures::UnitWord& icon : measures::unitIcons()) {
        for (const Affiliation affiliation : kAll) {
            const UnitSketch sketch = sketchUnit(unitOf(affiliation, icon.word), {}, gauge);
            const UnitFrame frame = unitFrame(affiliation);
            const double most = gauge.pen / 2 / gauge.symbol + 1e-6;
            for (const testing::InkLine& line : testing::inkLines(sketch.ink)) {
                for (const Point p : {line.from, line.to}) {
                    const double y = p.y / gauge.symbol;
                    EXPECT_LE(std::abs(y), frame.top + most) << icon.word;
                    const double edge = frame.halfWidth(std::min(std::abs(y), frame.top));
                    // Along a slanted side the pen reaches farther across than square to it.
                    EXPECT_LE(std::abs(p.x) / gauge.symbol, edge + 2 * most + 0.01)
                        << icon.word << " in " << static_cast<int>(affiliation) << " at " << y;
                }
            }
        }
    }
}

}  // namespace
}  // namespace crosstick::symbols
