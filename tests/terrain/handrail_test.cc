#include "core/terrain/handrail.h"

#include <algorithm>
#include <cmath>
#include <iostream>
#include <random>

#include <gtest/gtest.h>

#include "core/terrain/faults.h"

namespace crosstick::terrain {
namespace {

using Points = std::vector<geodesy::PlanePoint>;

geodesy::PlanePoint at(double east, double north) {
    return {Metres(650000 + east), Metres(5100000 + north)};
}

double beside(geodesy::PlanePoint p, const Points& line) {
    double least = 1e12;
    for (std::size_t n = 0; n + 1 < line.size(); ++n) {
        const double dx = (line[n + 1].easting - line[n].easting).value();
        const double dy = (line[n + 1].northing - line[n].northing).value();
        const double px = (p.easting - line[n].easting).value();
        const double py = (p.northing - line[n].northing).value();
        const double share = std::clamp((px * dx + py * dy) / (dx * dx + dy * dy), 0.0, 1.0);
        least = std::min(least, std::hypot(px - share * dx, py - share * dy));
    }
    return least;
}

TEST(Handrail, RunsBesideAStraightLineOnTheSideAskedFor) {
    const Points line{at(0, 0), at(0, 1000)};
    const auto left = handrail(line, kUsualHandrail, Side::Left);
    ASSERT_TRUE(left.has_value());
    ASSERT_EQ(left->size(), 2U);
    EXPECT_NEAR(left->front().easting.value(), 649900, 1e-6);
    EXPECT_NEAR(left->front().northing.value(), 5100000, 1e-6);
    EXPECT_NEAR(left->back().northing.value(), 5101000, 1e-6);
    const auto right = handrail(line, kUsualHandrail, Side::Right);
    ASSERT_TRUE(right.has_value());
    EXPECT_NEAR(right->front().easting.value(), 650100, 1e-6);
    EXPECT_NEAR(right->front().northing.value(), 5100000, 1e-6);
}

TEST(Handrail, CutsASharpBendShortInsideAndRoundsItOutside) {
    const Points line{at(0, 0), at(0, 1000), at(300, 0)};  // a hairpin to the right
    const auto inside = handrail(line, Metres(50), Side::Right);
    const auto outside = handrail(line, Metres(50), Side::Left);
    ASSERT_TRUE(inside.has_value());
    ASSERT_TRUE(outside.has_value());
    const auto north = [](const Points& points) {
        double most = 0;
        for (const geodesy::PlanePoint p : points) {
            most = std::max(most, p.northing.value() - 5100000);
        }
        return most;
    };
    EXPECT_LT(north(*inside), 1000 - 100);
    EXPECT_NEAR(north(*outside), 1050, 1);
}

// Law: as far from the line as asked everywhere, in the line's own direction.
TEST(Handrail, LiesAtItsDistanceFromAnyLine) {
    constexpr std::uint32_t kSeed = 100;
    std::cout << "seed " << kSeed << '\n';
    std::mt19937 random(kSeed);
    std::uniform_real_distribution<double> step(-200, 200);
    for (int round = 0; round < 200; ++round) {
        Points line{at(0, 0)};
        for (int n = 0; n < 20; ++n) {
            line.push_back(
                {line.back().easting + Metres(150 + step(random) / 2), line.back().northing + Metres(step(random))});
        }
        for (const Side side : {Side::Left, Side::Right}) {
            const auto rail = handrail(line, Metres(60), side);
            ASSERT_TRUE(rail.has_value());
            for (const geodesy::PlanePoint p : *rail) {
                EXPECT_GT(beside(p, line), 60 * 0.98) << "round " << round;
                EXPECT_LT(beside(p, line), 60 * 1.02) << "round " << round;
            }
            const auto away = [](geodesy::PlanePoint a, geodesy::PlanePoint b) {
                return std::hypot((a.easting - b.easting).value(), (a.northing - b.northing).value());
            };
            EXPECT_LT(away(rail->front(), line.front()), away(rail->front(), line.back())) << "round " << round;
        }
    }
}

TEST(Handrail, WhatHasNoLengthOrNoDistanceIsAFault) {
    const Points line{at(0, 0), at(0, 1000)};
    EXPECT_EQ(handrail({}, Metres(100), Side::Left).error().fault, kNoOffset);
    EXPECT_EQ(handrail({at(0, 0), at(0, 0)}, Metres(100), Side::Left).error().fault, kNoOffset);
    for (const double metres : {0.0, -5.0, 10001.0, std::nan("")}) {
        EXPECT_EQ(handrail(line, Metres(metres), Side::Left).error().fault, kNoOffset) << metres;
    }
}

}  // namespace
}  // namespace crosstick::terrain
